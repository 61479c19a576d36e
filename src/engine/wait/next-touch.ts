/** Touch this one next: the check whose answer narrows the other waits most. */

import { inRange } from '../check.ts'
import { normalCdf, normalPdf } from '../numeric/spread.ts'
import { type Learned, TOUCH_SD } from './learned.ts'
import { FILL_NODES, logWaits, TIME_NODES, type Waiting } from './states.ts'

export type { Waiting } from './states.ts'

export interface NextTouch {
  readonly id: string
  /** Other waits whose shared uncertainty an answer is expected to shrink by a twentieth or more. */
  readonly narrows: readonly string[]
  /** Fall of the summed variance of ln(wait) of the others, expected over both answers. */
  readonly gain: number
}

/** Expected shrinking of a wait's spread that is worth naming. */
const WORTH = 0.05

interface State {
  readonly weight: number
  /** ln(wait) of each pot under this pair of factors. */
  readonly logs: readonly number[]
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
