/** What this phone writes down, and asks, where its journal holds records of others. */

import type { Stamped, TableEvent } from '../../shared/events.ts'
import { isBy } from '../../shared/record.ts'
import { heardKeys } from '../device/heard.ts'
import type { Journal, Noted } from '../store/index.ts'
import { throughSteps } from '../store/slices.ts'
import { phoneOf, type Seen, seenFrom, seenSteps } from '../table/fold/seen.ts'
import { asksOf, twinsOf } from '../table/meeting/asks.ts'
import type { Ask } from '../table/model/ask.ts'
import type { Table } from '../table/model/state.ts'
import { orderMs } from './clock-set.ts'

type Own = Journal<TableEvent>

/** They, as of now; `skewMs`: how far this phone's clock was set by then. */
export function notedNow(events: readonly TableEvent[], skewMs: number): Noted<TableEvent> {
  const at = Date.now()
  const stamp = { at, tz: -new Date(at).getTimezoneOffset() }
  return { events, stamp, orderMs: orderMs(at, skewMs, events) }
}

/** Keeps them as of now. */
export function write(journal: Own, events: readonly TableEvent[], skewMs: number): void {
  const { stamp, orderMs } = notedNow(events, skewMs)
  if (events.length > 0) journal.append(events, stamp, orderMs)
}

/** How far the clock of who wrote these was set, ms. */
const skewOf = (records: readonly Stamped[]): number =>
  records.reduce((sum, { event }) => (event.kind === 'clock-moved' ? sum + event.byMs : sum), 0)

/**
 * Writes down that earlier records are this phone's own, where all were written under one name that it no longer has: what
 * came of another phone bears a word of this one's from the start. Of several phones it is not known which it was.
 */
function ownUp(journal: Own): void {
  const last = journal.records.at(-1)
  const phone = last && phoneOf(last)
  if (
    journal.readOnly ||
    !phone ||
    phone === journal.phone ||
    journal.records.some((record) => phoneOf(record) !== phone)
  )
    return
  write(journal, [{ kind: 'was-named', phone }], skewOf(journal.records))
}

/** Who made a backup: the last order in it, and how far that phone's clock was set, ms. */
export interface Maker {
  readonly phone: string
  readonly upTo: number
  readonly skewMs: number
}

/** A phone writes down with a backup that it goes on as the one that made it. */
export const goneOnAs = ({ phone, skewMs }: Maker): Noted<TableEvent> =>
  notedNow([{ kind: 'was-named', phone }], skewMs)

/** Or that it met that one; `aheadMs`: how far that one's table time is ahead, where it was said. `skewMs`: this phone's. */
export const metMaker = ({ phone, upTo }: Maker, skewMs: number, aheadMs?: number): Noted<TableEvent> =>
  notedNow([{ kind: 'met', phone, upTo, ...(aheadMs === undefined ? {} : { aheadMs }) }], skewMs)

/** Whether this phone ever compared that one's clock with its own, or was that phone. */
export const isCompared = ({ phone, records }: Pick<Own, 'phone' | 'records'>, other: string): boolean =>
  other === phone ||
  records.some(
    (record) =>
      isBy(phone)(record) &&
      (record.event.kind === 'met'
        ? record.event.phone === other && record.event.aheadMs !== undefined
        : record.event.kind === 'was-named' && record.event.phone === other),
  )

/** Writes down what of other phones is known by now and not said to be. No clock was there to be compared. */
function noteKnown(journal: Own, { said, met }: Seen): boolean {
  /** The last order of each other phone whose records are here, by its name. */
  const last = new Map<string, number>()
  for (const { from, order = 0 } of said)
    if (from !== undefined) last.set(from, Math.max(order, last.get(from) ?? 0))
  const known = (phone: string, order: number) =>
    met.some(({ by, of, upTo }) => by === undefined && of === phone && upTo >= order)
  const fresh = [...last].filter(([phone, order]) => !known(phone, order))
  if (fresh.length === 0 || journal.readOnly) return false
  write(
    journal,
    fresh.map(([phone, upTo]) => ({ kind: 'met', phone, upTo })),
    skewOf(said.filter(({ from }) => from === undefined)),
  )
  return true
}

/** A journal of several phones as this one sees it, once it is known which records are its own, and that it has those of others. */
export function seenAt(journal: Own): Seen {
  ownUp(journal)
  const seen = seenFrom(journal.records, journal.phone)
  // Killed before it was written down.
  return noteKnown(journal, seen) ? seenFrom(journal.records, journal.phone) : seen
}

/** After a file was joined: what of other phones is known by now. */
export async function fileTaken(journal: Own): Promise<void> {
  noteKnown(journal, await throughSteps(seenSteps(journal.records, journal.phone)))
}

/** What is to be settled of what phones brought. */
export const asksNow = (journal: Own, table: Table): readonly Ask[] =>
  journal.records.every(isBy(journal.phone))
    ? twinsOf(table)
    : asksOf(table, seenFrom(journal.records, journal.phone), heardKeys())
