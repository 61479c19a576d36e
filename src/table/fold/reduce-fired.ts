import type { OpeningHappening } from '../../../shared/opening-events.ts'
import { change } from '../model/change.ts'
import type { Table } from '../model/state.ts'

/** The table after what was seen of fired pots: kept as it was said, as what follows from it is computed late. */
export function fired(table: Table, event: OpeningHappening, at: number, id: string): Table {
  if (!('potId' in event)) return { ...table, taken: [...(table.taken ?? []), { id, at, event }] }
  const { potId } = event
  return change(table, potId, {
    fired: [...(table.pots[potId]?.fired ?? []), { id, at, event }],
    ...(event.kind === 'taken-out' ? { gone: true } : {}),
  })
}
