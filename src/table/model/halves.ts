import type { CoverFacts } from '../../../shared/nouns.ts'
import { coatsOn, planOf } from './plan.ts'
import type { DipState, PotState, Table } from './state.ts'

/** Part of a pot's width that goes under when it is held sideways: half, and some overlap. Assumption. */
export const SIDE_PART = 0.6
/** Half the width of the stripe that both halves reach, against the pot's radius. */
export const OVERLAP = 2 * SIDE_PART - 1
/** That stripe at the rim, degrees on either side of the pot. */
export const OVERLAP_DEG = (2 * Math.asin(OVERLAP) * 180) / Math.PI

export type Half = 0 | 1

/** Which half a coat of a pot lies on: side coats take turns. Undefined for a coat of the whole pot. */
export function halfAt(table: Table, pot: PotState, coat: number, cover: CoverFacts): Half | undefined {
  if (cover.kind !== 'side') return undefined
  const sides = new Set<number>()
  for (const [i, planned] of planOf(table, pot).entries()) if (planned.cover.kind === 'side') sides.add(i)
  for (const dip of coatsOn(pot)) if (dip.cover.kind === 'side') sides.add(dip.coat)
  return [...sides].filter((i) => i < coat).length % 2 === 1 ? 1 : 0
}

/** The dips of a pot that are where this half is: all but those of the half across. */
export const dipsOnHalf = (table: Table, pot: PotState, half: Half): readonly DipState[] =>
  pot.dips.filter((dip) => (halfAt(table, pot, dip.coat, dip.cover) ?? half) === half)

/** Both halves have their coats, so that somewhere both lie. */
export const hasOverlap = (table: Table, pot: PotState, dips: readonly DipState[]): boolean => {
  const halves = new Set(dips.map((dip) => halfAt(table, pot, dip.coat, dip.cover)))
  return halves.has(0) && halves.has(1)
}

/** The dips on the half across from this one. */
export const acrossFrom = (table: Table, pot: PotState, dip: DipState): readonly DipState[] => {
  const half = halfAt(table, pot, dip.coat, dip.cover)
  if (half === undefined) return []
  return coatsOn(pot).filter((other) => halfAt(table, pot, other.coat, other.cover) === 1 - half)
}
