/** What is open about waits, as nodes of the shared factors, and the wait of a pot at each of them. */

import type { Air, PotWall, WallEvent } from '../contract.ts'
import { HORIZON_MIN } from '../parameters.ts'
import { courseOf, runPot } from '../wall/pot.ts'
import { waitsOf, wettedS } from './forecast.ts'
import type { Learned } from './learned.ts'

export interface Waiting {
  readonly id: string
  readonly pot: PotWall
  readonly events: readonly WallEvent[]
  readonly air0: Air
}

/**
 * Nodes of the fill factor, in sd: even, for a wait climbs steeply where the wall fills. Every second one is run, the
 * waits between are the geometric means of their neighbours'.
 */
export const FILL_NODES: readonly number[] = Array.from({ length: 13 }, (_, k) => (k - 6) * 0.4)
/** Nodes of the time factor with weights: five-point Gauss-Hermite (Abramowitz & Stegun 25.4.46). */
export const TIME_NODES: readonly (readonly [number, number])[] = [
  [-2.8569700138728, 0.0112574113277207],
  [-1.3556261799742, 0.222075922005613],
  [0, 0.533333333333333],
  [1.3556261799742, 0.222075922005613],
  [2.8569700138728, 0.0112574113277207],
]

/** ln(computed wait) of one pot at each fill node. */
export function logWaits(waiting: Waiting, learned: Learned): { fromMin: number; logs: number[] } {
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
