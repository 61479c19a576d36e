import {
  type AnyEvent,
  examine,
  type JournalRecord,
  MOST_APART_MS,
  phoneOfWriter,
} from '../../shared/record.ts'
import type { MergeReport, Noted, Noting } from './contract.ts'
import type { Entry, JournalStorage } from './journal-storage.ts'
import { type Knowledge, marked, unmarked } from './marks.ts'
import { isPackKey, packLines } from './pack.ts'
import { asideKey } from './quarantine.ts'
import { breath, inSlices, throughSteps } from './slices.ts'
import type { Union } from './union.ts'
import { uniteSteps } from './union-steps.ts'

/** Fewer records than this are stored singly. */
const PACK_FROM = 256
/** A pack's write keeps a hit that comes meanwhile waiting. */
const PACK_MOST = 1000

/** So many records are a moment's work. */
const EACH = 100

type Left = Pick<MergeReport, 'faulty' | 'waiting' | 'ahead'>

interface ExaminedMerge<E extends AnyEvent> extends Left {
  readonly records: readonly JournalRecord<E>[]
  /** What this program cannot fold but a later one may: to be set aside. */
  readonly aside: readonly Entry[]
  /** That and all else that is no part of `records`. */
  readonly out: readonly unknown[]
}

/**
 * Examines what another journal brings, contents too, whatever marks it bears. What is ahead of `nowMs` by more than a
 * day is refused, as the order of all hits to come would follow it, unless that phone's clock was set and set right; an empty
 * journal, or one of settings alone, has nothing to be put out of order, and takes it.
 */
async function examineMerge<E extends AnyEvent>(
  candidates: readonly unknown[],
  { isEvent, content, schema }: Knowledge,
  nowMs: number,
  empty: boolean,
): Promise<ExaminedMerge<E>> {
  const fault = await content()
  const records: JournalRecord<E>[] = []
  const aside: Entry[] = []
  const left = { faulty: 0, waiting: 0, ahead: 0 }
  const out: unknown[] = []
  const leave = (why: keyof typeof left, value: unknown) => {
    left[why]++
    out.push(value)
  }
  const wait = (why: string, value: unknown) => {
    leave('waiting', value)
    const key = (value as { id?: unknown }).id
    aside.push([asideKey(why, typeof key === 'string' ? key : '', value), value])
  }
  const skews = new Map<string, number>()
  /** When it was by the clock of its phone, as it went before that was set or as it went, whichever is behind. Journals are in order. */
  const steadyMs = ({ writer, at, event }: JournalRecord<AnyEvent>): number => {
    const name = phoneOfWriter(writer)
    const { byMs } = event as { readonly byMs?: number }
    const skewMs = (skews.get(name) ?? 0) + (event.kind === 'clock-moved' ? (byMs ?? 0) : 0)
    skews.set(name, skewMs)
    return Math.min(at, at - skewMs)
  }
  await inSlices(candidates, (candidate) => {
    const examined = examine<E>(candidate, isEvent)
    if ('fault' in examined) {
      if (examined.fault === 'kind' || examined.fault === 'newer') wait(examined.fault, candidate)
      else leave('faulty', candidate)
      return
    }
    const record = unmarked(examined.record)
    const field = fault(record.event)
    if (field !== undefined) wait(`content.${schema}.${field}`, candidate)
    else if (Math.max(record.order, steadyMs(record)) > nowMs + MOST_APART_MS && !empty)
      leave('ahead', candidate)
    else records.push(record)
  })
  return { records, aside, out, ...left }
}

interface Packed {
  readonly ids: readonly string[]
  readonly entry: Entry
}

/** Records in packs, each with the ids in it; none where they are too few. */
async function packsOf(
  records: readonly JournalRecord<AnyEvent>[],
  schema: number,
): Promise<readonly Packed[]> {
  if (records.length < PACK_FROM) return []
  const packs: Packed[] = []
  for (let from = 0; from < records.length; from += PACK_MOST) {
    const packed = records.slice(from, from + PACK_MOST)
    const lines: string[] = []
    await inSlices(packed, (record) => lines.push(JSON.stringify(record)))
    await breath()
    packs.push({
      ids: packed.map(({ id }) => id),
      entry: packLines(packed[0]?.id ?? '', lines, schema),
    })
  }
  return packs
}

