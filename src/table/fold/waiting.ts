import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { dipOf, without } from '../model/change.ts'
import type { Table } from '../model/state.ts'

const potKey = (potId: string): string => `pot ${potId}`
const bucketKey = (bucketId: string): string => `bucket ${bucketId}`
const kilnKey = (kilnId: string): string => `kiln ${kilnId}`
const loadKey = (loadId: string): string => `load ${loadId}`
/** What a record waits for that names a dip. */
export const dipKey = (dipId: string): string => `dip ${dipId}`
/** What a record waits for that names a hit. */
export const hitKey = (hit: string): string => `hit ${hit}`

/**
 * A record may name what is not known (yet): another phone's pot, a hit that was taken back. It waits for it, without
 * effect until what it names is there. The first such key, if any.
 */
export function waitsFor(table: Table, event: TableEvent): string | undefined {
  switch (event.kind) {
    case 'pot-set':
    case 'bucket-set':
    case 'bucket-gone':
    case 'returned':
      return undefined
    case 'sponged':
    case 'set-down':
      if (!table.pots[event.potId]) return potKey(event.potId)
      return event.dipId === undefined || dipOf(table, event.dipId) ? undefined : dipKey(event.dipId)
    case 'touched':
    case 'put-off': {
      const unknown = event.potIds.find((potId) => !table.pots[potId])
      return unknown === undefined ? undefined : potKey(unknown)
    }
    default: {
      if ('potId' in event && event.potId !== undefined && !table.pots[event.potId])
        return potKey(event.potId)
      if ('bucketId' in event && event.bucketId !== undefined && !table.buckets[event.bucketId])
        return bucketKey(event.bucketId)
      if ('kilnId' in event && !table.kilns?.[event.kilnId]) return kilnKey(event.kilnId)
      if ('loadId' in event && event.loadId && event.kind !== 'load-begun' && !table.loads?.[event.loadId])
        return loadKey(event.loadId)
      return undefined
    }
  }
}

/** What a record looks back at, if it does. */
export const looksBackAt = (event: TableEvent): string =>
  'hit' in event
    ? hitKey(event.hit)
    : 'dipId' in event && event.dipId !== undefined
      ? dipKey(event.dipId)
      : ''

/** What is kept over a cleared table: what was said of dips and hits that are still to come. */
export const keptOver = (waiting: Table['waiting']): Pick<Table, 'waiting'> => {
  const left = Object.entries(waiting ?? {}).filter(
    ([key]) => key.startsWith(hitKey('')) || key.startsWith(dipKey('')),
  )
  return left.length > 0 ? { waiting: Object.fromEntries(left) } : {}
}

/** Whether something waits for this record. */
export function isAwaited({ waiting }: Table, { event, hit }: Stamped): boolean {
  const brought = brings(event)
  return (
    waiting !== undefined &&
    (waiting[hitKey(hit)] !== undefined || (brought !== undefined && waiting[brought] !== undefined))
  )
}

/** What an event brings that others may wait for. */
export function brings(event: TableEvent): string | undefined {
  switch (event.kind) {
    case 'pot-set':
      return potKey(event.pot.potId)
    case 'bucket-set':
      return bucketKey(event.bucket.bucketId)
    case 'dipped':
      return dipKey(event.dipId)
    case 'kiln-set':
      return kilnKey(event.kiln.kilnId)
    case 'load-begun':
      return loadKey(event.loadId)
    default:
      return undefined
  }
}

/** An event about several pots as one for each. */
export function potByPot(stamped: Stamped): readonly Stamped[] {
  const { event } = stamped
  if (!('potIds' in event) || event.potIds.length < 2) return [stamped]
  return event.potIds.map((potId, i) => ({
    ...stamped,
    event: {
      ...event,
      potIds: [potId],
      ...('dipIds' in event && event.dipIds ? { dipIds: event.dipIds.slice(i, i + 1) } : {}),
    },
  }))
}

/** The table with a record kept until what it names is there. */
export const kept = (table: Table, key: string, stamped: Stamped): Table => ({
  ...table,
  waiting: { ...table.waiting, [key]: [...(table.waiting?.[key] ?? []), stamped] },
})

/** Those that waited for this, and the table without them. */
export function freed(table: Table, key: string): readonly [Table, readonly Stamped[]] {
  const { waiting, ...rest } = table
  const found = waiting?.[key]
  if (!waiting || !found) return [table, []]
  const left = without(waiting, key)
  return [Object.keys(left).length > 0 ? { ...rest, waiting: left } : rest, found]
}
