import type { CoatFacts } from '../../../shared/nouns.ts'
import { coatsOn, nextCoat, planOf } from './plan.ts'
import type { PotState, Table } from './state.ts'

export interface CoatFrom {
  readonly coat: number
  readonly plan: CoatFacts
  readonly hasIt: boolean
  /** The bucket that the plan names instead. */
  readonly insteadOf?: string
}

/** The coat a pot would get from a bucket: its next, one it has already, or one outside its plan. */
export function coatFrom(table: Table, pot: PotState, bucketId: string): CoatFrom | undefined {
  const plan = planOf(table, pot)
  const index = nextCoat(pot)
  const next = plan[index]
  if (next?.bucketId === bucketId) return { coat: index, plan: next, hasIt: false }
  const had = coatsOn(pot).findLast((dip) => dip.bucketId === bucketId)
  if (had) {
    const coat = plan[had.coat]
    return { coat: had.coat, plan: coat ?? { ...had, holdS: had.plannedHoldS }, hasIt: true }
  }
  return next && { coat: index, plan: { ...next, bucketId }, hasIt: false, insteadOf: next.bucketId }
}
