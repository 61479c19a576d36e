/**
 * When the cone of a firing will fall, from the readings so far. The heat work done is that of the readings; ahead the rise
 * slows down the hotter it gets: dT/dt = a (1 - b (T - now)/100).
 */
import { KELVIN } from '../air/vapour.ts'
import type { Band } from '../contract.ts'
import { bandOf, type Likelihood } from '../numeric/spread.ts'
import { coneWorks, GAS_J_PER_MOL_K, heatWorkMin, type LogPoint, REFERENCE_C } from './firing.ts'

/** Readings that the rise is taken from, the latest so many. */
const READINGS_USED = 4
/** No forecast before two readings so far apart, min, and further below the hottest reading's cone than this, K. */
const LEAST_APART_MIN = 30
export const WITHIN_C = 300
/** Rise now against the mean of the readings used, any as likely; how it slackens per 100 K. Assumptions. */
const RISE = { least: 0.4, most: 1.4, nodes: 121 }
const SLACK = { mean: 0.15, sd: 0.13, nodes: 7 }
/** A thermocouple against what the cone feels, K: type K new keeps to 9 K at 1222 degC (IEC 60584-1, class 2), drift on top. */
const OFFSET = { mean: 0, sd: 6.5 }
const OFFSET_NODES = 7
/** Where a cone was seen to fall against where its chart says, beyond what the kiln itself is off, K. Assumption. */
const SEEN_SD_K = 5
/** A reading against the law of the rise, K, and part of the rise. Assumptions. */
const READING_SD_K = 1.2
const LAW_SD = 0.012
/** What nobody foresees: part of what is left (a draught, a shelf in the way), and minutes of the fall itself. Assumptions. */
const LEFT_SD = 0.02
const FALL_SD_MIN = 3.5
const SDS = 2.2
/** Possibilities so much less likely than the best are left out, logarithm. */
const FORGET = 8
const STEP_MIN = 2
const HORIZON_MIN = 24 * 60

/** How much hotter a kiln is than its thermometer shows, K. */
export interface Offset {
  readonly mean: number
  readonly sd: number
}

/**
 * What this kiln's fallen cones teach of its thermometer: each is where its chart has it fall, less what was shown, K. A
 * normal law from 0 +- 6.5, each cone +- 5.
 */
export function offsetOf(overK: readonly number[]): Offset {
  const precision = 1 / OFFSET.sd ** 2 + overK.length / SEEN_SD_K ** 2
  const mean = overK.reduce((sum, over) => sum + over, 0) / SEEN_SD_K ** 2 / precision
  return { mean, sd: 1 / Math.sqrt(precision) }
}

const rowOf = (n: number, mean: number, sd: number): { at: number; z: number }[] =>
  Array.from({ length: n }, (_, i) => {
    const z = SDS * ((2 * i) / (n - 1) - 1)
    return { at: mean + z * sd, z }
  })

/** Degrees above now after `hours`, before it if negative, of a rise that slackens. */
const riseK = (perH: number, slack: number, hours: number): number =>
  Math.abs(slack) < 1e-6 ? perH * hours : (-100 / slack) * Math.expm1((-perH * slack * hours) / 100)

/**
 * Minutes from now until a cone falls that rises `perH` degC/h from `nowC`, slackening by `slack` per 100 K, the heat work
 * `doneMin` (minutes at 1222 degC) being done. `Infinity` beyond 24 h.
 */
export function fallsInMin(
  { kJPerMol, lnWork }: { readonly kJPerMol: number; readonly lnWork: number },
  doneMin: number,
  nowC: number,
  perH: number,
  slack: number,
): number {
  const perK = (kJPerMol * 1000) / GAS_J_PER_MOL_K
  const rate = (min: number) =>
    Math.exp(perK * (1 / (REFERENCE_C + KELVIN) - 1 / (nowC + riseK(perH, slack, min / 60) + KELVIN)))
  let left = Math.exp(lnWork) - doneMin
  if (left <= 0) return 0
  let before = rate(0)
  for (let min = STEP_MIN; min <= HORIZON_MIN; min += STEP_MIN) {
    const middle = rate(min - STEP_MIN / 2)
    const after = rate(min)
    const work = (STEP_MIN * (before + 4 * middle + after)) / 6
    if (work >= left) return min - STEP_MIN + (STEP_MIN * left) / work
    left -= work
    before = after
  }
  return Number.POSITIVE_INFINITY
}

