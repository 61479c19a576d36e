import type { CoatFacts } from '../../../shared/nouns.ts'
import type { WallEvent } from '../../engine/contract.ts'
import { Z90 } from '../../engine/numeric/spread.ts'
import { waitsOf } from '../../engine/wait/forecast.ts'
import { KILN_SD, type Learned, TOUCH_SD } from '../../engine/wait/learned.ts'
import { courseOf, runPot } from '../../engine/wall/pot.ts'
import { coatsOn, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { airAt, airOf } from './air-inputs.ts'
import { lessonOf } from './learning.ts'
import { MIN_MS, START_WATER } from './pot-history.ts'
import { coverOn, profileOf } from './shape-inputs.ts'
import { ownWaitMin } from './wall-forecast.ts'
import { bodyOf, slopOf } from './wall-inputs.ts'

/** A wait, minutes from OUT: as likely shorter as longer, and its upper bound; `Infinity` is never in this air. */
export interface WaitMin {
  readonly likely: number
  readonly upper: number
}

/** The waits of a pot's whole plan. */
export interface WaitsAhead {
  /** After each coat, until the next one. */
  readonly next: readonly WaitMin[]
  /** After each coat, if it were the last, until the body is dry right through. */
  readonly kiln: readonly WaitMin[]
}

/** Upper fill of the wall and upper end of the spread, in sd: together about nine in ten waits are shorter. Tuned. */
const LATE_FILL_SDS = 1
const LATE_SPREAD_SDS = 0.8
/** From the start of a sitting to the first dip: enough for a damp wipe to leave. */
const FIRST_AT_MIN = 5
/** A pot that came wet, or was washed off, is told drier in steps of so many minutes: alike pots are computed once. */
const DRIED_STEP_MIN = 15
const KINDS_KEPT = 300
/** A wait beyond this counts as never: the engine's own horizon. */
const NEVER_MIN = 7 * 24 * 60

const kept = new Map<string, WaitsAhead>()

/** A bare wall that is or was wet. */
interface Wet {
  /** Filled part of its pores as it was wetted, 0 to 1. */
  readonly water: number
  /** How long it has dried, minutes in whole steps. */
  readonly driedMin: number
}

function wetOf(pot: PotState, now: number): Wet | undefined {
  const { damp, washedAt } = pot
  const at = washedAt ?? damp?.at
  if (at === undefined) return undefined
  // Coats that are on since say themselves how their wall was; what is to come on it counts from the first of them.
  const until = coatsOn(pot)[0]?.outAt ?? now
  const steps = Math.floor(Math.max(0, until - at) / MIN_MS / DRIED_STEP_MIN)
  return {
    water: START_WATER[washedAt === undefined ? (damp?.water ?? 'washed') : 'washed'],
    driedMin: Math.min(NEVER_MIN, steps * DRIED_STEP_MIN),
  }
}

/** What the waits of such a pot depend on. */
function kindOf(table: Table, pot: PotState, now: number): string {
  const { shape, absorption, pourInsideFirst } = pot.facts
  const coats = planOf(table, pot).map((coat) => {
    const bucket = table.buckets[coat.bucketId]
    const { solidsGravity, pinMm, clingsGramsPerCm2 } = bucket?.facts ?? {}
    return [coat, bucket?.gramsPerMl, solidsGravity, pinMm, clingsGramsPerCm2]
  })
  const { readyMeans, lowerMmPerS, dripS } = table.settings
  const own = absorption ?? table.board.absorption
  // What touches have taught but for `timeMean`, which scales what is kept.
  const { fillMean, fillSd, timeSd } = lessonOf(table)
  return JSON.stringify([
    fillMean,
    fillSd,
    timeSd,
    shape,
    own,
    wetOf(pot, now),
    pourInsideFirst,
    coats,
    table.air.at(-1)?.air,
    readyMeans,
    lowerMmPerS,
    dripS,
    table.board.sorptivityMmPerSqrtS,
  ])
}

/** Whether the waits of this pot's plan are known at table time `now`, ms, without computing. */
export const isKnown = (table: Table, pot: PotState, now: number): boolean =>
  table.settings.readyMeans === 'clock' || kept.has(kindOf(table, pot, now))

const always = (min: number): WaitMin => ({ likely: min, upper: min })

/**
 * The waits a pot's plan will bring, as if it were dipped from bisque at table time `now`, ms, or once a wall that was
 * wetted drinks again; each coat when the one below is dry. Kept by kind of pot and by what touches have taught: alike
 * pots are computed once.
 */
export function waitsAhead(table: Table, pot: PotState, now: number): WaitsAhead {
  const { settings } = table
  if (settings.readyMeans === 'clock') {
    const coats = planOf(table, pot)
    return {
      next: held(
        coats,
        coats.map((_, i) => always(ownWaitMin(settings, i))),
      ),
      kiln: coats.map(() => always(settings.kilnWaitMin)),
    }
  }
  const kind = kindOf(table, pot, now)
  let ahead = kept.get(kind)
  if (!ahead) {
    const wet = wetOf(pot, now)
    const [likely, upper] = [
      chain(table, pot, wet, 0, 0),
      chain(table, pot, wet, LATE_FILL_SDS, LATE_SPREAD_SDS),
    ]
    const both = (of: 'next' | 'kiln') =>
      likely[of].map((min, i) => ({ likely: min, upper: upper[of][i] ?? min }))
    ahead = { next: both('next'), kiln: both('kiln') }
    if (kept.size >= KINDS_KEPT) kept.clear()
    kept.set(kind, ahead)
  }
  const { next, kiln } = scaled(ahead, lessonOf(table))
  return { next: held(planOf(table, pot), next), kiln }
}

/** Waits no shorter than those for which the seconds of a plan's later coats are told. */
const held = (coats: readonly CoatFacts[], waits: readonly WaitMin[]): readonly WaitMin[] =>
  waits.map(({ likely, upper }, i) => {
    const least = coats[i + 1]?.afterMin ?? 0
    return { likely: Math.max(least, likely), upper: Math.max(least, upper) }
  })

/** The slower or faster air that touches have shown moves all waits alike. */
function scaled({ next, kiln }: WaitsAhead, learned: Learned): WaitsAhead {
  const by =
    (sds: number, ownSd: number) =>
    ({ likely, upper }: WaitMin): WaitMin => ({
      likely: within(likely * Math.exp(learned.timeMean)),
      upper: within(upper * Math.exp(learned.timeMean + sds * Math.hypot(ownSd, learned.timeSd))),
    })
  return { next: next.map(by(LATE_SPREAD_SDS, TOUCH_SD)), kiln: kiln.map(by(Z90, KILN_SD)) }
}

const within = (min: number): number => (min > NEVER_MIN ? Infinity : min)

/**
 * One run a coat instead of a whole forecast: a plan needs a moment alone, and at once.
 * @param fillSds, spreadSds how far above the likely fill and time, in sd.
 */
function chain(table: Table, pot: PotState, wet: Wet | undefined, fillSds: number, spreadSds: number) {
  const learned = lessonOf(table)
  const wall = {
    profile: profileOf(pot.facts),
    body: bodyOf(table, pot.facts),
    startWater: wet?.water ?? 0,
  }
  const air = airOf(airAt(table.air, Number.POSITIVE_INFINITY))
  const fill = Math.exp(learned.fillMean + fillSds * learned.fillSd)
  const spread = Math.exp(spreadSds * Math.hypot(TOUCH_SD, learned.timeSd))
  const events: WallEvent[] = wet ? [{ kind: 'air', atMin: 0, air }] : []
  const next: number[] = []
  const kiln: number[] = []
  let atMin = FIRST_AT_MIN
  if (wet) {
    const { thirstyMin } = waitsOf(runPot(courseOf(wall, events, air), fill), 'thirsty')
    atMin = Math.max(atMin, wet.driedMin, Math.min(NEVER_MIN, thirstyMin))
  }
  const coats = planOf(table, pot)
  for (const [i, coat] of coats.entries()) {
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
    next.push(waitMin)
    kiln.push(waits.kilnMin)
    atMin += Math.max(coats[i + 1]?.afterMin ?? 0, Math.min(NEVER_MIN, waitMin * spread))
  }
  return { next, kiln }
}
