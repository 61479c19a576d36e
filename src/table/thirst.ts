import { zonesAfter } from '../engine/seconds.ts'
import { coatsOn } from './plan.ts'
import { MIN_MS, standingOf } from './standing.ts'
import type { PotState, Table } from './state.ts'

/** A wait that wets nothing: the zones as they stand at a moment. */
const NOTHING_MM = 0

/** Filled part of the fullest stretch of the wall at table time `now`, 0 to 1. */
export function filledAt(table: Table, pot: PotState, now: number): number {
  if (coatsOn(pot).length === 0) return 0
  const standing = standingOf(table, pot)
  const events = [...standing.events, { kind: 'wipe' as const, atMin: now / MIN_MS, waterMm: NOTHING_MM }]
  return Math.max(...zonesAfter({ ...standing, events }).map((zone) => zone.filled))
}
