import type { WallEvent } from '../../engine/contract.ts'
import { Z90 } from '../../engine/numeric/spread.ts'
import { waitsOf } from '../../engine/wait/forecast.ts'
import { KILN_SD, type Learned, TOUCH_SD } from '../../engine/wait/learned.ts'
import { courseOf, runPot } from '../../engine/wall/pot.ts'
import { planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { airAt, airOf, bodyOf, coverOn, profileOf, slopOf } from './engine-inputs.ts'
import { ownWaitMin } from './forecast.ts'
import { lessonOf } from './learning.ts'

/** Late edges of the waits of a pot's whole plan, minutes from OUT; `Infinity` is never in this air. */
export interface UpperWaits {
  /** After each coat, until the next one. */
  readonly waitsMin: readonly number[]
  /** After each coat, if it were the last, until the body is dry right through. */
  readonly kilnMin: readonly number[]
}

/** Upper fill of the wall and upper end of the spread, in sd: together about nine in ten waits are shorter. Tuned. */
const LATE_FILL_SDS = 1
const LATE_SPREAD_SDS = 0.8
/** From the start of a sitting to the first dip: enough for a damp wipe to leave. */
const FIRST_AT_MIN = 5
const KINDS_KEPT = 300
/** A wait beyond this counts as never: the engine's own horizon. */
const NEVER_MIN = 7 * 24 * 60

const kept = new Map<string, UpperWaits>()

/** What the waits of such a pot depend on. */
function kindOf(table: Table, pot: PotState): string {
  const { shape, absorption, pourInsideFirst } = pot.facts
  const coats = planOf(table, pot).map((coat) => {
    const bucket = table.buckets[coat.bucketId]
    return [coat, bucket?.gramsPerMl, bucket?.facts.solidsGravity, bucket?.facts.pinMm]
  })
  const { readyMeans, lowerMmPerS, dripS } = table.settings
  const own = absorption ?? table.board.absorption
  return JSON.stringify([
    shape,
    own,
    pot.damp?.water,
    pourInsideFirst,
    coats,
    table.air.at(-1)?.air,
    readyMeans,
    lowerMmPerS,
    dripS,
    table.board.sorptivityMmPerSqrtS,
  ])
}

/** Whether the waits of this pot's plan are known without computing. */
export const isKnown = (table: Table, pot: PotState): boolean =>
  table.settings.readyMeans === 'clock' || kept.has(kindOf(table, pot))

/**
 * The waits a pot's plan will bring, as if it were dipped from bisque, each coat at the late edge of the one below.
 * Kept by kind of pot: alike pots are computed once. What touches have taught scales them.
 */
export function upperWaitsOf(table: Table, pot: PotState): UpperWaits {
  const { settings } = table
  if (settings.readyMeans === 'clock') {
    const coats = planOf(table, pot)
    return {
      waitsMin: coats.map((_, i) => ownWaitMin(settings, i)),
      kilnMin: coats.map(() => settings.kilnWaitMin),
    }
  }
  const kind = kindOf(table, pot)
  let ahead = kept.get(kind)
  if (!ahead) {
    ahead = computed(table, pot)
    if (kept.size >= KINDS_KEPT) kept.clear()
    kept.set(kind, ahead)
  }
  return scaled(ahead, lessonOf(table))
}

/** The slower or faster air that touches have shown moves all waits alike. */
function scaled({ waitsMin, kilnMin }: UpperWaits, learned: Learned): UpperWaits {
  const touch = Math.exp(learned.timeMean + LATE_SPREAD_SDS * Math.hypot(TOUCH_SD, learned.timeSd))
  const kiln = Math.exp(learned.timeMean + Z90 * Math.hypot(KILN_SD, learned.timeSd))
  const by = (factor: number) => (min: number) => (min * factor > NEVER_MIN ? Infinity : min * factor)
  return { waitsMin: waitsMin.map(by(touch)), kilnMin: kilnMin.map(by(kiln)) }
}

/** One run a coat instead of a whole forecast: a plan needs the late edge alone, and at once. */
function computed(table: Table, pot: PotState): UpperWaits {
  const learned = lessonOf(table)
  const wall = {
    profile: profileOf(pot.facts),
    body: bodyOf(table, pot.facts),
    startWater: pot.damp ? 0.4 : 0,
  }
  const air = airOf(airAt(table.air, Number.POSITIVE_INFINITY))
  const fill = Math.exp(learned.fillMean + LATE_FILL_SDS * learned.fillSd)
  const spread = Math.exp(LATE_SPREAD_SDS * Math.hypot(TOUCH_SD, learned.timeSd))
  const events: WallEvent[] = []
  const waitsMin: number[] = []
  const kilnMin: number[] = []
  let atMin = FIRST_AT_MIN
  for (const [i, coat] of planOf(table, pot).entries()) {
    const bucket = table.buckets[coat.bucketId]
    if (!bucket) break
    events.push({
      kind: 'dip',
      id: `${i}`,
      atMin,
      glazeId: coat.bucketId,
      slop: slopOf(table, bucket, bucket.gramsPerMl),
      holdS: coat.holdS,
      cover: coverOn(pot.facts, coat.cover),
      lowerMmPerS: table.settings.lowerMmPerS,
      liftMmPerS: table.settings.lowerMmPerS,
      dripS: table.settings.dripS,
    })
    const waits = waitsOf(runPot(courseOf(wall, events, air), fill), 'kiln')
    const waitMin = table.settings.readyMeans === 'thirsty' ? waits.thirstyMin : waits.touchMin
    waitsMin.push(waitMin)
    kilnMin.push(waits.kilnMin)
    atMin += Math.min(NEVER_MIN, waitMin * spread)
  }
  return { waitsMin, kilnMin }
}
