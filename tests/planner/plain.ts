/** Plans in one call, and plans without a search, to hold the planner's own against. */
import type { Plan, PlanInput } from '../../src/planner/index.ts'
import { drain, FINAL_WORK, planning, type Replanned } from '../../src/planner/plan/plan.ts'
import { readPlan } from '../../src/planner/plan/read.ts'
import { layProblem } from '../../src/planner/problem/problem.ts'
import { orderByRule, PLAIN_RULE } from '../../src/planner/search/by-rule.ts'
import { recall } from '../../src/planner/search/recall.ts'
import { type Habit, orderByHabit } from '../../src/planner/search/starts.ts'
import { makeTimer } from '../../src/planner/timing/timing.ts'

/** Plans again after an event, calmly: see `planning`. `input` is the table as it is now, `previous` what was told. */
export const replan = (input: PlanInput, previous: Plan, work: number = FINAL_WORK): Replanned =>
  drain(planning(input, previous, work))

/** The order of `told` as it comes out with `input`, however late things are: nothing is rearranged. */
export function retime(input: PlanInput, told: Plan): Plan {
  const problem = layProblem(input)
  const timer = makeTimer(problem)
  return readPlan(problem, timer, recall(problem, timer, told).found.order, false)
}

/**
 * A plan by one rule, without any search: open bucket first, longest remaining chain first, stir late.
 * @throws RangeError naming field, value and allowed range.
 */
export function dispatch(input: PlanInput): Plan {
  const problem = layProblem(input)
  return readPlan(problem, makeTimer(problem), orderByRule(problem, PLAIN_RULE), false)
}

/**
 * The plan of a habit: the same hands, buckets and waits, the order people fall into.
 * @throws RangeError as `dispatch`.
 */
export function byHabit(input: PlanInput, habit: Habit): Plan {
  const problem = layProblem(input)
  return readPlan(problem, makeTimer(problem), orderByHabit(problem, habit), false)
}
