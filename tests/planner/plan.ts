import { drain, FINAL_WORK, type Plan, type PlanInput, planning } from '../../src/planner/index.ts'

/**
 * A whole answer for a fresh table, its search run to the end at once. Same input, seed and `work`, ops timed at most,
 * give the same plan.
 */
export const plan = (input: PlanInput, work: number = FINAL_WORK): Plan =>
  drain(planning(input, null, work)).plan
