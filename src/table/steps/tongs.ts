import { lastDip } from '../model/plan.ts'
import type { PotState } from '../model/state.ts'

/** Whether tongs held a pot for its last coat: not one poured inside, nor one dipped by hand for a collar or a half. */
export function wasTonged(pot: PotState): boolean {
  const kind = lastDip(pot)?.cover.kind
  return kind !== undefined && kind !== 'inside' && kind !== 'collar' && kind !== 'side'
}
