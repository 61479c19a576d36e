import { zonesOf } from '../../engine/wait/forecast.ts'
import { courseOf, runPot, waterG } from '../../engine/wall/pot.ts'
import type { PotState, Table } from '../model/state.ts'
import { lessonFor } from './learning.ts'
import { MIN_MS, standingWith } from './pot-history.ts'

/** A wait that wets nothing: the pot as it stands at a moment. */
const NOTHING_MM = 0

/** As far as touches and weighings have taught how much dips bring. */
function runTo(table: Table, pot: PotState, now: number) {
  const { pot: wall, events, air0 } = standingWith(table, pot, pot.dips)
  const until = { kind: 'wipe' as const, atMin: now / MIN_MS, waterMm: NOTHING_MM }
  const soFar = events.filter(({ atMin }) => atMin <= until.atMin)
  const course = courseOf(wall, [...soFar, until], air0)
  return runPot(course, Math.exp(lessonFor(table, pot.dips.at(-1)?.bucketId ?? '').fillMean))
}

/** Filled part of the fullest stretch of a wall that is or was wet, at table time `now`, 0 to 1. */
export function wallFilledAt(table: Table, pot: PotState, now: number): number {
  return Math.max(...zonesOf(runTo(table, pot, now)).map((zone) => zone.filled))
}

/** Water in wall and coats at table time `now`, grams for the whole pot. */
export const waterNowG = (table: Table, pot: PotState, now: number): number => waterG(runTo(table, pot, now))
