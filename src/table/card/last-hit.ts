import { lastDip } from '../model/plan.ts'
import { lastHit, potterOf } from '../model/potters.ts'
import type { PotState, Table } from '../model/state.ts'
import { panAsk } from '../steps/wax-pan.ts'

/** So long the screen tells of the last hit, and the voice may, ms. */
export const HIT_TOLD_MS = 10_000

/** The pot that these hands set down with the last hit, as long as it is told of: the pan's question goes before it. */
export function setDown(table: Table, now: number): PotState | undefined {
  const last = lastHit(table)
  if (table.takenBack || panAsk(table, now) || last?.kind !== 'sponged' || now - last.at >= HIT_TOLD_MS)
    return undefined
  const pot = table.pots[last.potId ?? '']
  return pot && (lastDip(pot)?.hands ?? 0) === potterOf(table) ? pot : undefined
}
