/**
 * That pot once more: the seconds and waits that give today's pot the coats of a fired one, and what is not as it was then.
 */

import { inRange } from '../check.ts'
import type { Dip } from '../contract.ts'
import { waitsOf } from '../wait/forecast.ts'
import {
  coatMm,
  densityFor,
  LONGEST_S,
  type PotHistory,
  type SecondsFor,
  secondsFor,
  whereReaches,
} from '../wait/seconds.ts'
import type { Goal } from '../wall/drying.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { lnDosePerK } from './heat.ts'

/** A coat to make again: today's slop, the cover as it was dipped, seconds as they were counted. */
export interface CoatDone {
  readonly dip: Dip
  /** Its dry thickness then, mm. */
  readonly mm: number
  /** Minutes that it came after the coat before it; of the first nothing. */
  readonly waitedMin: number
  /** Densities that a bucket of it can be mixed to, g/mL. */
  readonly densities: { readonly least: number; readonly most: number }
}

export interface CoatAgain {
  readonly dipId: string
  readonly glazeId: string
  readonly doneS: number
  readonly wantedMm: number
  /** Minutes that it goes on after the coat before it, and that it did then; 0 of the first. */
  readonly afterMin: number
  readonly waitedMin: number
  /** Seconds that give it, or that come nearest: near to those of then. */
  readonly holdS: number
  /** What they give, mm. */
  readonly likelyMm: number
  /** False where no such seconds and no wait give it to 5 %. */
  readonly meets: boolean
  /** A density that would, g/mL; null where none does, or none is needed. */
  readonly wouldGramsPerMl: number | null
}

/** What a person would notice. Our choice. */
export const NOTICED = 0.05
/** A wall that never drinks again is gone on with after this, min: a night. Nobody waits longer for a coat. */
const NIGHT_MIN = 12 * 60
/** A wait of then that was longer is made no longer than it needs to be, min. Our choice. */
const LONG_MIN = 4 * 60
/** Waits are told to this, min. */
const STEP_MIN = 1
/** A wait may end where those seconds give so much of it: a wall dries ever slower, and the rest is not worth hours. */
const NEARLY = 1 - NOTICED / 2
/** A dip is held no longer than so many times what it was, or so much longer, s: more is another dip. Our choice. */
const MOST_TIMES = 2
const MOST_MORE_S = 2
const mostSeconds = (doneS: number): number =>
  Math.max(doneS, Math.min(LONGEST_S, Math.max(MOST_TIMES * doneS, doneS + MOST_MORE_S)))

/**
 * Coat by coat in their order, each on the wall as those before it leave it. The first goes on at the moment of its own
 * dip, each other after the wait of then, or once it may (`goal`) where that is later: a wall that had time to dry drinks
 * again, and seconds do not make up for it. Where the wait of then gives too thin a coat, the shortest that does.
 * RangeError for a thickness of 0 or less, a wait below 0, or a pot or dip that makes no sense.
 */
export function stackAgain(
  standing: PotHistory,
  coats: readonly CoatDone[],
  goal: Goal,
): readonly CoatAgain[] {
  const events = [...standing.events]
  let lastMin = coats[0]?.dip.atMin ?? 0
  let readyMin = 0
  return coats.map((done, i): CoatAgain => {
    const { dip, mm, densities } = done
    inRange(`coats[${i}].mm`, mm, 0.001, 20)
    const waitedMin = i === 0 ? 0 : inRange(`coats[${i}].waitedMin`, done.waitedMin, 0, 1e7)
    const now: PotHistory = { ...standing, events: [...events] }
    const least = Math.min(NIGHT_MIN, readyMin)
    const way: Way = { now, dip, mm, lastMin }
    const { afterMin, holdS, likelyMm } = i === 0 ? solvedAt(way, 0) : chosen(way, least, waitedMin)
    const next = { ...dip, atMin: lastMin + afterMin }
    const meets = Math.abs(likelyMm - mm) <= NOTICED * mm
    const made = { ...next, holdS: holdS ?? mostSeconds(dip.holdS) }
    // Too thin under the longest count asks for a thicker slop at that count, too thick under none for a thinner one.
    const would = meets
      ? undefined
      : densityFor(now, holdS === undefined ? made : { ...next, holdS: dip.holdS }, mm)
    events.push(made)
    const waits = waitsOf(runPot(courseOf(standing.pot, events, standing.air0), 1), goal)
    readyMin = waitOf(waits, goal)
    lastMin = made.atMin
    return {
      dipId: dip.id,
      glazeId: dip.glazeId,
      doneS: dip.holdS,
      wantedMm: mm,
      afterMin,
      waitedMin,
      holdS: made.holdS,
      likelyMm,
      meets,
      wouldGramsPerMl:
        would !== undefined && would >= densities.least && would <= densities.most ? would : null,
    }
  })
}

