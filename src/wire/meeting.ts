/** What this phone writes down where its journal holds records of others. */

import type { Stamped, TableEvent } from '../../shared/events.ts'
import { isBy, phoneOfWriter } from '../../shared/record.ts'
import type { Journal, MergeReport, Noted, Noting } from '../store/index.ts'
import { throughSteps } from '../store/slices.ts'
import { phoneOf, type Seen, seenFrom, seenSteps } from '../table/fold/seen.ts'
import { orderMs } from './clock-set.ts'

type Own = Journal<TableEvent>

/** They, as of now; `skewMs`: how far this phone's clock was set by then. */
export function notedNow(events: readonly TableEvent[], skewMs: number): Noted<TableEvent> {
  const at = Date.now()
  const stamp = { at, tz: -new Date(at).getTimezoneOffset() }
  return { events, stamp, orderMs: orderMs(at, skewMs, events) }
}

/**
 * They, where that others were met holds up to what was left of what they brought: who changes a thing before an update
 * knows the rest has not seen it.
 */
export const notedWith =
  (events: readonly TableEvent[], skewMs: number) =>
  (left: readonly unknown[]): Noted<TableEvent> =>
    notedNow(
      events.map((event) =>
        event.kind === 'met' ? { ...event, upTo: Math.min(event.upTo, before(left, event.phone)) } : event,
      ),
      skewMs,
    )

/** The last order before any of a phone's records among these. */
const before = (left: readonly unknown[], phone: string): number =>
  left.reduce<number>((least, value) => {
    const { writer, order } = (value ?? {}) as { readonly writer?: unknown; readonly order?: unknown }
    const isTheirs = typeof writer === 'string' && phoneOfWriter(writer) === phone
    return isTheirs && Number.isSafeInteger(order) ? Math.min(least, Number(order) - 1) : least
  }, Number.POSITIVE_INFINITY)

/** Keeps them as of now. */
export function write(journal: Own, events: readonly TableEvent[], skewMs: number): void {
  const { stamp, orderMs } = notedNow(events, skewMs)
  if (events.length > 0) journal.append(events, stamp, orderMs)
}

/** How far the clock of who wrote these was set, ms. */
const skewOf = (records: readonly Stamped[]): number =>
  records.reduce((sum, { event }) => (event.kind === 'clock-moved' ? sum + event.byMs : sum), 0)

/** How far a phone's clock was set, under the names that it had before too, ms. */
export function skewOfPhone(records: readonly Stamped[], phone: string): number {
  const names = new Set([phone])
  for (const name of names)
    for (const stamped of records)
      if (stamped.event.kind === 'was-named' && phoneOf(stamped) === name) names.add(stamped.event.phone)
  return skewOf(records.filter((stamped) => names.has(phoneOf(stamped))))
}

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

/**
 * A phone writes down with a backup that it goes on as the one that made it; `byMs`: its clock is so far beyond that one's,
 * as if it had been set.
 */
export function goneOnAs({ phone, skewMs, upTo }: Maker, byMs = 0): Noted<TableEvent> {
  const moved: readonly TableEvent[] = byMs === 0 ? [] : [{ kind: 'clock-moved', byMs }]
  const noted = notedNow([{ kind: 'was-named', phone }, ...moved], skewMs)
  // After all that was written under that name.
  return { ...noted, orderMs: Math.max(noted.orderMs ?? 0, upTo + 1) }
}

/** Or that it met that one; `aheadMs`: how far that one's table time is ahead, where it was said. `skewMs`: this phone's. */
export const metMaker = ({ phone, upTo }: Maker, skewMs: number, aheadMs?: number): Noting<TableEvent> =>
  notedWith([{ kind: 'met', phone, upTo, ...(aheadMs === undefined ? {} : { aheadMs }) }], skewMs)

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

/** What was left of all that was joined since the journal was opened. */
const leftOf = new WeakMap<Own, readonly unknown[]>()

/** Writes down what of other phones is known by now and not said to be. No clock was there to be compared. */
function noteKnown(journal: Own, { said, met }: Seen): boolean {
  /** The last order of each other phone whose records are here, by its name. */
  const last = new Map<string, number>()
  for (const { from, order = 0 } of said)
    if (from !== undefined) last.set(from, Math.max(order, last.get(from) ?? 0))
  const known = (phone: string, order: number) =>
    met.some(({ by, of, upTo }) => by === undefined && of === phone && upTo >= order)
  const aside = journal.opening.quarantined.flatMap(({ reason, value }) =>
    reason === 'displaced' ? [] : [value],
  )
  aside.push(...(leftOf.get(journal) ?? []))
  const fresh = [...last]
    .map(([phone, order]) => [phone, Math.min(order, before(aside, phone))] as const)
    .filter(([phone, order]) => !known(phone, order))
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

/**
 * Joins what another phone brought, all of it or nothing, and remembers what was left of it; `noted`: what is written down
 * with it. Rejects as {@link Journal.merge}.
 */
export async function joinNoted(
  journal: Own,
  records: readonly unknown[],
  nowMs: number,
  noted?: Noting<TableEvent>,
): Promise<MergeReport> {
  let left: readonly unknown[] = []
  const report = await journal.merge(records, nowMs, (out) => {
    left = out
    return typeof noted === 'function' ? noted(out) : noted
  })
  leftOf.set(journal, [...(leftOf.get(journal) ?? []), ...left])
  return report
}

/** After a file was joined: what of other phones is known by now. */
export async function fileTaken(journal: Own): Promise<void> {
  noteKnown(journal, await throughSteps(seenSteps(journal.records, journal.phone)))
}
