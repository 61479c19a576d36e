import { isFresh } from '../model/fresh.ts'
import { potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { whereYouWere } from '../steps/pot-in-hand.ts'
import { stepsOf } from '../steps/work.ts'
import { cardKey } from './bar-action.ts'
import { type Card, type CardKind, potsOnCard } from './card.ts'
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

/** Hands are on a pot or in a bucket, and their next hit is meant for what they do. */
const AT_WORK: ReadonlySet<CardKind> = new Set([
  'wax',
  'wipe',
  'foot-check',
  'ready',
  'stir',
  'return',
  'wax-pan',
  'lid',
  'tools',
  'floor',
])

/** Nobody is at one step longer than this: whoever has not hit the bar by then has left it, ms. Assumption. */
const LONGEST_STEP_MS = 300_000

/** A pot that is about to go in stays until its bucket has to be stirred; one that drips, while its foot is sponged. */
const isAtWork = (card: Card, table: Table, now: number): boolean =>
  card.kind === 'armed'
    ? isFresh(table, card.armed.bucketId, now)
    : card.kind === 'drip'
      ? card.done
      : AT_WORK.has(card.kind)

/**
 * What shows at table time `now`, after what showed `earlier`. Work on the card stays until a hit: a new order of work
 * is followed from the next card on, and what comes due meanwhile waits for it, all but the question for the hot pan.
 * While its line is being said (`saying`) nothing but a hit changes a card at all.
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
    const lines = whereYouWere(table, stepsOf(table, now), potsOnCard(left.card))
    const where = IDLE.has(left.card.kind)
      ? cardOf(table, now, left.schedule)
      : { ...card, left: left.card, lines }
    return { card: where, schedule: left.schedule, table, since: now, left }
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
  if (table !== before.table || IDLE.has(before.card.kind)) return showing(card, schedule)
  const shownMs = now - before.since
  const said = saying && shownMs < LONGEST_LINE_MS
  const atWork = isAtWork(before.card, table, now) && card.kind !== 'wax-pan' && shownMs < LONGEST_STEP_MS
  return said || atWork ? before : showing(card, schedule)
}
