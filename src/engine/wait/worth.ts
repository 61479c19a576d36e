/** What one measurement would buy: how far the waits of a board are known, and would be known after it. */

import { inRange } from '../check.ts'
import { type Likelihood, normalCdf, normalPdf, quantile } from '../numeric/spread.ts'
import { forGlaze, LABEL_NOISE } from './learn.ts'
import { type Learned, TOUCH_SD } from './learned.ts'
import { FILL_NODES, logWaits, TIME_NODES, type Waiting } from './states.ts'

/** A wait to come, and how many pots of the board have the like. */
export interface WaitToCome extends Waiting {
  readonly pots: number
  /** What is known of the glaze of its last coat, where that is not what is known of the room. */
  readonly learned?: Learned
}

/**
 * `reading`: something that tells ln(fill), the water dips bring, to `sd`: of the pot of a wait, as on a scale, or of the
 * clay, and so of every glaze alike. `touch`: whether the wait of this index is over at its likely moment, and so both
 * factors.
 */
export type Measurement =
  | { readonly kind: 'reading'; readonly sd: number; readonly wait?: number }
  | { readonly kind: 'touch'; readonly wait: number }

export interface Worth {
  /** Late over early of a touch wait as it is told, the geometric mean over the board's waits. */
  readonly factor: number
  /** The same as expected after each measurement, in their order. */
  readonly after: readonly number[]
}

/** Bins of a reading, sd of what it may read, and how far they reach. */
const BINS = 8
const BINS_REACH = 3
/** Edges of a band. */
const [EARLY, LATE] = [0.1, 0.9]
/** Sd of the standard normal law on the nodes of the fill factor, which end at 2.4. */
const NODES_SD = (() => {
  const sum = (of: (sds: number) => number) =>
    FILL_NODES.reduce((all, sds) => all + normalPdf(sds) * of(sds), 0)
  return Math.sqrt(sum((sds) => sds * sds) / sum(() => 1))
})()

/** A pair of the factors that waits share, and how likely it is. */
interface State {
  readonly fill: number
  readonly time: number
  readonly weight: number
}

const statesOf = ({ fillMean, fillSd, timeMean, timeSd }: Learned): State[] =>
  FILL_NODES.flatMap((fillSds) =>
    TIME_NODES.map(([timeSds, weight]) => ({
      fill: fillMean + fillSds * fillSd,
      time: timeMean + timeSds * timeSd,
      weight: weight * normalPdf(fillSds),
    })),
  )

/** ln(computed wait) of a pot at any ln(fill): straight between the nodes it was run at, and as steep beyond them. */
type LogAt = (fill: number) => number

function logAtOf(wait: WaitToCome, learned: Learned): LogAt {
  const { logs } = logWaits(wait, learned)
  const step = (FILL_NODES[1]! - FILL_NODES[0]!) * learned.fillSd
  const least = learned.fillMean + FILL_NODES[0]! * learned.fillSd
  return (fill) => {
    const k = Math.min(logs.length - 2, Math.max(0, Math.floor((fill - least) / step)))
    return logs[k]! + ((fill - least) / step - k) * (logs[k + 1]! - logs[k]!)
  }
}

/** ln(late / early) of one wait under a lesson, as the forecast tells it but over more fillings. */
function lnWidth(logAt: LogAt, { fillMean, fillSd, timeSd }: Learned): number {
  const of: Likelihood[] = FILL_NODES.map((sds) => ({
    minutes: Math.exp(logAt(fillMean + sds * fillSd)),
    weight: normalPdf(sds),
  }))
  const sd = Math.hypot(TOUCH_SD, timeSd)
  return Math.log(quantile(of, sd, LATE) / quantile(of, sd, EARLY))
}

/** How likely each answer of a measurement is under given factors; over all answers one. */
type Answers = readonly ((state: State) => number)[]

