/** Plans without a search, to hold the planner's own against. */
import type { Plan, PlanInput } from '../../src/planner/index.ts'
import { readPlan } from '../../src/planner/plan/read.ts'
import { layProblem } from '../../src/planner/problem/problem.ts'
import { orderByRule, PLAIN_RULE } from '../../src/planner/search/by-rule.ts'
import { type Habit, orderByHabit } from '../../src/planner/search/starts.ts'
import { makeTimer } from '../../src/planner/timing/timing.ts'

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
