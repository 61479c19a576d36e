/** What this phone writes down, and asks, where its journal holds records of others. */

import type { TableEvent } from '../../shared/events.ts'
import { isBy } from '../../shared/record.ts'
import type { Journal } from '../store/index.ts'
import { throughSteps } from '../store/slices.ts'
import { phoneOf, type Seen, seenFrom, seenSteps } from '../table/fold/seen.ts'
import { asksOf } from '../table/meeting/asks.ts'
import type { Ask } from '../table/model/ask.ts'
import type { Table } from '../table/model/state.ts'

type Own = Journal<TableEvent>

/** Keeps them as of now. */
export function write(journal: Own, events: readonly TableEvent[]): void {
  const at = Date.now()
  if (events.length > 0) journal.append(events, { at, tz: -new Date(at).getTimezoneOffset() })
}

/**
 * Writes down that earlier records are this phone's own, where it wrote none under the name that it has now: that name was
 * lost, or they came in a backup. Of several phones it was the one that wrote last.
 */
function ownUp(journal: Own): void {
  const last = journal.records.at(-1)
  if (journal.readOnly || !last || journal.records.some(isBy(journal.phone))) return
  write(journal, [{ kind: 'was-named', phone: phoneOf(last) }])
}

/** A journal of several phones as this one sees it, once it is known which records are its own. */
export function seenAt(journal: Own): Seen {
  ownUp(journal)
  return seenFrom(journal.records, journal.phone)
}

/** After a file was joined: whose it was, or what of other phones is known by now. No clock was there to be compared. */
export async function fileTaken(journal: Own, wasEmpty: boolean): Promise<void> {
  if (wasEmpty) ownUp(journal)
  const { events, met } = await throughSteps(seenSteps(journal.records, journal.phone))
  /** The last order of each other phone whose records are here, by its name. */
  const last = new Map<string, number>()
  for (const { from, order = 0 } of events)
    if (from !== undefined) last.set(from, Math.max(order, last.get(from) ?? 0))
  const known = (phone: string, order: number) =>
    met.some(({ by, of, upTo }) => by === undefined && of === phone && upTo >= order)
  const fresh = [...last].filter(([phone, order]) => !known(phone, order))
  write(
    journal,
    fresh.map(([phone, upTo]) => ({ kind: 'met', phone, upTo })),
  )
}

/** What is to be settled of what phones brought. */
export const asksNow = (journal: Own, table: Table): readonly Ask[] =>
  journal.records.every(isBy(journal.phone)) ? [] : asksOf(table, seenFrom(journal.records, journal.phone))