/** A coat that is to follow what is on by `lastMin`. */
interface Way {
  readonly now: PotHistory
  readonly dip: Dip
  readonly mm: number
  readonly lastMin: number
}

interface Solved extends SecondsFor {
  readonly afterMin: number
}

/** Its seconds after a wait. */
const solvedAt = ({ now, dip, mm, lastMin }: Way, afterMin: number): Solved => ({
  afterMin,
  ...secondsFor(now, { ...dip, atMin: lastMin + afterMin }, mm, mostSeconds(dip.holdS)),
})

/** The shortest wait of these after which `holdS` nearly give `mm`, and its own seconds then. */
function shortest(way: Way, least: number, most: number, holdS: number, mm: number): Solved {
  const { now, dip, lastMin } = way
  const after = (min: number): number => coatMm(now, { ...dip, holdS, atMin: lastMin + min })
  return solvedAt(way, whereReaches(after, least, most, NEARLY * mm, STEP_MIN) ?? most)
}

/**
 * Its wait and seconds: as then, unless that is less than it takes, or far more. Where the most seconds do not give it after
 * the wait of then, it waits until they do, so that a little less glaze in the slop moves neither by more than a little.
 */
function chosen(way: Way, readyMin: number, waitedMin: number): Solved {
  const { dip, mm } = way
  const asThen = solvedAt(way, Math.max(readyMin, Math.min(NIGHT_MIN, waitedMin)))
  const isLong = asThen.afterMin > LONG_MIN
  if (asThen.holdS !== undefined)
    return isLong ? shortest(way, readyMin, asThen.afterMin, Math.max(dip.holdS, asThen.holdS), mm) : asThen
  const night = solvedAt(way, NIGHT_MIN)
  const goal = night.holdS === undefined ? night.likelyMm : mm
  return shortest(way, isLong ? readyMin : asThen.afterMin, NIGHT_MIN, mostSeconds(dip.holdS), goal)
}

const waitOf = (waits: ReturnType<typeof waitsOf>, goal: Goal): number =>
  goal === 'touch' ? waits.touchMin : goal === 'thirsty' ? waits.thirstyMin : waits.kilnMin

/** What a pot was, or is to be, made with. */
export interface MadeWith {
  readonly wallMm: number
  /** It stands, or is to stand, on a catch slab in the kiln. */
  readonly slab: boolean
  readonly bisqueCone: string
  readonly absorption: number
  readonly coats: readonly {
    readonly glazeId: string
    readonly fill: string
    readonly gramsPerMl: number
  }[]
}

export type Difference =
  | { readonly what: 'wall' | 'absorption'; readonly was: number; readonly now: number }
  | { readonly what: 'bisque'; readonly was: string; readonly now: string }
  | { readonly what: 'density'; readonly glazeId: string; readonly was: number; readonly now: number }
  | { readonly what: 'fill'; readonly glazeId: string }
  | { readonly what: 'slab'; readonly was: boolean }
  /** The firing then ran so many kelvins over its plan. */
  | { readonly what: 'heat'; readonly overK: number }

/** A density moves seconds far more than itself: half of that. Our choice. */
const NOTICED_SLOP = NOTICED / 2

const differs = (then: number, now: number, noticed = NOTICED): boolean =>
  Math.abs(now - then) > noticed * then

/**
 * What differs by more than 5 %: of a density, from half as much, what it holds beside water, of a firing the flow dose. `overK` is null where
 * no cone told it; `plannedEndC` the end that was planned then.
 */
export function differences(
  then: MadeWith,
  now: MadeWith,
  fired: { readonly overK: number | null; readonly plannedEndC: number },
): readonly Difference[] {
  const found: Difference[] = []
  if (differs(then.wallMm, now.wallMm)) found.push({ what: 'wall', was: then.wallMm, now: now.wallMm })
  if (then.bisqueCone !== now.bisqueCone)
    found.push({ what: 'bisque', was: then.bisqueCone, now: now.bisqueCone })
  if (differs(then.absorption, now.absorption))
    found.push({ what: 'absorption', was: then.absorption, now: now.absorption })
  const told = new Set<string>()
  for (const coat of then.coats) {
    const today = now.coats.find(({ glazeId }) => glazeId === coat.glazeId)
    if (!today || told.has(coat.glazeId)) continue
    told.add(coat.glazeId)
    const { glazeId } = coat
    if (differs(coat.gramsPerMl - 1, today.gramsPerMl - 1, NOTICED_SLOP))
      found.push({ what: 'density', glazeId, was: coat.gramsPerMl, now: today.gramsPerMl })
    if (coat.fill !== today.fill) found.push({ what: 'fill', glazeId })
  }
  if (then.slab !== now.slab) found.push({ what: 'slab', was: then.slab })
  const { overK, plannedEndC } = fired
  if (overK !== null && Math.abs(overK * lnDosePerK(plannedEndC)) > NOTICED)
    found.push({ what: 'heat', overK })
  return found
}
