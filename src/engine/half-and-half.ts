/** Half and half: two side dips of a plate or anything wider than the bucket, each sector forecast on its own. */

import { inRange } from './check.ts'
import type { Dip, PotForecast } from './contract.ts'
import { forecastPot } from './forecast.ts'
import type { Learned } from './learned.ts'
import type { Standing } from './seconds.ts'

export interface HalfAndHalf {
  /** Where only the first dip reached, only the second, and both: the commonest over-thick spot there is. */
  readonly first: PotForecast
  readonly second: PotForecast
  readonly overlap: PotForecast
  /** Part of the pot's round that both dips reached. */
  readonly overlapPart: number
}

/**
 * `first` and `second` are side dips (their covers say how far up and down the sector they reach, as if all round);
 * `overlapDeg` is the width of each of the two sectors that both reached, 0 to 180.
 */
export function halfAndHalf(
  { pot, events, air0 }: Standing,
  first: Dip,
  second: Dip,
  overlapDeg: number,
  learned: Learned,
): HalfAndHalf {
  inRange('overlapDeg', overlapDeg, 0, 180)
  const under = (...dips: Dip[]): PotForecast => forecastPot(pot, [...events, ...dips], air0, learned)
  return {
    first: under(first),
    second: under(second),
    overlap: under(first, second),
    overlapPart: (2 * overlapDeg) / 360,
  }
}
