import { lastDip } from '../model/plan.ts'
import type { PotState } from '../model/state.ts'

/** Whether marks of tongs may still show: no touch of the last coat was told that could have come with a dab. */
export const marksMayShow = (pot: PotState): boolean =>
  wasTonged(pot) && !pot.touches.some(({ dipId, dry }) => dry && dipId === lastDip(pot)?.dipId)

/** Whether tongs held a pot for its last coat: not one poured inside, nor one dipped by hand for a collar or a half. */
export function wasTonged(pot: PotState): boolean {
  const kind = lastDip(pot)?.cover.kind
  return kind !== undefined && kind !== 'inside' && kind !== 'collar' && kind !== 'side'
}