/**
 * Minutes after the last reading until a self-supporting American cone falls; a bound beyond 24 h is `Infinity`. Null where
 * nothing can be told: a cone without a chart, readings that do not rise, fewer than two that lie half an hour apart, or
 * more than 300 degC below where it falls.
 * @param log readings in the order of time, degC and minutes.
 * @param offset how much hotter this kiln is than it shows, where that was learned.
 * @throws RangeError as `heatWorkMin`.
 */
export function coneFallsMin(
  log: readonly LogPoint[],
  cone: string,
  endC: number,
  offset: Offset = OFFSET,
): Band | null {
  const work = coneWorks().find((each) => each.cone === cone)
  const used = log.slice(-READINGS_USED)
  const [first, last] = [used[0], used.at(-1)]
  if (!work || !first || !last || last.atMin - first.atMin < LEAST_APART_MIN) return null
  if (last.tempC <= first.tempC || last.tempC < Math.max(...log.map(({ tempC }) => tempC))) return null
  if (last.tempC + offset.mean < endC - WITHIN_C) return null
  const done = rowOf(OFFSET_NODES, offset.mean, offset.sd).map(({ at, z }) => ({
    offsetK: at,
    weight: Math.exp(-(z ** 2) / 2),
    doneMin: heatWorkMin(
      log.map(({ atMin, tempC }) => ({ atMin, tempC: tempC + at })),
      work.kJPerMol,
    ),
  }))
  const lines: { perH: number; slack: number; ln: number }[] = []
  const meanPerH = (last.tempC - first.tempC) / ((last.atMin - first.atMin) / 60)
  for (let k = 0; k < RISE.nodes; k++) {
    const perH = meanPerH * (RISE.least + ((RISE.most - RISE.least) * k) / (RISE.nodes - 1))
    for (const { at: slack, z } of rowOf(SLACK.nodes, SLACK.mean, SLACK.sd)) {
      // The last reading's own error is in every rise from it: the others are weighed with it, not as if each stood alone.
      let [squares, sums, weights] = [0, 0, 0]
      let ln = -(z ** 2) / 2
      for (const { atMin, tempC } of used.slice(0, -1)) {
        const rise = riseK(perH, slack, (atMin - last.atMin) / 60)
        const sd = Math.hypot(READING_SD_K, LAW_SD * rise)
        const offK = tempC - last.tempC - rise
        squares += (offK / sd) ** 2
        sums += offK / sd ** 2
        weights += 1 / sd ** 2
        ln -= Math.log(sd)
      }
      const shared = READING_SD_K ** 2
      ln -= (squares - (shared * sums ** 2) / (1 + shared * weights)) / 2 + Math.log1p(shared * weights) / 2
      lines.push({ perH, slack, ln })
    }
  }
  const most = Math.max(...lines.map(({ ln }) => ln))
  const left: Likelihood[] = lines
    .filter(({ ln }) => ln > most - FORGET)
    .flatMap(({ perH, slack, ln }) =>
      done.map(({ offsetK, weight, doneMin }) => ({
        minutes: fallsInMin(work, doneMin, last.tempC + offsetK, perH, slack),
        weight: weight * Math.exp(ln - most),
      })),
    )
  const best = left.reduce((a, b) => (b.weight > a.weight ? b : a)).minutes
  return bandOf(left, Math.hypot(LEFT_SD, FALL_SD_MIN / Math.max(FALL_SD_MIN, best)), 0)
}
