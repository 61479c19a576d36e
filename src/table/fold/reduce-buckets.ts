import type { TableEvent } from '../../../shared/events.ts'
import type { BucketFacts } from '../../../shared/nouns.ts'
import { withBucket, without } from '../model/change.ts'
import { plainlyNamed } from '../model/plain-name.ts'
import { opened } from '../model/potters.ts'
import type { FillLine, Table } from '../model/state.ts'
import { bucketOfCoat, needsBucket } from '../model/uses.ts'

/** Lines of a fill that are kept to be read. */
const LINES_KEPT = 30

/** The table after the facts of a bucket were changed. What was read of its fill stands. */
export function bucketChanged(table: Table, set: BucketFacts): Table {
  const facts = plainlyNamed(set)
  const before = bucketOfCoat(table, facts.bucketId)
  const gramsPerMl = before?.gramsPerMl ?? facts.targetGramsPerMl
  // Litres that were typed anew are a reading of the level.
  const { level, ...rest } = before ?? { log: [] }
  const kept = before && before.facts.litres === facts.litres && level ? { level } : {}
  return withBucket(bucketsBack(table, [facts.bucketId]), facts.bucketId, {
    ...rest,
    ...kept,
    facts,
    gramsPerMl,
  })
}

/** The table without a bucket. One that coats or plans need stays: a phone that knew nothing of them let it go. */
export function bucketGone(table: Table, bucketId: string): Table {
  const bucket = table.buckets[bucketId]
  if (!bucket || needsBucket(table, bucketId) !== undefined) return table
  return {
    ...table,
    buckets: without(table.buckets, bucketId),
    removed: { ...table.removed, [bucketId]: bucket },
  }
}

/** The table with those of these buckets back that were taken off it. */
export function bucketsBack(table: Table, bucketIds: readonly (string | undefined)[]): Table {
  if (table.removed === undefined) return table
  return bucketIds.reduce((t, bucketId = '') => {
    const bucket = t.removed?.[bucketId]
    if (!bucket || !t.removed) return t
    const { removed, ...rest } = t
    const left = without(removed, bucketId)
    return withBucket(Object.keys(left).length > 0 ? { ...rest, removed: left } : rest, bucketId, bucket)
  }, table)
}

type FillEvent = Extract<
  TableEvent,
  { kind: 'density-read' | 'filled' | 'level-read' | 'sieved' | 'stirred' }
>

/** The table after something was done to, or read of, what is in a bucket. */
export function fillChanged(table: Table, event: FillEvent, at: number): Table {
  const { bucketId } = event
  const bucket = table.buckets[bucketId]
  if (!bucket) return table
  const logged = (what: FillLine['what'], value?: number) =>
    [...bucket.log, { at, what, ...(value === undefined ? {} : { value }) }].slice(-LINES_KEPT)
  switch (event.kind) {
    case 'stirred': {
      // Stirs in a row are one line with their number.
      const before = bucket.log.at(-1)
      const row = before?.what === 'stirred' ? before : undefined
      const line = { at, what: 'stirred', value: (row?.value ?? 0) + 1 } as const
      const log = row ? [...bucket.log.slice(0, -1), line] : logged(line.what, line.value)
      return opened(withBucket(table, bucketId, { ...bucket, stirredAt: at, log }), bucketId, at)
    }
    case 'density-read': {
      const { gramsPerMl } = event
      return withBucket(table, bucketId, {
        ...bucket,
        gramsPerMl,
        densityAt: at,
        log: logged('density', gramsPerMl),
      })
    }
    case 'level-read': {
      const { litres } = event
      return withBucket(table, bucketId, { ...bucket, level: { at, litres }, log: logged('level', litres) })
    }
    case 'sieved':
      return withBucket(table, bucketId, { ...bucket, sievedAt: at, log: logged('sieved') })
    case 'filled': {
      const { facts, past = [] } = bucket
      // Of fills that were known by the same the last one's end says enough.
      const earlier = past.at(-1)?.facts === facts ? past.slice(0, -1) : past
      return withBucket(table, bucketId, {
        facts,
        past: [...earlier, { until: at, facts }],
        gramsPerMl: facts.targetGramsPerMl,
        level: { at, litres: event.litres },
        log: [{ at, what: 'filled', value: event.litres }],
      })
    }
  }
}
