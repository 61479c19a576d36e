import type { Timer } from '../problem/order.ts'
import { NEVER_S, type Problem } from '../problem/problem.ts'
import { timerForOne } from './time-one.ts'
import { timerForTwo } from './time-two.ts'

/** A timer for one pair of hands or two, as the problem has them. */
export const makeTimer = (problem: Problem): Timer =>
  problem.potterCount === 1 ? timerForOne(problem) : timerForTwo(problem)

/** Sum of the times beyond soft longest waits for starts `start`. */
export function overLong(problem: Problem, start: Int32Array): number {
  let sum = 0
  for (let p = 0; p < problem.pots.length; p++) {
    const pot = problem.pots[p]!
    const first = problem.firstOp[p]! + pot.prep.length
    pot.coats.forEach((coat, k) => {
      const o = first + k
      const latest =
        k === 0
          ? (pot.overLongAtS ?? NEVER_S + problem.input.nowS) - problem.input.nowS
          : start[o - 1]! + problem.out[o - 1]! + (coat.longestWaitS ?? NEVER_S)
      sum += Math.max(0, start[o]! - latest)
    })
  }
  return sum
}
