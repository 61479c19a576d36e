/** That pot once more: the seconds that give today's pot the coats of a fired one, and what is not as it was then. */

import { inRange } from '../check.ts'
import type { Dip, WallEvent } from '../contract.ts'
import { waitsOf } from '../wait/forecast.ts'
import { densityFor, LONGEST_S, type PotHistory, secondsFor } from '../wait/seconds.ts'
import type { Goal } from '../wall/drying.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { lnDosePerK } from './heat.ts'

/** A coat to make again: today's slop, the cover as it was dipped, seconds as they were counted; its dry thickness then. */
export interface CoatDone {
  readonly dip: Dip
  readonly mm: number
}

export interface CoatAgain {
  readonly dipId: string
  readonly glazeId: string
  readonly doneS: number
  readonly wantedMm: number
  /** Seconds that give it, or that come nearest. */
  readonly holdS: number
  /** What they give, mm. */
  readonly likelyMm: number
  /** False where no seconds give it to 5 %. */
  readonly meets: boolean
  /** A density that would, g/mL; null where none does, or none is needed. */
  readonly wouldGramsPerMl: number | null
  /** Minutes until the next coat may follow; Infinity: never. */
  readonly waitMin: number
}

/** What a person would notice. Our choice. */
export const NOTICED = 0.05
/** A wall that never drinks again is gone on with after this, min: a night. */
const NIGHT_MIN = 12 * 60

/**
 * Coat by coat in their order, each on the wall as those before it leave it, each as soon as it may (`goal`). The first
 * goes on at the moment of its own dip. RangeError for a thickness of 0 or less, or a pot or dip that makes no sense.
 */
export function stackAgain(
  standing: PotHistory,
  coats: readonly CoatDone[],
  goal: Goal,
): readonly CoatAgain[] {
  const events = [...standing.events]
  let atMin = coats[0]?.dip.atMin ?? 0
  return coats.map(({ dip, mm }, i): CoatAgain => {
    inRange(`coats[${i}].mm`, mm, 0.001, 20)
    const now: PotHistory = { ...standing, events: [...events] }
    const next = { ...dip, atMin }
    const { holdS, likelyMm } = secondsFor(now, next, mm)
    const meets = Math.abs(likelyMm - mm) <= NOTICED * mm
    const made = { ...next, holdS: holdS ?? LONGEST_S }
    // Too thin under the longest count asks for a thicker slop at that count, too thick under none for a thinner one.
    const would = meets
      ? null
      : (densityFor(now, holdS === undefined ? made : { ...next, holdS: dip.holdS }, mm) ?? null)
    events.push(made)
    const waits = waitsOf(runPot(courseOf(standing.pot, events, standing.air0), 1), goal)
    const waitMin = waitOf(waits, goal)
    atMin += Math.min(NIGHT_MIN, waitMin)
    return {
      dipId: dip.id,
      glazeId: dip.glazeId,
      doneS: dip.holdS,
      wantedMm: mm,
      holdS: made.holdS,
      likelyMm,
      meets,
      wouldGramsPerMl: would,
      waitMin,
    }
  })
}

/** Minutes that a pot's coats wait, each for the next and the last for the kiln's door, as computed; Infinity: never. */
export function waitsMin({ pot, events, air0 }: PotHistory, goal: Goal): number {
  let sum = 0
  for (const [i, { kind }] of events.entries()) {
    if (kind !== 'dip') continue
    const until = events.slice(0, i + 1).filter((event) => event.kind !== 'air')
    sum += waitOf(waitsOf(runPot(courseOf(pot, [...until, ...airsOf(events)], air0), 1), goal), goal)
  }
  return sum
}

/** The airs of a history: what a wait runs through, whenever they were said. */
const airsOf = (events: readonly WallEvent[]) => events.filter(({ kind }) => kind === 'air')

const waitOf = (waits: ReturnType<typeof waitsOf>, goal: Goal): number =>
  goal === 'touch' ? waits.touchMin : goal === 'thirsty' ? waits.thirstyMin : waits.kilnMin

/** What a pot was, or is to be, made with. */
export interface MadeWith {
  readonly wallMm: number
  readonly bisqueCone: string
  readonly absorption: number
  readonly coats: readonly {
    readonly glazeId: string
    readonly fill: string
    readonly gramsPerMl: number
  }[]
  /** All of its waits, min. */
  readonly waitMin: number
}

export type Difference =
  | { readonly what: 'wall' | 'absorption' | 'waits'; readonly was: number; readonly now: number }
  | { readonly what: 'bisque'; readonly was: string; readonly now: string }
  | { readonly what: 'density'; readonly glazeId: string; readonly was: number; readonly now: number }
  | { readonly what: 'fill'; readonly glazeId: string }
  /** The firing then ran so many kelvins over its plan. */
  | { readonly what: 'heat'; readonly overK: number }

const differs = (then: number, now: number): boolean => Math.abs(now - then) > NOTICED * then

/**
 * What differs by more than 5 %: of a density what it holds beside water, of a firing the flow dose. `overK` is null where
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
    if (differs(coat.gramsPerMl - 1, today.gramsPerMl - 1))
      found.push({ what: 'density', glazeId, was: coat.gramsPerMl, now: today.gramsPerMl })
    if (coat.fill !== today.fill) found.push({ what: 'fill', glazeId })
  }
  if (Number.isFinite(now.waitMin) && then.waitMin > 0 && differs(then.waitMin, now.waitMin))
    found.push({ what: 'waits', was: then.waitMin, now: now.waitMin })
  const { overK, plannedEndC } = fired
  if (overK !== null && Math.abs(overK * lnDosePerK(plannedEndC)) > NOTICED)
    found.push({ what: 'heat', overK })
  return found
}
