/** Seconds for a wanted thickness on this pot now, and what the next coat loses on a wall that is half full. */

import { between, inRange } from '../check.ts'
import type { Air, CoatThickness, Dip, PotWall, WallEvent, ZoneForecast } from '../contract.ts'
import { densestGramsPerMl } from '../slop/slop.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { zonesOf } from './forecast.ts'

/** A pot as it stands, in its air. */
export interface PotHistory {
  readonly pot: PotWall
  readonly events: readonly WallEvent[]
  readonly air0: Air
}

/** Shortest dip that is offered, and longest that a hand can count (practice). */
export const SHORTEST_S = 1
export const LONGEST_S = 20

/** Zones right after all events, as computed (no learned factor moves a thickness). */
export function zonesAfter({ pot, events, air0 }: PotHistory): ZoneForecast[] {
  return zonesOf(runPot(courseOf(pot, events, air0), 1))
}

/** The zone a coat is told by: its tallest stretch, on the outside if it reaches there. */
export function tellingZone(zones: readonly ZoneForecast[], dipId: string): ZoneForecast | undefined {
  const on = zones.filter((zone) => zone.coats.some((coat) => coat.dipId === dipId))
  const outside = on.filter((zone) => zone.face === 'outside')
  const pool = outside.length > 0 ? outside : on
  return pool.reduce<ZoneForecast | undefined>(
    (best, zone) => (best && best.toMm - best.fromMm >= zone.toMm - zone.fromMm ? best : zone),
    undefined,
  )
}

/** One coat in its telling zone; undefined where it reaches nothing. */
function coatOn(standing: PotHistory, dip: Dip): CoatThickness | undefined {
  const zones = zonesAfter({ ...standing, events: [...standing.events, dip] })
  return tellingZone(zones, dip.id)?.coats.find(({ dipId }) => dipId === dip.id)
}

/** Its thickness, mm; 0 where it reaches nothing. */
export const coatMm = (standing: PotHistory, dip: Dip): number => coatOn(standing, dip)?.likelyMm ?? 0

export interface SecondsFor {
  /** Seconds that give it; undefined when none can. */
  readonly holdS: number | undefined
  /** Thickness at those seconds, or the most that any seconds give. */
  readonly likelyMm: number
}

/** Grows with x: the x in [low, high] where it passes `goal`, to `step`; undefined beyond the ends. */
export function whereReaches(
  of: (x: number) => number,
  low: number,
  high: number,
  goal: number,
  step: number,
): number | undefined {
  if (of(high) < goal) return undefined
  if (of(low) >= goal) return low
  let [a, b] = [low, high]
  while (b - a > step) {
    const mid = (a + b) / 2
    if (of(mid) < goal) a = mid
    else b = mid
  }
  return b
}

/** Seconds are told to this. */
const TENTH_S = 0.05
/** Where the search for seconds begins: what comes out under the shortest dip says that the glaze is too thick. */
const LEAST_S = 0.5

/**
 * Seconds, `longestS` at most, for `wantedMm` of this coat, in its own slop, cover and moment (`dip.holdS` is ignored).
 */
export function secondsFor(
  standing: PotHistory,
  dip: Dip,
  wantedMm: number,
  longestS = LONGEST_S,
): SecondsFor {
  between('wantedMm', wantedMm, 0, 20)
  const at = (holdS: number): number => coatMm(standing, { ...dip, holdS })
  inRange('longestS', longestS, LEAST_S, 600)
  const holdS = whereReaches(at, LEAST_S, longestS, wantedMm, TENTH_S)
  return { holdS, likelyMm: at(holdS ?? longestS) }
}

export interface NextCoat {
  readonly likelyMm: number
  /** One coat in twenty is thinner, one thicker. */
  readonly lowerMm: number
  readonly upperMm: number
  /** What the same dip would likely leave on the dry, bare pot. */
  readonly thirstyMm: number
}

const NO_COAT = { likelyMm: 0, lowerMm: 0, upperMm: 0 } as const

/** The next coat as the wall stands at the dip's moment, against the same dip on the dry, bare pot. */
export function nextCoat(standing: PotHistory, dip: Dip): NextCoat {
  const dry: PotHistory = { ...standing, pot: { ...standing.pot, startWater: 0 }, events: [] }
  const { likelyMm, lowerMm, upperMm } = coatOn(standing, dip) ?? NO_COAT
  return { likelyMm, lowerMm, upperMm, thirstyMm: coatMm(dry, dip) }
}

/** Thinnest slop that is worth asking for, g/mL. */
const THINNEST = 1.05

/** Density, g/mL, at which the dip's own seconds give `wantedMm`; undefined when no slop of this glaze does. */
export function densityFor(standing: PotHistory, dip: Dip, wantedMm: number): number | undefined {
  between('wantedMm', wantedMm, 0, 20)
  inRange('holdS', dip.holdS, LEAST_S, 600)
  const at = (gramsPerMl: number): number => coatMm(standing, { ...dip, slop: { ...dip.slop, gramsPerMl } })
  return whereReaches(at, THINNEST, densestGramsPerMl(dip.slop) - 1e-3, wantedMm, 5e-4)
}
