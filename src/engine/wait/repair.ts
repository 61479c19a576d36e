/** After a slip: the seconds of the coats that remain, or which to leave out. */

import type { Dip, WallEvent, ZoneForecast } from '../contract.ts'
import { gradeZone, type Limits } from './grade.ts'
import { type PotHistory, zonesAfter } from './seconds.ts'

export interface RestDip {
  readonly dipId: string
  /** Seconds to hold; undefined: skip this coat. */
  readonly holdS: number | undefined
}

export interface Repair {
  readonly rest: readonly RestDip[]
  /** The pot at the end of the repaired plan, and of the plan as it was. */
  readonly zones: readonly ZoneForecast[]
  readonly plannedZones: readonly ZoneForecast[]
  /** Is every zone's likely figure inside its limits? */
  readonly inside: boolean
}

/** Seconds tried for each coat: half seconds to eight. */
const TRIED_S: readonly number[] = Array.from({ length: 15 }, (_, k) => 1 + k / 2)
/** A mm past a limit weighs as much as this many mm from the plan. */
const OVER_WEIGHT = 100

const spanOf = (zone: ZoneForecast): number => zone.toMm - zone.fromMm

/** Planned thickness at the middle of a zone on the same face. */
function plannedAt(planned: readonly ZoneForecast[], zone: ZoneForecast): number {
  const midMm = (zone.fromMm + zone.toMm) / 2
  const found = planned.find((p) => p.face === zone.face && midMm >= p.fromMm && midMm <= p.toMm)
  return found?.likelyMm ?? 0
}

function cost(zones: readonly ZoneForecast[], planned: readonly ZoneForecast[], limits: Limits): number {
  let sum = 0
  for (const zone of zones) {
    const { likelyMm, limitMm } = gradeZone(zone, limits)
    const off = zone.likelyMm - plannedAt(planned, zone)
    const over = Math.max(0, likelyMm - limitMm)
    sum += spanOf(zone) * (off * off + OVER_WEIGHT * over * over + (over > 0 ? OVER_WEIGHT : 0))
  }
  return sum
}

const isInside = (zones: readonly ZoneForecast[], limits: Limits): boolean =>
  zones.every((zone) => gradeZone(zone, limits).grade !== 'over')

/**
 * `standing` is the pot as it happened; `planned` all its events as they were meant; `rest` the dips still to come, at
 * their moments. Each coat in turn gets the seconds that keep every zone inside its limits and nearest to plan, and is
 * skipped only where its shortest goes over on what is on by then: nearness to plan is no reason to leave a glaze out. A
 * second round lets earlier coats make room for later ones.
 */
export function repairRest(
  standing: PotHistory,
  planned: readonly WallEvent[],
  rest: readonly Dip[],
  limits: Limits,
): Repair {
  const plannedZones = zonesAfter({ ...standing, events: planned })
  const chosen: (number | undefined)[] = rest.map((dip) => dip.holdS)
  const zonesOf = (seconds = chosen): ZoneForecast[] => {
    const dips = rest.flatMap((dip, k) => {
      const holdS = seconds[k]
      return holdS === undefined ? [] : [{ ...dip, holdS }]
    })
    return zonesAfter({ ...standing, events: [...standing.events, ...dips] })
  }
  /** Does the shortest of this coat stay inside the limits on what is on by then? */
  const fitsShortest = (k: number): boolean => isInside(zonesOf([...chosen.slice(0, k), TRIED_S[0]]), limits)
  for (let round = 0; round < 2; round++)
    for (let k = 0; k < rest.length; k++) {
      let best = Infinity
      let bestS: number | undefined
      for (const holdS of [rest[k]!.holdS, ...TRIED_S, undefined]) {
        chosen[k] = holdS
        if (holdS === undefined && fitsShortest(k)) break
        const now = cost(zonesOf(), plannedZones, limits)
        if (now < best - 1e-12) {
          best = now
          bestS = holdS
        }
      }
      chosen[k] = bestS
    }
  const zones = zonesOf()
  return {
    rest: rest.map((dip, k) => ({ dipId: dip.id, holdS: chosen[k] })),
    zones,
    plannedZones,
    inside: isInside(zones, limits),
  }
}
