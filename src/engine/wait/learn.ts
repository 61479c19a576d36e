/**
 * What checks teach. Two shared factors are learned together: how much more water dips bring than computed (*fill*),
 * which decides whether wall or air must dry a coat, and how much longer waits are than computed (*time*). Everything
 * is recomputed from the observations that are kept, so taking one back is exact.
 */

import { inRange } from '../check.ts'
import type { Air, PotWall, WallEvent } from '../contract.ts'
import { normalPdf } from '../numeric/spread.ts'
import { HORIZON_MIN } from '../parameters.ts'
import type { Goal } from '../wall/drying.ts'
import { courseOf, dryGlazeG, runPot, waterG } from '../wall/pot.ts'
import { waitsOf, wets, wettedS } from './forecast.ts'
import { KILN_SD, type Learned, TOUCH_SD, UNLEARNED } from './learned.ts'
import { type Interval, timeFactor } from './time-factor.ts'

/** A wait that was looked at. One dip of a pot gives one: its latest damp and its earliest dry look. */
export interface Look {
  readonly kind: 'look'
  readonly id: string
  readonly of: Goal
  readonly pot: PotWall
  /** Events up to the dip waited for, and the airs of the wait. */
  readonly events: readonly WallEvent[]
  readonly air0: Air
  /** Latest moment it was not yet, earliest it was; both alike, or `exactMin`, if it was watched. */
  readonly dampMin?: number
  readonly dryMin?: number
  readonly exactMin?: number
}

/** A pot on the scale: what dips brought and the air has not taken, water and dry glaze together, grams. */
export interface Weighing {
  readonly kind: 'weighing'
  readonly id: string
  readonly pot: PotWall
  readonly events: readonly WallEvent[]
  readonly air0: Air
  readonly atMin: number
  /** Weight now less that of the bisque. */
  readonly gainG: number
}

export type Observation = Look | Weighing

export type Dropped = 'contradiction' | 'tooEarly' | 'never' | 'noGain'

export interface Lesson extends Learned {
  /** Observations that could not be used, and why. */
  readonly dropped: readonly { readonly id: string; readonly why: Dropped }[]
}

/** A tap in fifty is on the wrong answer (assumption). */
export const LABEL_NOISE = 0.02
/** Nodes of ln(fill): the same for every lesson, so that an observation is run through the balance once. */
const FILL_STEPS = 13
/** The node of the computed fill. */
const AS_COMPUTED = (FILL_STEPS - 1) / 2
const FILL_REACH = 2.8
const FILLS: readonly number[] = Array.from(
  { length: FILL_STEPS },
  (_, k) => UNLEARNED.fillSd * FILL_REACH * ((2 * k) / (FILL_STEPS - 1) - 1),
)
/** A lesson narrower than the grid can show is taken as this wide, part of a step. */
const LEAST_PART = 0.5
/** A kitchen scale tells to this, grams (assumption). */
const SCALE_G = 2
/** Doubt of what the computed glaze weighs dry, which the scale can't tell from water, part of it (assumption). */
const DRY_PART = 0.15
/** Part of a gain that is dry glaze: slop of 1.45 is half water by weight. */
const DRY_SHARE = 0.5
/** Model error of the gain of a whole pot, sd of its logarithm, beside these. Assumption. */
const GAIN_SD = 0.05
/** A weight in fifty is another pot's, or typed wrong (assumption): as likely then at any of `STRAY_LN` of ln(gain). */
const STRAY = 0.02
const STRAY_LN = 4
/** Lightest gain that says anything, grams. */
const LEAST_GAIN_G = 1

/** How well a kitchen scale tells what dips brought, from their grams: sd of its logarithm. */
export const gainSd = (gainG: number): number =>
  Math.hypot(GAIN_SD, DRY_SHARE * DRY_PART, SCALE_G / inRange('gainG', gainG, LEAST_GAIN_G, 1e6))

