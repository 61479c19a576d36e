/** Touch this one next: the check whose answer narrows the other waits most. */

import { inRange } from '../check.ts'
import type { Air, PotWall, WallEvent } from '../contract.ts'
import { normalCdf, normalPdf } from '../numeric/spread.ts'
import { HORIZON_MIN } from '../parameters.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { waitsOf, wettedS } from './forecast.ts'
import { type Learned, TOUCH_SD } from './learned.ts'

export interface Waiting {
  readonly id: string
  readonly pot: PotWall
  readonly events: readonly WallEvent[]
  readonly air0: Air
}

export interface NextTouch {
  readonly id: string
  /** Other waits whose shared uncertainty an answer is expected to shrink by a twentieth or more. */
  readonly narrows: readonly string[]
  /** Fall of the summed variance of ln(wait) of the others, expected over both answers. */
  readonly gain: number
}

/**
 * Nodes of the fill factor, in sd: even, for a wait climbs steeply where the wall fills. Every second one is run, the
 * waits between are the geometric means of their neighbours'.
 */
const FILL_NODES: readonly number[] = Array.from({ length: 13 }, (_, k) => (k - 6) * 0.4)
/** Nodes of the time factor with weights: five-point Gauss-Hermite (Abramowitz & Stegun 25.4.46). */
const TIME_NODES: readonly (readonly [number, number])[] = [
  [-2.8569700138728, 0.0112574113277207],
  [-1.3556261799742, 0.222075922005613],
  [0, 0.533333333333333],
  [1.3556261799742, 0.222075922005613],
  [2.8569700138728, 0.0112574113277207],
]
/** Expected shrinking of a wait's spread that is worth naming. */
const WORTH = 0.05

interface State {
  readonly weight: number
  /** ln(wait) of each pot under this pair of factors. */
  readonly logs: readonly number[]
}

/** ln(computed wait) of one pot at each fill node. */
function logWaits(waiting: Waiting, learned: Learned): { fromMin: number; logs: number[] } {
  const course = courseOf(waiting.pot, waiting.events, waiting.air0)
  const middle = waitsOf(runPot(course, Math.exp(learned.fillMean)), 'touch')
  const run = FILL_NODES.map((sds, k) => {
    if (k % 2 === 1) return 0
    const fill = Math.exp(learned.fillMean + sds * learned.fillSd)
    const { touchMin } = sds === 0 ? middle : waitsOf(runPot(course, fill), 'touch')
    return Math.log(Math.min(HORIZON_MIN, Math.max(1 / 60, touchMin)))
  })
  const logs = run.map((log, k) => (k % 2 === 0 ? log : (run[k - 1]! + run[k + 1]!) / 2))
  return { fromMin: course.originMin + wettedS(course) / 60, logs }
}

function variance(states: readonly State[], weights: readonly number[], pot: number): number {
  let [sum, first, second] = [0, 0, 0]
  states.forEach((state, k) => {
    const log = state.logs[pot]!
    sum += weights[k]!
    first += weights[k]! * log
    second += weights[k]! * log * log
  })
  return sum > 0 ? Math.max(0, second / sum - (first / sum) ** 2) : 0
}

/**
 * Of the pots that wait, the one to touch at `nowMin`: over the shared fill and time factors, the expected fall of the
 * others' variance. Undefined when fewer than two wait or no answer would tell anything.
 */
export function touchNext(pots: readonly Waiting[], nowMin: number, learned: Learned): NextTouch | undefined {
  inRange('nowMin', nowMin, -1e12, 1e12)
  const each = pots.map((waiting) => logWaits(waiting, learned))
  const states: State[] = FILL_NODES.flatMap((fillSds, k) =>
    TIME_NODES.map(([timeSds, timeWeight]) => ({
      weight: normalPdf(fillSds) * timeWeight,
      logs: each.map(({ logs }) => logs[k]! + learned.timeMean + timeSds * learned.timeSd),
    })),
  )
  const prior = states.map((state) => state.weight)
  const all = prior.reduce((sum, w) => sum + w, 0)
  const before = pots.map((_, j) => variance(states, prior, j))
  let best: NextTouch | undefined
  pots.forEach((waiting, i) => {
    const waitedMin = nowMin - each[i]!.fromMin
    if (!(waitedMin > 0)) return
    const ifDry = states.map((s) => s.weight * normalCdf((Math.log(waitedMin) - s.logs[i]!) / TOUCH_SD))
    const ifDamp = states.map((s, k) => s.weight - ifDry[k]!)
    const pDry = ifDry.reduce((sum, w) => sum + w, 0) / all
    const narrows: string[] = []
    let gain = 0
    pots.forEach((other, j) => {
      if (j === i) return
      const after = pDry * variance(states, ifDry, j) + (1 - pDry) * variance(states, ifDamp, j)
      gain += before[j]! - after
      if (Math.sqrt(after) < (1 - WORTH) * Math.sqrt(before[j]!)) narrows.push(other.id)
    })
    if (gain > 1e-9 && (best === undefined || gain > best.gain)) best = { id: waiting.id, narrows, gain }
  })
  return best
}
