import { LIMITS, type LimitedField } from '../model/limits.ts'
import { MEASURES, QUANTITY, type Quantity, type Unit, type Units } from './measure.ts'

/** What may be typed into a field, in the person's own unit. */
export interface Range {
  readonly least: string
  readonly most: string
  readonly unit: string
}

/** What was typed, as the number to store, or why it can't be one. `meant` is a likelier text to offer. */
export type Entry =
  | { readonly ok: true; readonly value: number }
  | {
      readonly ok: false
      readonly why: 'missing' | 'unreadable' | 'not-whole' | 'out-of-range'
      readonly range: Range
      readonly meant?: string
    }

/** Longer than any number with its unit. */
const LONGEST = 24

/** Slack for the conversion of a bound that was typed as shown, part of one. */
const ROUNDING = 1e-9

/** Reads what was typed: comma or point as the decimal mark, a unit behind it, a fraction for lengths. */
export function readEntry(field: LimitedField, text: string, units: Units): Entry {
  const range = rangeOf(field, units)
  if (text.trim() === '') return { ok: false, why: 'missing', range }
  const typed = numberOf(field, text, units)
  if (!typed) return { ok: false, why: 'unreadable', range }
  const limit: { least: number; most: number; whole?: true } = LIMITS[field]
  const { value } = typed
  if (limit.whole && !Number.isInteger(value)) return { ok: false, why: 'not-whole', range }
  if (within(value, limit)) return { ok: true, value: Math.min(limit.most, Math.max(limit.least, value)) }
  return { ok: false, why: 'out-of-range', range, meant: meantBy(field, typed, units) }
}

const within = (value: number, limit: { least: number; most: number }): boolean =>
  value >= limit.least - Math.abs(limit.least) * ROUNDING && value <= limit.most * (1 + ROUNDING)

interface Typed {
  readonly number: number
  /** In the unit that is stored. */
  readonly value: number
  readonly bare: boolean
}

const PLAIN = /^([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)\s*(.*)$/u
const FRACTION = /^(?:(\d+)[ -])?(\d+)\/(\d+)\s*(.*)$/u

function numberOf(field: LimitedField, text: string, units: Units): Typed | undefined {
  const said = text
    .trim()
    .replace(/[\s\u00a0]+/gu, ' ')
    .replace(/\u2212/gu, '-')
  if (said.length > LONGEST) return undefined
  const quantity = QUANTITY[field]
  const fraction = quantity === 'length' ? FRACTION.exec(said) : null
  const plain = PLAIN.exec(said)
  const number = fraction
    ? Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3])
    : plain
      ? Number(`${plain[1]}${plain[2]?.replace(',', '.')}`)
      : Number.NaN
  const behind = (fraction?.[4] ?? plain?.[3] ?? '').toLowerCase()
  const unit = unitOf(quantity, behind, units)
  if (!Number.isFinite(number) || !unit) return undefined
  // A comma in a whole number may part thousands or decimals: nobody can tell.
  if (quantity === 'count' && said.includes(',')) return undefined
  return { number, value: number * unit.per + (unit.plus ?? 0), bare: behind === '' }
}

function unitOf(quantity: Quantity, behind: string, units: Units): Unit | undefined {
  const { home, typed } = MEASURES[quantity]
  return behind === '' ? home[units] : Object.hasOwn(typed, behind) ? typed[behind] : undefined
}

/** Texts that a number out of range often stands for: a slipped point, or the other unit. */
const SLIPS: Readonly<Record<Quantity, (n: number, units: Units) => readonly string[]>> = {
  density: (n) => [tidy(n / 100, 4), tidy(n / 1000, 4)],
  gravity: (n) => [tidy(n / 100, 3), tidy(n / 10, 3)],
  coat: (n, units) => (units === 'metric' ? [tidy(n / 100, 3), tidy(n / 10, 3)] : [`${tidy(n, 3)} mm`]),
  part: (n) => [`${tidy(n * 100, 1)} %`],
  length: (n, units) => [`${tidy(n, 2)} ${units === 'metric' ? 'cm' : 'mm'}`],
  temperature: (n, units) => [`${tidy(n, 1)} ${units === 'metric' ? '°F' : '°C'}`],
  volume: (n) => [`${tidy(n, 0)} ml`],
  cup: () => [],
  seconds: () => [],
  minutes: () => [],
  speed: () => [],
  rise: () => [],
  weight: (n) => [`${tidy(n, 1)} kg`],
  grams: (n) => [`${tidy(n, 1)} kg`],
  fineGrams: () => [],
  area: () => [],
  altitude: (n, units) => [`${tidy(n, 0)} ${units === 'metric' ? 'ft' : 'm'}`],
  count: () => [],
}

function meantBy(field: LimitedField, typed: Typed, units: Units): string | undefined {
  if (!typed.bare) return undefined
  return SLIPS[QUANTITY[field]](typed.number, units).find((text) => {
    const again = numberOf(field, text, units)
    return again !== undefined && within(again.value, LIMITS[field])
  })
}

/** The unit that a bare number of this field is in. */
export const unitLabel = (field: LimitedField, units: Units): string =>
  MEASURES[QUANTITY[field]].home[units].label

/** A stored number as a person would type it, without its unit. */
export function showEntry(field: LimitedField, value: number, units: Units): string {
  const unit = MEASURES[QUANTITY[field]].home[units]
  return tidy((value - (unit.plus ?? 0)) / unit.per, unit.digits)
}

/** The range of a field; bounds are rounded inwards, so that what is shown is taken. */
export const rangeOf = (field: LimitedField, units: Units): Range =>
  rangeBetween(field, LIMITS[field].least, LIMITS[field].most, units)

/** A narrower range of a field, from other measures of the same thing. */
export function rangeBetween(field: LimitedField, least: number, most: number, units: Units): Range {
  const unit = MEASURES[QUANTITY[field]].home[units]
  const scale = 10 ** unit.digits
  const shown = (value: number) => ((value - (unit.plus ?? 0)) / unit.per) * scale
  return {
    least: tidy(Math.ceil(shown(least) - ROUNDING * scale) / scale, unit.digits),
    most: tidy(Math.floor(shown(most) + ROUNDING * scale) / scale, unit.digits),
    unit: unit.label,
  }
}

const tidy = (value: number, digits: number): string => String(Number(value.toFixed(digits)))