/**
 * How well a weighing right after the last dip would tell ln(fill): its sd. Where the wall is filling, more water brought
 * is not as much more gained. 10 at most, where it would tell nothing.
 */
export function weighingTells({ pot, events, air0 }: Pick<Weighing, 'pot' | 'events' | 'air0'>): number {
  const course = courseOf(pot, events, air0)
  const [less, as, more] = [-UNLEARNED.fillSd, 0, UNLEARNED.fillSd].map((fill) => {
    const run = runPot(course, Math.exp(fill))
    return waterG(run) + dryGlazeG(run)
  }) as [number, number, number]
  if (!(less >= LEAST_GAIN_G && more > less)) return TELLS_NOTHING
  return Math.min(TELLS_NOTHING, (gainSd(as) * 2 * UNLEARNED.fillSd) / Math.log(more / less))
}
const TELLS_NOTHING = 10

/** What an observation would have been at each node of the fill grid, or why it teaches nothing. */
export type AtNodes = readonly number[] | Dropped

const WHY: readonly unknown[] = ['contradiction', 'tooEarly', 'never', 'noGain'] satisfies Dropped[]

/** Whether it may have come from `RunMemory`. */
export const isAtNodes = (value: unknown): value is AtNodes =>
  WHY.includes(value) ||
  (Array.isArray(value) && value.length === FILL_STEPS && value.every((at) => Number.isFinite(at) && at > 0))

/** Runs that outlive the page, so that a start need not repeat them. `key` holds all that a run depends on. */
export interface RunMemory {
  recall(key: string): AtNodes | undefined
  note(key: string, at: AtNodes): void
}

let memory: RunMemory | undefined

/** From now on runs are looked for there first. Undefined: nowhere. */
export function rememberRuns(from: RunMemory | undefined): void {
  memory = from
}

/** Values at all nodes: every second one is run, those between are the geometric means of their neighbours. */
function atEach(run: (fill: number) => number): number[] {
  const values = FILLS.map((fill, k) => (k % 2 === 0 ? run(fill) : 0))
  return values.map((value, k) => (k % 2 === 0 ? value : Math.sqrt(values[k - 1]! * values[k + 1]!)))
}

const kept = new WeakMap<Observation, AtNodes>()

function atNodes(observation: Observation): AtNodes {
  let value = kept.get(observation)
  if (value === undefined) {
    const { id: _, ...seen } = observation
    const key = memory && JSON.stringify(seen)
    value = key === undefined ? undefined : memory?.recall(key)
    if (value === undefined) {
      value = observation.kind === 'look' ? looked(observation) : weighed(observation)
      if (key !== undefined) memory?.note(key, value)
    }
    kept.set(observation, value)
  }
  return value
}

const minutesOf = (of: Goal, waits: ReturnType<typeof waitsOf>): number =>
  of === 'touch' ? waits.touchedMin : of === 'thirsty' ? waits.thirstyMin : waits.kilnMin

const LEAST_WAIT_MIN = 1 / 60

function looked(look: Look): AtNodes {
  for (const moment of [look.dampMin, look.dryMin, look.exactMin])
    if (moment !== undefined) inRange('moment of a look', moment, -1e12, 1e12)
  if (look.dampMin !== undefined && look.dryMin !== undefined && look.dampMin >= look.dryMin)
    return 'contradiction'
  const course = courseOf(look.pot, look.events, look.air0)
  const fromMin = course.originMin + wettedS(course) / 60
  const latest = look.exactMin ?? look.dryMin ?? look.dampMin
  if (latest === undefined || latest <= fromMin) return 'tooEarly'
  const waits = atEach((fill) =>
    Math.max(LEAST_WAIT_MIN, minutesOf(look.of, waitsOf(runPot(course, Math.exp(fill)), look.of))),
  )
  return waits[AS_COMPUTED]! < HORIZON_MIN ? waits : 'never'
}

