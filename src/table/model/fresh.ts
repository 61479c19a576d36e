import type { Table } from './state.ts'

/** Stale: the last stir is longer ago than the room allows; exactly that old is still fresh. */
export function isStale(table: Table, bucketId: string, now: number): boolean {
  const stirredAt = table.buckets[bucketId]?.stirredAt
  return stirredAt === undefined || now - stirredAt > table.settings.staleMin * 60_000
}

/** Open, and stirred lately enough to dip now. */
export const isFresh = (table: Table, bucketId: string, now: number): boolean =>
  table.openBucket === bucketId && !isStale(table, bucketId, now)