/** `seen`: what is known of the glaze that is measured. */
function answersOf(measurement: Measurement, seen: Learned, each: readonly LogAt[]): Answers {
  if (measurement.kind === 'touch') {
    const logAt = each[measurement.wait]!
    // At the likely moment: the middle of what is open.
    const of = statesOf(seen).map(({ fill, time, weight }) => ({
      minutes: Math.exp(logAt(fill) + time),
      weight,
    }))
    const at = Math.log(quantile(of, TOUCH_SD, 0.5))
    const dry = ({ fill, time }: State): number =>
      LABEL_NOISE + (1 - 2 * LABEL_NOISE) * normalCdf((at - logAt(fill) - time) / TOUCH_SD)
    return [dry, (state) => 1 - dry(state)]
  }
  const sd = inRange('sd', measurement.sd, 1e-3, 10)
  const step = (2 * BINS_REACH * Math.hypot(sd, seen.fillSd)) / BINS
  // The outermost bins reach without end.
  const edges = Array.from({ length: BINS + 1 }, (_, k) =>
    k === 0 ? -Infinity : k === BINS ? Infinity : seen.fillMean + (k - BINS / 2) * step,
  )
  const upTo = (edge: number, fill: number): number =>
    Number.isFinite(edge) ? normalCdf((edge - fill) / sd) : edge > 0 ? 1 : 0
  return Array.from(
    { length: BINS },
    (_, k) =>
      ({ fill }: State) =>
        upTo(edges[k + 1]!, fill) - upTo(edges[k]!, fill),
  )
}

/** A lesson after an answer, and how likely that answer was: as `learn` keeps it, each factor by itself. */
function taught(learned: Learned, answer: (state: State) => number): { part: number; learned: Learned } {
  let [all, sum, fill1, fill2, time1, time2] = [0, 0, 0, 0, 0, 0]
  for (const state of statesOf(learned)) {
    const weight = state.weight * answer(state)
    all += state.weight
    sum += weight
    fill1 += weight * state.fill
    fill2 += weight * state.fill ** 2
    time1 += weight * state.time
    time2 += weight * state.time ** 2
  }
  const [fillMean, timeMean] = [fill1 / sum, time1 / sum]
  return {
    part: sum / all,
    learned: {
      fillMean,
      fillSd: Math.sqrt(Math.max(0, fill2 / sum - fillMean ** 2)) / NODES_SD,
      timeMean,
      timeSd: Math.sqrt(Math.max(0, time2 / sum - timeMean ** 2)),
      count: learned.count + 1,
    },
  }
}

const glazeOf = ({ events }: WaitToCome): string | undefined =>
  events.findLast((event) => event.kind === 'dip')?.glazeId

/**
 * How far the waits are known now, and after each of the measurements, expected over what they may show: as the forecast
 * tells them then, other glazes than the one that was measured wider. RangeError for no waits at all, a sd out of 0.001 to
 * 10, a wait that is not among them, or a pot or dip that makes no sense.
 */
export function worthOf(
  waits: readonly WaitToCome[],
  learned: Learned,
  measurements: readonly Measurement[],
): Worth {
  inRange('waits.length', waits.length, 1, 1000)
  for (const { wait } of measurements) if (wait !== undefined) inRange('wait', wait, 0, waits.length - 1)
  const known = waits.map((wait) => wait.learned ?? learned)
  const each = waits.map((wait, j) => logAtOf(wait, known[j]!))
  const pots = waits.reduce((sum, wait) => sum + wait.pots, 0)
  const mean = (lessons: readonly Learned[]): number =>
    waits.reduce((sum, wait, j) => sum + wait.pots * lnWidth(each[j]!, lessons[j]!), 0) / pots
  const after = measurements.map((measurement) => {
    const { wait } = measurement
    const glaze = wait === undefined ? undefined : glazeOf(waits[wait]!)
    const seen = wait === undefined ? learned : known[wait]!
    let sum = 0
    for (const answer of answersOf(measurement, seen, each)) {
      const { part } = taught(seen, answer)
      if (part <= LEAST_PART) continue
      const lessons = new Map([...new Set(known)].map((one) => [one, taught(one, answer).learned]))
      const then = waits.map((one, j) => {
        const own = lessons.get(known[j]!)!
        return wait === undefined || glazeOf(one) === glaze ? own : forGlaze(own, known[j]!)
      })
      sum += part * mean(then)
    }
    return Math.exp(sum)
  })
  return { factor: Math.exp(mean(known)), after }
}

/** Outcomes rarer than this are left out. */
const LEAST_PART = 1e-6

/** What a measurement of the clay's suction, as a tile dipped twice in water, tells of ln(fill): sd of such a reading. */
export function readingOf(before: Learned, after: Learned): number {
  const won = before.fillSd ** 2 - after.fillSd ** 2
  return won > 0 ? Math.min(10, Math.sqrt(before.fillSd ** 4 / won - before.fillSd ** 2)) : 10
}
