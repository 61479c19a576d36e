/** What one measurement would buy: how far the waits of a board are known, and would be known after it. */

import { inRange } from '../check.ts'
import { type Likelihood, normalCdf, normalPdf, quantile } from '../numeric/spread.ts'
import { type Learned, TOUCH_SD } from './learned.ts'
import { FILL_NODES, logWaits, TIME_NODES, type Waiting } from './states.ts'

/** A wait to come, and how many pots of the board have the like. */
export interface WaitToCome extends Waiting {
  readonly pots: number
}

/**
 * `reading`: something that tells ln(fill), the water dips bring, to `sd`, as a pot on a scale does. `touch`: whether the
 * wait of this index is over at its likely moment, and so both factors.
 */
export type Measurement =
  | { readonly kind: 'reading'; readonly sd: number }
  | { readonly kind: 'touch'; readonly wait: number }

export interface Worth {
  /** Late over early of a touch wait, the geometric mean over the board's waits. */
  readonly factor: number
  /** The same as expected after each measurement, in their order. */
  readonly after: readonly number[]
}

/** Bins of a reading, sd of what it may read, and how far they reach. */
const BINS = 8
const BINS_REACH = 3
/** Edges of a band. */
const [EARLY, LATE] = [0.1, 0.9]

interface State {
  readonly fillSds: number
  readonly weight: number
  readonly logs: readonly number[]
}

/** What is open, as states of the shared factors; what they leave open of a wait, sd of its logarithm. */
interface Open {
  readonly states: readonly State[]
  readonly sd: number
}

/** ln(late / early) of one wait under these weights. */
function lnWidth({ states, sd }: Open, weights: readonly number[], wait: number): number {
  const of: Likelihood[] = states.map(({ logs }, k) => ({
    minutes: Math.exp(logs[wait]!),
    weight: weights[k]!,
  }))
  return Math.log(quantile(of, sd, LATE) / quantile(of, sd, EARLY))
}

/** Weights after each outcome of a measurement; over all outcomes they sum to those before. */
function outcomesOf(measurement: Measurement, states: readonly State[], learned: Learned): number[][] {
  if (measurement.kind === 'touch') {
    const { wait } = measurement
    // At the likely moment: the middle of what is open.
    const of = states.map(({ logs, weight }) => ({ minutes: Math.exp(logs[wait]!), weight }))
    const at = Math.log(quantile(of, TOUCH_SD, 0.5))
    const dry = states.map(({ logs, weight }) => weight * normalCdf((at - logs[wait]!) / TOUCH_SD))
    return [dry, states.map(({ weight }, k) => weight - dry[k]!)]
  }
  const sd = inRange('sd', measurement.sd, 1e-3, 10)
  const step = (2 * BINS_REACH * Math.hypot(sd, learned.fillSd)) / BINS
  // The outermost bins reach without end.
  const edges = Array.from({ length: BINS + 1 }, (_, k) =>
    k === 0 ? -Infinity : k === BINS ? Infinity : (k - BINS / 2) * step,
  )
  const upTo = (edge: number, fill: number): number =>
    Number.isFinite(edge) ? normalCdf((edge - fill) / sd) : edge > 0 ? 1 : 0
  return Array.from({ length: BINS }, (_, k) =>
    states.map(({ fillSds, weight }) => {
      const fill = fillSds * learned.fillSd
      return weight * (upTo(edges[k + 1]!, fill) - upTo(edges[k]!, fill))
    }),
  )
}

/**
 * How far the waits are known now, and after each of the measurements, expected over what they may show. RangeError for
 * no waits at all, a sd out of 0.001 to 10, a wait that is not among them, or a pot or dip that makes no sense.
 */
export function worthOf(
  waits: readonly WaitToCome[],
  learned: Learned,
  measurements: readonly Measurement[],
): Worth {
  inRange('waits.length', waits.length, 1, 1000)
  for (const one of measurements) if (one.kind === 'touch') inRange('wait', one.wait, 0, waits.length - 1)
  const each = waits.map((wait) => logWaits(wait, learned).logs)
  const states = (times: typeof TIME_NODES): State[] =>
    FILL_NODES.flatMap((fillSds, k) =>
      times.map(([timeSds, timeWeight]) => ({
        fillSds,
        weight: normalPdf(fillSds) * timeWeight,
        logs: each.map((logs) => logs[k]! + learned.timeMean + timeSds * learned.timeSd),
      })),
    )
  // A reading says nothing of time, which is then as much in the dark as what is left from coat to coat.
  const byFill: Open = { states: states([[0, 1]]), sd: Math.hypot(TOUCH_SD, learned.timeSd) }
  const byBoth: Open = { states: states(TIME_NODES), sd: TOUCH_SD }
  const pots = waits.reduce((sum, wait) => sum + wait.pots, 0)
  const mean = (open: Open, weights: readonly number[]): number =>
    waits.reduce((sum, wait, j) => sum + wait.pots * lnWidth(open, weights, j), 0) / pots
  const sumOf = (of: readonly number[]): number => of.reduce((sum, weight) => sum + weight, 0)
  const prior = byFill.states.map(({ weight }) => weight)
  const after = measurements.map((measurement) => {
    const open = measurement.kind === 'touch' ? byBoth : byFill
    const all = sumOf(open.states.map(({ weight }) => weight))
    let sum = 0
    for (const weights of outcomesOf(measurement, open.states, learned)) {
      const part = sumOf(weights) / all
      if (part > LEAST_PART) sum += part * mean(open, weights)
    }
    return Math.exp(sum)
  })
  return { factor: Math.exp(mean(byFill, prior)), after }
}

/** Outcomes rarer than this are left out. */
const LEAST_PART = 1e-6

/** What a measurement of the clay's suction, as a tile dipped twice in water, tells of ln(fill): sd of such a reading. */
export function readingOf(before: Learned, after: Learned): number {
  const won = before.fillSd ** 2 - after.fillSd ** 2
  return won > 0 ? Math.min(10, Math.sqrt(before.fillSd ** 4 / won - before.fillSd ** 2)) : 10
}