function weighed(weighing: Weighing): AtNodes {
  inRange('gainG', weighing.gainG, -1e6, 1e6)
  if (weighing.gainG < LEAST_GAIN_G) return 'noGain'
  const grams = gainsG(weighing)
  return grams.every((g) => g > 0) ? grams : 'noGain'
}

/** What a pot has gained at the moment of a weighing, at each node, grams. */
function gainsG({ pot, events, air0, atMin }: Omit<Weighing, 'kind' | 'id' | 'gainG'>): readonly number[] {
  const until: WallEvent[] = events.filter((event) => event.atMin <= atMin)
  // A sponge with no water marks the moment of the weighing and ends the run there.
  const course = courseOf(pot, [...until, { kind: 'wipe', atMin, waterMm: 0 }], air0)
  return atEach((fill) => {
    const run = runPot(course, Math.exp(fill))
    return waterG(run) + dryGlazeG(run)
  })
}

/** A gain further from every filling than so many of its sd is a wrong weight rather. Our choice. */
const LIKELY_SDS = 3

/** The least and the most that a pot may have gained at the moment of a weighing, grams: what lies beyond is asked about. */
export function likelyGainG(when: Omit<Weighing, 'kind' | 'id' | 'gainG'>): { least: number; most: number } {
  const all = gainsG(when)
  const at = (gainG: number, sds: number): number =>
    gainG < LEAST_GAIN_G ? LEAST_GAIN_G : gainG * Math.exp(sds * gainSd(gainG))
  const [least, most] = [Math.min(...all), Math.max(...all)]
  return { least: least < LEAST_GAIN_G ? 0 : at(least, -LIKELY_SDS), most: at(most, LIKELY_SDS) + SCALE_G }
}

function intervalOf(look: Look, computedMin: number, fromMin: number): Interval {
  const since = (min: number | undefined): number | undefined =>
    min === undefined || min <= fromMin ? undefined : min - fromMin
  return {
    computedMin,
    dampMin: since(look.dampMin),
    dryMin: since(look.dryMin),
    exactMin: since(look.exactMin),
    sd: look.of === 'kiln' ? KILN_SD : TOUCH_SD,
  }
}

/** When the wait that a look is about began, minutes on the clock. */
function lookFromMin(look: Look): number {
  let last = -Infinity
  for (const event of look.events) if (wets(event)) last = Math.max(last, event.atMin)
  return last
}

/** Likelihood of a gain where `computedG` were brought: a wrong weight tells no filling from another. */
function gainLikelihood(gainG: number, computedG: number): number {
  const sd = gainSd(gainG)
  return (1 - STRAY) * (normalPdf(Math.log(gainG / computedG) / sd) / sd) + STRAY / STRAY_LN
}

/**
 * What the kept observations teach, from `start` (UNLEARNED, or a room's lesson widened for one glaze). Order does
 * not matter; leaving one out is as if it had never been. RangeError for a pot, event or reading that makes no sense.
 */
