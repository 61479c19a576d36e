import { potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { cardKey } from './bar-action.ts'
import type { Card, CardKind } from './card.ts'
import { cardOf, type FollowedSchedule } from './card-now.ts'

/** What shows: one card, the order of work that it follows, and the table it is of, as its hands see it. */
export interface Shown {
  readonly card: Card
  readonly schedule: FollowedSchedule | undefined
  readonly table: Table
  /** When another card than before came up, table time, ms. */
  readonly since: number
  /** What showed before the hold that shows now. */
  readonly left?: Shown
}

/** A line longer than this is none: whatever says that it is still being said is broken, ms. */
const LONGEST_LINE_MS = 15_000

/** Nothing is in the hands: a new order may fill their time. */
const IDLE: ReadonlySet<CardKind> = new Set(['wait', 'closed', 'empty'])

/**
 * What shows at table time `now`, after what showed `earlier`. Work on the card stays until a hit, or until a clock moves
 * it on: a new order of work is followed from the next card on. And while its line is being said (`saying`) nothing
 * but a hit changes the card.
 */
export function shownNow(
  earlier: Shown | undefined,
  table: Table,
  now: number,
  schedule: FollowedSchedule | undefined,
  saying = false,
): Shown {
  const card = cardOf(table, now, schedule)
  if (card.kind === 'held' && earlier) {
    // The hands come back to what they left: its order of work stands as long as they are away.
    const left = earlier.left ?? earlier
    return { card: cardOf(table, now, left.schedule), schedule: left.schedule, table, since: now, left }
  }
  const before = earlier?.left ?? earlier
  const showing = (next: Card, followed: FollowedSchedule | undefined, since = now): Shown => ({
    card: next,
    schedule: followed,
    table,
    since,
  })
  if (!before) return showing(card, schedule)
  const stays = (next: Card): boolean =>
    cardKey(next, potterOf(table)) === cardKey(before.card, potterOf(before.table))
  if (stays(card)) return showing(card, schedule, before.since)
  if (schedule !== before.schedule && !IDLE.has(before.card.kind)) {
    const old = cardOf(table, now, before.schedule)
    if (stays(old)) return showing(old, before.schedule, before.since)
  }
  const said = saying && table === before.table && now - before.since < LONGEST_LINE_MS
  return said && !IDLE.has(before.card.kind) ? before : showing(card, schedule)
}
