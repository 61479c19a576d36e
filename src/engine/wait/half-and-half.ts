/** Half and half: side dips of a plate or anything wider than the bucket, each sector forecast on its own. */

import { inRange } from '../check.ts'
import type { PotForecast, WallEvent, ZoneForecast } from '../contract.ts'
import { forecastPot, type NotYet } from './forecast.ts'
import type { Learned } from './learned.ts'
import { type PotHistory, zonesAfter } from './seconds.ts'

/** Which half a side dip lies on; undefined for a dip of the whole pot. */
export type HalfOf = (dipId: string) => 0 | 1 | undefined
/** Where only the first half's dips reached, only the second's, and both. */
export type Sector = 'first' | 'second' | 'overlap'

const LEFT_OUT = { first: 1, second: 0, overlap: undefined } as const

/** What happened in a sector: everything but the side dips of the half across. */
export const eventsIn = (
  sector: Sector,
  events: readonly WallEvent[],
  halfOf: HalfOf,
): readonly WallEvent[] => {
  const out = LEFT_OUT[sector]
  return out === undefined
    ? events
    : events.filter((event) => event.kind !== 'dip' || halfOf(event.id) !== out)
}

export interface HalfAndHalf {
  readonly first: readonly ZoneForecast[]
  readonly second: readonly ZoneForecast[]
  /** The commonest over-thick spot there is, and the slowest: its waits are the pot's. */
  readonly overlap: PotForecast
  /** Part of the pot's round that both halves reached. */
  readonly overlapPart: number
}

/**
 * Side dips are told as if all round (their covers say how far up and down the sector they reach); `overlapDeg` is the
 * width of each of the two sectors that both halves reached, 0 to 180.
 */
export function halfAndHalf(
  { pot, events, air0 }: PotHistory,
  halfOf: HalfOf,
  overlapDeg: number,
  learned: Learned,
  notYet?: NotYet,
): HalfAndHalf {
  inRange('overlapDeg', overlapDeg, 0, 180)
  const zones = (sector: Sector) => zonesAfter({ pot, events: eventsIn(sector, events, halfOf), air0 })
  return {
    first: zones('first'),
    second: zones('second'),
    overlap: forecastPot(pot, events, air0, learned, notYet),
    overlapPart: (2 * overlapDeg) / 360,
  }
}
