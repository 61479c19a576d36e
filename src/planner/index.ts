/** The planner's public surface: durations in, order of work out. Pure: no clock, no chance but the seed. */
export type { Ask, Reply } from './messages.ts'
export { foresee } from './plan/foresee.ts'
export {
  drain,
  FINAL_WORK,
  firstPlan,
  LONG_WORK,
  planning,
  type Replanned,
} from './plan/plan.ts'
export type {
  Band,
  Bucket,
  Coat,
  Deadline,
  DipAction,
  Foresight,
  Hands,
  LowerBound,
  Odds,
  OpenBucket,
  Plan,
  PlanAction,
  PlanInput,
  Pot,
  PrepAction,
  PrepStep,
  Reason,
  SetUpAction,
} from './types.ts'
