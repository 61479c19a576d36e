import type { TileFacts } from '../../../shared/nouns.ts'
import type { OpeningHappening } from '../../../shared/opening-events.ts'
import { change } from '../model/change.ts'
import type { Table } from '../model/state.ts'
import { fillsOf } from './reduce-load.ts'

/** The table after what was seen of fired pots: kept as it was said, as what follows from it is computed late. */
export function fired(table: Table, event: OpeningHappening, at: number, id: string): Table {
  if (!('potId' in event)) return { ...table, taken: [...(table.taken ?? []), { id, at, event }] }
  const { potId } = event
  return change(table, potId, {
    fired: [...(table.pots[potId]?.fired ?? []), { id, at, event }],
    ...(event.kind === 'taken-out' ? { gone: true, board: table.board, fills: fillsOf(table) } : {}),
  })
}

/**
 * The table with its lessons but those that a tile, read or gone, makes void: they were said in times of what the tiles of
 * then told. Of a glaze alone it is told to its pairs too.
 */
export function lapsed(table: Table, tile: TileFacts | undefined): Table {
  if (!table.taken || !tile) return table
  const { bucketId, underId } = tile
  const taken = table.taken.filter(({ event }) => {
    if (event.kind !== 'lesson-taken') return true
    if (underId !== undefined) return event.bucketId !== bucketId || event.underId !== underId
    return event.bucketId !== bucketId && event.underId !== bucketId
  })
  return { ...table, taken }
}
