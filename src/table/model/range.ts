import type { Refusal } from './action.ts'

/** Least and most of a number, in the unit it is stored in. */
export interface Range {
  readonly least: number
  readonly most: number
  readonly whole?: boolean
}

/** Seconds of a dip as it was: lifted at once, or forgotten. */
export const HELD_S = { least: 0, most: 60 } as const satisfies Range
/** Edge of a coat, mm above the foot. */
export const EDGE_UP_MM = { least: 0, most: 600 } as const satisfies Range

/** A refusal naming field, value and range, or undefined when the value is allowed. */
export function outOf(range: Range, field: string, value: number): Refusal | undefined {
  const { least, most } = range
  const wrong =
    !Number.isFinite(value) ||
    value < least ||
    value > most ||
    (range.whole === true && !Number.isInteger(value))
  return wrong ? { code: 'out-of-range', field, facts: { value, least, most } } : undefined
}
