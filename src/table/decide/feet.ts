import type { TableEvent } from '../../../shared/events.ts'
import type { Table } from '../model/state.ts'
import { potInHand } from '../steps/pot-in-hand.ts'
import { stepsOf } from '../steps/work.ts'

/**
 * Going on to something else implies that the pot in the hands was sponged and set down. `beforeMs`: what they went on
 * to, where that was not now; a pot that came out later is still theirs. Table time, ms.
 */
export function feetImplied(table: Table, now: number, beforeMs = now): TableEvent[] {
  const hand = potInHand(table, stepsOf(table, now))
  if (!hand || hand.dip.outAt > beforeMs) return []
  const { potId } = hand.pot.facts
  const { dipId } = hand.dip
  return [
    { kind: 'sponged', potId, dipId, implied: true },
    { kind: 'set-down', potId, dipId, implied: true },
  ]
}
