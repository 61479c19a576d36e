/** What a cleared table leaves of what others did: whoever clears takes only what they know, and of others' hands nothing. */

import type { Stamped, TableEvent } from '../../../shared/events.ts'
import type { CoatFacts } from '../../../shared/nouns.ts'
import { isOfOpening } from '../../../shared/opening-events.ts'
import type { Meeting, Written } from './seen.ts'

/** What of others stays when a phone clears its table. */
export type Left = NonNullable<Stamped['left']>

/** Of the whole table, and of no one thing on it. */
const isOfTable = (event: TableEvent): boolean =>
  OF_TABLE.has(event.kind) || (isOfOpening(event) && !('potId' in event))
const OF_TABLE = new Set<TableEvent['kind']>([
  'air-set',
  'board-set',
  'firing-logged',
  'firing-planned',
  'pair-set',
  'tile-gone',
  'tile-read',
])

const bucketsIn = (coats: readonly CoatFacts[]) => coats.map(({ bucketId }) => bucketId)

/** The ids of what an event is about; `homes`: the pot of each dip. What only hands hold says nothing. */
function thingsIn(event: TableEvent, homes: ReadonlyMap<string, string>): readonly (string | undefined)[] {
  switch (event.kind) {
    case 'picked':
    case 'met':
      return []
    case 'pot-set':
      return [event.pot.potId, event.pot.stackId]
    case 'bucket-set':
      return [event.bucket.bucketId]
    case 'stack-set':
      return [event.stack.stackId, ...bucketsIn(event.stack.coats)]
    case 'kiln-set':
      return [event.kiln.kilnId]
    case 'plan-changed':
      return [event.potId, ...bucketsIn(event.coats)]
    case 'tile-read':
      return [event.tile.bucketId]
    case 'bucket-gone':
    case 'stack-gone':
      return []
    default:
      return [
        'potId' in event ? event.potId : undefined,
        'bucketId' in event ? event.bucketId : undefined,
        'kilnId' in event ? event.kilnId : undefined,
        'loadId' in event ? event.loadId : undefined,
        'dipId' in event ? homes.get(event.dipId ?? '') : undefined,
        ...('potIds' in event ? event.potIds : []),
      ]
  }
}

/** Whether a phone took a pot as it was handed on: it is that one's as well. */
export const isTaken = ({ event }: Pick<Stamped, 'event'>): boolean =>
  event.kind === 'pot-set' && event.handed === true

/**
 * Events in their order, each clearing of a table with what it leaves: on the phone that cleared it what others said and it
 * had not read by then; on any other what somebody else did with a pot, or took as handed on. `cleared`: ids of such records;
 * `taken`: pots taken, though that says nothing anew. In slices of a moment.
 */
export function* withClears(
  events: readonly Written[],
  cleared: ReadonlySet<string>,
  taken: readonly Written[],
  met: readonly Meeting[],
  stands: (stamped: Written) => boolean,
): Generator<void, readonly Written[], undefined> {
  if (cleared.size === 0) return events
  const clears = events.filter((stamped) => {
    const { event, from, id } = stamped
    return cleared.has(id) && event.kind === 'table-cleared' && (event.read || from) && stands(stamped)
  })
  yield
  const theirs = events.flatMap((stamped, i) => (stamped.from === undefined ? [] : [[stamped, i] as const]))
  yield
  if (clears.length === 0 || theirs.length + taken.length === 0) return events
  const homes = new Map<string, string>()
  for (const { event } of events) if (event.kind === 'dipped') homes.set(event.dipId, event.potId)
  yield
  const all = clears.some(({ from }) => from !== undefined)
    ? events.map((stamped, i) => [stamped, i] as const)
    : []
  const left = new Map<string, Left>()
  for (const clear of clears) {
    const others = clear.from === undefined ? theirs : all
    left.set(clear.id, yield* leftBy(clear, events.indexOf(clear), others, taken, homes, met, stands))
  }
  return events.map((stamped) => {
    const found = cleared.has(stamped.id) && left.get(stamped.id)
    return found ? { ...stamped, left: found } : stamped
  })
}

/** So many records are a few ms of a slow phone. */
const EACH = 500

function* leftBy(
  clear: Written,
  place: number,
  events: readonly (readonly [Written, number])[],
  taken: readonly Written[],
  homes: ReadonlyMap<string, string>,
  met: readonly Meeting[],
  stands: (stamped: Written) => boolean,
): Generator<void, Left, undefined> {
  const { from: by } = clear
  const isRead = readBy(clear, met)
  const things = new Set<string>()
  const before: Written[] = []
  let unread = EACH
  for (const [stamped, i] of events) {
    if (unread-- === 0) {
      yield
      unread = EACH
    }
    if (stamped.from === by) continue
    const read = isRead(stamped)
    // Whoever else worked on a pot has it, though that was known; facts that were only put right are no work.
    if (read && (by === undefined || stamped.event.kind === 'pot-set')) continue
    if (!stands(stamped)) continue
    if (!read && i < place && isOfTable(stamped.event)) before.push(stamped)
    for (const thing of thingsIn(stamped.event, homes)) if (thing !== undefined) things.add(thing)
  }
  if (by !== undefined)
    for (const stamped of taken)
      if (stamped.from !== by && stamped.event.kind === 'pot-set' && stands(stamped))
        things.add(stamped.event.pot.potId)
  yield
  return { things, before }
}

/** Whether the phone that cleared its table had read a record of another by then. */
function readBy({ from: by, order = 0 }: Written, met: readonly Meeting[]): (other: Written) => boolean {
  const upTo = new Map<string | undefined, number>()
  for (const meeting of met)
    if (meeting.by === by && meeting.order < order)
      upTo.set(meeting.of, Math.max(meeting.upTo, upTo.get(meeting.of) ?? 0))
  return ({ from, order: its = 0 }) => its <= (upTo.get(from) ?? -1)
}