export function learn(observations: readonly Observation[], start: Learned = UNLEARNED): Lesson {
  const priorSd = Math.max(start.fillSd, LEAST_PART * (FILLS[1]! - FILLS[0]!))
  const dropped: { id: string; why: Dropped }[] = []
  const looks: { look: Look; at: readonly number[]; fromMin: number }[] = []
  const scales: { weighing: Weighing; at: readonly number[] }[] = []
  for (const observation of observations) {
    const at = atNodes(observation)
    if (typeof at === 'string') dropped.push({ id: observation.id, why: at })
    else if (observation.kind === 'look')
      looks.push({ look: observation, at, fromMin: lookFromMin(observation) })
    else scales.push({ weighing: observation, at })
  }
  if (looks.length + scales.length === 0) return { ...start, dropped }
  // Beside what was read, what is learned where each pot weighs as computed: a wrong weight makes nothing surer than that.
  let [sum, fill1, fill2, time1, time2] = [0, 0, 0, 0, 0]
  let [sum0, fill10, fill20] = [0, 0, 0]
  FILLS.forEach((fill, k) => {
    const x = (fill - start.fillMean) / priorSd
    const intervals = looks.map(({ look, at, fromMin }) => intervalOf(look, at[k]!, fromMin))
    const time = timeFactor(intervals, start.timeMean, start.timeSd, LABEL_NOISE)
    let weight = normalPdf(x) * time.evidence
    let weight0 = weight
    for (const { weighing, at } of scales) {
      weight *= gainLikelihood(weighing.gainG, at[k]!)
      weight0 *= gainLikelihood(at[AS_COMPUTED]!, at[k]!)
    }
    sum0 += weight0
    fill10 += weight0 * fill
    fill20 += weight0 * fill * fill
    sum += weight
    fill1 += weight * fill
    fill2 += weight * fill * fill
    time1 += weight * time.mean
    time2 += weight * (time.sd ** 2 + time.mean ** 2)
  })
  // Readings so far off that every node calls them impossible teach nothing.
  if (!(sum > 0)) return { ...start, dropped }
  const fillMean = fill1 / sum
  const leastVariance = scales.length > 0 && sum0 > 0 ? fill20 / sum0 - (fill10 / sum0) ** 2 : 0
  const timeMean = time1 / sum
  return {
    fillMean,
    fillSd: Math.sqrt(Math.max(0, leastVariance, fill2 / sum - fillMean * fillMean)),
    timeMean,
    timeSd: Math.sqrt(Math.max(0, time2 / sum - timeMean * timeMean)),
    count: start.count + looks.length + scales.length,
    dropped,
  }
}

const overs = new WeakMap<Look, { readonly lesson: Learned; readonly ln: number | null }>()
/** A coat that was found dry so much later than told, and never looked at before, was forgotten: ln. Our choice. */
const FORGOTTEN_LN = 1

/**
 * ln of how long a wait was over what a lesson tells: the middle of its interval, or its first *dry* look. Null where
 * nobody found it dry, or only long after it was due.
 */
export function lnOverOf(look: Look, lesson: Learned): number | null {
  const before = overs.get(look)
  if (before?.lesson === lesson) return before.ln
  const ln = lnOver(look, lesson)
  overs.set(look, { lesson, ln })
  return ln
}

function lnOver(look: Look, { fillMean, timeMean }: Learned): number | null {
  const fromMin = lookFromMin(look)
  const dryMin = (look.exactMin ?? look.dryMin ?? Number.NaN) - fromMin
  const dampMin = (look.dampMin ?? Number.NaN) - fromMin
  if (!(dryMin > LEAST_WAIT_MIN) || dampMin >= dryMin) return null
  const run = runPot(courseOf(look.pot, look.events, look.air0), Math.exp(fillMean))
  const toldMin = Math.max(LEAST_WAIT_MIN, minutesOf(look.of, waitsOf(run, look.of))) * Math.exp(timeMean)
  if (!(toldMin < HORIZON_MIN)) return null
  if (dampMin > LEAST_WAIT_MIN) return Math.log(Math.sqrt(dampMin * dryMin) / toldMin)
  const ln = Math.log(dryMin / toldMin)
  return ln > FORGOTTEN_LN ? null : ln
}

/** Spread of one glaze about its room: sd of ln(time), and half of it of ln(fill). Tuned. */
const GLAZE_SD = 0.15

/** A room's lesson as the start for one glaze: its means, wider, but no wider than before any observation (`start`). */
export const forGlaze = (room: Learned, start: Learned = UNLEARNED): Learned => ({
  ...room,
  fillSd: widened(room.fillSd, GLAZE_SD / 2, start.fillSd),
  timeSd: widened(room.timeSd, GLAZE_SD, start.timeSd),
})

const widened = (sd: number, by: number, most: number): number =>
  Math.max(sd, Math.min(most, Math.hypot(sd, by)))