/** Packs those of `records` that lie singly in `storage`; each pack is noted in `seen` before it is there. */
export async function tidied(
  records: readonly JournalRecord<AnyEvent>[],
  schema: number,
  storage: Pick<JournalStorage, 'keys' | 'replace'>,
  seen: Set<string>,
): Promise<void> {
  const keys = new Set(await storage.keys())
  await breath()
  const singles: JournalRecord<AnyEvent>[] = []
  await inSlices(records, (record) => keys.has(record.id) && singles.push(record))
  for (const { ids, entry } of await packsOf(singles, schema)) {
    const [key, value] = entry
    seen.add(key)
    await storage.replace(ids, key, value)
  }
}

/** Records as they are stored: many in packs, which are read in a tenth of the time. */
export async function entriesOf(
  records: readonly JournalRecord<AnyEvent>[],
  schema: number,
): Promise<readonly Entry[]> {
  const packs = await packsOf(records, schema)
  if (packs.length > 0) return packs.map(({ entry }) => entry)
  return records.map((record) => [record.id, marked(record, schema)])
}

/** So many records are announced to other windows at once. */
const ANNOUNCED_MOST = 250

/** Parts of records, with a chance for the page between two of them. */
async function inParts<R>(records: readonly R[], tell: (part: readonly R[]) => void): Promise<void> {
  for (let from = 0; from < records.length; from += ANNOUNCED_MOST) {
    await breath()
    tell(records.slice(from, from + ANNOUNCED_MOST))
  }
}

/** What a journal lends for taking in another. */
interface Lent<E extends AnyEvent> {
  records(): readonly JournalRecord<E>[]
  readonly knowledge: Knowledge
  readonly storage: Pick<JournalStorage, 'put' | 'quarantine'>
  readonly packsSeen: Set<string>
  /** Throws where the journal can only be read. */
  requireWritable(): void
  /** Makes this phone's own records. */
  sign(events: readonly E[], stamp: Noted<E>['stamp'], orderMs?: number): readonly JournalRecord<E>[]
  takeIn(incoming: readonly JournalRecord<E>[], united?: Union<JournalRecord<E>>): Promise<unknown>
  announceSaved(saved: readonly JournalRecord<E>[]): void
}

const isEmpty = (records: readonly JournalRecord<AnyEvent>[]): boolean =>
  records.every(({ event }) => event.kind === 'settings-set')

/** Takes in what another journal holds: all that is sound of it, or nothing. `nowMs`: epoch ms. Rejects as {@link Lent.requireWritable}. */
export async function mergeInto<E extends AnyEvent>(
  { records, knowledge, storage, packsSeen, requireWritable, sign, takeIn, announceSaved }: Lent<E>,
  candidates: readonly unknown[],
  nowMs: number,
  noted?: Noting<E>,
): Promise<MergeReport> {
  const examined = await examineMerge<E>(candidates, knowledge, nowMs, isEmpty(records()))
  const { records: read, aside, out, faulty, waiting, ahead } = examined
  // Stored before it is folded: what cannot be kept changes nothing.
  let ours = records()
  const before = await throughSteps(uniteSteps(ours, read, EACH))
  requireWritable()
  const packed = await entriesOf(before.added, knowledge.schema)
  const said = typeof noted === 'function' ? noted(out) : noted
  const own = said ? sign(said.events, said.stamp, said.orderMs) : []
  const entries = [...packed, ...own.map((record) => [record.id, marked(record, knowledge.schema)] as const)]
  if (entries.length > 0) await storage.put(entries)
  if (aside.length > 0) await storage.quarantine(aside)
  for (const [key] of entries) if (isPackKey(key)) packsSeen.add(key)
  const theirs = new Set(before.displaced.length > 0 ? read : [])
  const lost = before.displaced.filter((record) => theirs.has(record))
  const incoming = [...before.added, ...lost, ...own]
  let united = before
  // Hits that came meanwhile are among them, and so is what this phone noted.
  for (let asked = own.length > 0; asked || records() !== ours; asked = false) {
    ours = records()
    united = await throughSteps(uniteSteps(ours, incoming, EACH))
  }
  await takeIn(incoming, united)
  await inParts([...before.added, ...own], announceSaved)
  const known = read.length - before.added.length - lost.length
  return { added: before.added.length, known, displaced: before.displaced.length, faulty, waiting, ahead }
}
