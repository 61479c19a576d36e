import { layBoard } from './board.ts'
import { PROVABLE_DIPS, prove } from './exact.ts'
import { readPlan } from './read.ts'
import { bestStart, keep, search } from './search.ts'
import { makeTimer } from './timing.ts'
import type { Plan, PlanInput } from './types.ts'

/** Ops timed in the final answer; about 100 ms on a desk machine, four to six times that on a phone. Tuned. */
export const FINAL_WORK = 1_500_000
/** A small board is searched this long before the exact method takes over. */
const SMALL_WORK = 60_000

/**
 * The best of some twenty quick orders: the first answer.
 * @throws RangeError naming field, value and allowed range.
 */
export function firstPlan(input: PlanInput): Plan {
  const board = layBoard(input)
  const timer = makeTimer(board)
  return readPlan(board, timer, bestStart(board, timer).order, false)
}

/**
 * Order of work. Same input, seed and `work` give the same plan; more work never gives a worse one.
 * @param work ops timed at most, see FINAL_WORK.
 * @throws RangeError naming field, value and allowed range.
 */
export function plan(input: PlanInput, work: number = FINAL_WORK): Plan {
  const board = layBoard(input)
  const timer = makeTimer(board)
  const found = bestStart(board, timer)
  const small = board.laneCount === 1 && board.dips <= PROVABLE_DIPS
  search(board, timer, found, small ? Math.min(work, SMALL_WORK) : work, () => true)
  const proven = small && prove(board, timer, found, (order) => keep(found, timer, order))
  return readPlan(board, timer, found.order, proven)
}
