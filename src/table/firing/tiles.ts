import type { TileFacts } from '../../../shared/nouns.ts'
import type { Table } from '../model/state.ts'

/** Tiles of a glaze by itself, or over another; the latest last. */
export const tilesOf = (table: Table, bucketId: string, underId: string | undefined): readonly TileFacts[] =>
  Object.values(table.tiles).filter((tile) => tile.bucketId === bucketId && tile.underId === underId)
