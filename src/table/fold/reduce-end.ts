import type { TableEvent } from '../../../shared/events.ts'
import { withBucket } from '../model/change.ts'
import { shut } from '../model/potters.ts'
import type { Ended, Table } from '../model/state.ts'

type EndEvent = Extract<TableEvent, { kind: 'lid-on' | 'tools-washed' | 'floor-mopped' }>

/** The table after a step of the end of a sitting was done, or left out. Under its lid a bucket is open to nobody. */
export function ended(table: Table, event: EndEvent, at: number): Table {
  const done: Ended = { at, ...(event.left ? { left: event.left } : {}) }
  switch (event.kind) {
    case 'lid-on': {
      const bucket = table.buckets[event.bucketId]
      return bucket
        ? shut(withBucket(table, event.bucketId, { ...bucket, lid: done }), event.bucketId)
        : table
    }
    case 'tools-washed':
      return { ...table, tools: done }
    case 'floor-mopped':
      return { ...table, floor: done }
  }
}
