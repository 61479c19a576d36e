import { isFresh } from '../model/fresh.ts'
import { otherView, type Potter, potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { whereYouWere } from '../steps/pot-in-hand.ts'
import { stepsOf } from '../steps/work.ts'
import { cardKey } from './bar-action.ts'
import { type Card, potsOnCard } from './card.ts'
import { cardOf, type FollowedSchedule } from './card-now.ts'

/** What shows: one card, the order of work that it follows, and the table it is of, as its hands see it. */
export interface Shown {
  readonly card: Card
  readonly schedule: FollowedSchedule | undefined
  readonly table: Table
  /** When another card than before came up, table time, ms. */
  readonly since: number
  /** What showed before the hold or the count that shows now. */
  readonly left?: Shown
}

/** A line longer than this is none: whatever says that it is still being said is broken, ms. */
const LONGEST_LINE_MS = 15_000

/** Nobody is at one step longer than this: whoever has not hit the bar by then has left it, ms. Assumption. */
const LONGEST_STEP_MS = 300_000

/**
 * Whether hands are on a pot or in a bucket, and their next hit is meant for what they do. A pot that is about to go in
 * stays until its bucket has to be stirred; one that drips, while its foot is sponged.
 */
const isAtWork = (card: Card, table: Table, now: number): boolean =>
  card.kind === 'armed'
    ? isFresh(table, card.armed.bucketId, now)
    : card.kind === 'drip'
      ? card.done
      : card.big !== undefined && !('dip' in card)

/** A hold, a count, or an OUT of the other hands: it lies over a card that comes back. */
const covers = (card: Card, potter: Potter): boolean =>
  card.kind === 'held' || card.kind === 'count' || (card.kind === 'out' && (card.dip.hands ?? 0) !== potter)

/**
 * What shows at table time `now`, after what showed `earlier`. Work on the card stays until a hit: a new order of work
 * is followed from the next card on, and what comes due meanwhile waits for it, all but the question for the hot pan.
 * While its line is being said (`saying`) nothing but a hit changes a card at all. A pot on `theirs`, the card of the
 * other hands, is not offered here, unless nobody has been at that card for longer than a step takes.
 */
export function shownNow(
  earlier: Shown | undefined,
  table: Table,
  now: number,
  schedule: FollowedSchedule | undefined,
  saying = false,
  theirs?: Shown,
): Shown {
  // Of a pot that is in their hands already its own step tells.
  const isFor = theirs && !('dip' in theirs.card) && now - theirs.since < LONGEST_STEP_MS
  const taken = isFor ? potsOnCard(theirs.card) : []
  const potter = potterOf(table)
  const card = cardOf(table, now, schedule, taken)
  const before = earlier?.left ?? earlier
  const fresh: Shown = { card, schedule, table, since: now }
  if (!before) return fresh
  // Nothing is in the hands: a new order may fill their time.
  const isIdle = !before.card.big
  if (covers(card, potter)) {
    // The hands come back to what they left: its order of work stands as long as they are away.
    const over = { ...fresh, schedule: before.schedule, left: before }
    if (card.kind !== 'held') return over
    const lines = whereYouWere(table, stepsOf(table, now), potsOnCard(before.card))
    const where = isIdle ? cardOf(table, now, before.schedule, taken) : { ...card, left: before.card, lines }
    return { ...over, card: where }
  }
  const stays = (next: Card): boolean => cardKey(next, potter) === cardKey(before.card, potter)
  const isSame = table === before.table
  // Who went on after a hold is here, and at this step from now on.
  const since = earlier?.left && earlier.card.kind === 'held' ? now : before.since
  if (stays(card)) {
    // What was said of a stir is not written anew.
    const asSaid = isSame && card.kind === 'stir' && before.schedule
    return { ...fresh, card: asSaid ? before.card : card, since }
  }
  if (schedule !== before.schedule && !isIdle) {
    const old = cardOf(table, now, before.schedule, taken)
    if (stays(old)) return { ...before, card: old, table, since }
  }
  // A count that was called off, or taken back, never was.
  const counted = earlier?.card.kind === 'count' ? earlier.card : undefined
  const isOff = counted && !table.pots[counted.potId]?.dips.some(({ dipId }) => dipId === counted.dip.dipId)
  if (isIdle || !(isSame || isOff)) return fresh
  const shownMs = now - before.since
  const said = saying && shownMs < LONGEST_LINE_MS
  const atWork = isAtWork(before.card, table, now) && card.kind !== 'wax-pan' && shownMs < LONGEST_STEP_MS
  return said || atWork ? { ...before, table } : fresh
}

/** The same for each pair of hands at the phone, by their potter: for those first who see the `table`. */
export function shownTo(
  earlier: readonly (Shown | undefined)[],
  table: Table,
  now: number,
  schedule: FollowedSchedule | undefined,
  saying: boolean,
): readonly Shown[] {
  const next: Shown[] = []
  for (const view of table.settings.potters === 2 ? [table, otherView(table)] : [table]) {
    const who = potterOf(view)
    const theirs = 1 - who
    next[who] = shownNow(earlier[who], view, now, schedule, saying, next[theirs] ?? earlier[theirs])
  }
  return next
}
