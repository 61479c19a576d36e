import type { Timer } from '../problem/order.ts'
import { type Board, NEVER_S } from '../problem/problem.ts'
import { timerForOne } from './time-one.ts'
import { timerForTwo } from './time-two.ts'

/** A timer for one pair of hands or two, as the board has them. */
export const makeTimer = (board: Board): Timer =>
  board.laneCount === 1 ? timerForOne(board) : timerForTwo(board)

/** Sum of the times beyond soft longest waits for starts `start`. */
export function overLong(board: Board, start: Int32Array): number {
  let sum = 0
  for (let p = 0; p < board.pots.length; p++) {
    const pot = board.pots[p]!
    const first = board.firstOp[p]! + pot.prep.length
    pot.coats.forEach((coat, k) => {
      const o = first + k
      const latest =
        k === 0
          ? (pot.overLongAtS ?? NEVER_S + board.input.nowS) - board.input.nowS
          : start[o - 1]! + board.out[o - 1]! + (coat.longestWaitS ?? NEVER_S)
      sum += Math.max(0, start[o]! - latest)
    })
  }
  return sum
}
