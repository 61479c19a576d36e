import { crc32 } from '../../shared/crc.ts'
import { type AnyEvent, examine, type Fault, type JournalRecord } from '../../shared/record.ts'
import type { Entry, Loaded, Move } from './journal-storage.ts'
import { isMarked, type Knowledge, unmarked } from './marks.ts'
import { isPackKey, keyed, unpack } from './pack.ts'

/**
 * Why a value was set aside. `content`: a field is out of its range or of a type that this program doesn't know.
 * `displaced`: another record of the same id prevailed.
 */
export type QuarantineReason = Fault | 'content' | 'displaced'

/** A value set aside: kept as found, out of the fold. */
export interface Quarantined {
  /** In the store of what is aside, see {@link asideKey}. */
  readonly key: string
  readonly reason: QuarantineReason
  readonly value: unknown
}

/** A sound record whose content is not known to be well-formed. */
interface Doubt<E extends AnyEvent> {
  readonly key: string
  readonly record: JournalRecord<E>
  readonly value: unknown
  /** Where it lies, if outside a pack. */
  readonly from: 'journal' | 'quarantine' | null
}

/** What was loaded, sorted into what can be folded and what cannot. */
export interface Sorted<E extends AnyEvent> {
  readonly records: readonly JournalRecord<E>[]
  /** To be settled with the schemas. */
  readonly doubts: readonly Doubt<E>[]
  /** Records of a newer program: left where they are. */
  readonly newer: number
  /** To be moved out of the journal. */
  readonly out: readonly Move[]
  /** To be moved back, as this program can read them. */
  readonly back: readonly Move[]
  /** All that is then aside. */
  readonly aside: readonly Quarantined[]
  /** Lie in the journal unmarked and have passed: to be marked. */
  readonly passed: readonly JournalRecord<E>[]
}

const REASONS: readonly string[] = ['shape', 'sum', 'kind', 'content', 'newer', 'displaced']

function textOf(value: unknown): string {
  try {
    return JSON.stringify(value) ?? ''
  } catch {
    return ''
  }
}

/**
 * Key of what is aside: `why` is the reason, for content with the schemas' version and the field. It never covers
 * another content of the same key.
 */
export const asideKey = (why: string, key: string, value: unknown) =>
  `${why}~${key}~${crc32(textOf(value)).toString(36)}`

/** The reason in such a key, and by which version of the schemas it was found. */
function reasonOf(key: string): { readonly reason: QuarantineReason; readonly schema: number } {
  const [why = ''] = key.split('~')
  const [reason = '', schema = '0'] = why.split('.')
  return { reason: REASONS.includes(reason) ? (reason as QuarantineReason) : 'shape', schema: Number(schema) }
}

/** The field that was wrong with what is aside under this key, as `bucket-set.bucket.litres`; empty without one. */
export const fieldOf = (key: string): string => (key.split('~')[0] ?? '').split('.').slice(2).join('.')

/** Sorts journal values by whether they can be folded; what is packed is taken out of its pack. */
export function sortOut<E extends AnyEvent>(
  entries: readonly Entry[],
  { isEvent, schema }: Knowledge,
): Sorted<E> {
  const records: JournalRecord<E>[] = []
  const doubts: Doubt<E>[] = []
  const out: Move[] = []
  const aside: Quarantined[] = []
  let newer = 0

  const take = (key: string, value: unknown, from: 'journal' | null): QuarantineReason | null => {
    const result = examine<E>(value, isEvent)
    if ('record' in result) {
      const { record } = result
      if (record.id !== key) return 'shape'
      if (isMarked(value, record.sum, schema)) records.push(unmarked(record))
      else doubts.push({ key, record: unmarked(record), value, from })
      return null
    }
    if (result.fault !== 'newer') return result.fault
    newer++
    return null
  }

  for (const [key, value] of entries) {
    if (!isPackKey(key)) {
      const reason = take(key, value, 'journal')
      if (reason === null) continue
      const to = asideKey(reason, key, value)
      out.push({ from: key, to, value })
      aside.push({ key: to, reason, value })
      continue
    }
    const { known, values } = unpack(value, schema)
    for (const [id, packed] of keyed(values)) {
      const folds = known && isEvent((packed as JournalRecord<E>).event)
      if (folds) records.push(packed as JournalRecord<E>)
      const reason = folds ? null : take(id, packed, null)
      // It stays in its pack as well, and is found again under the same key.
      if (reason !== null) aside.push({ key: asideKey(reason, id, packed), reason, value: packed })
    }
  }
  return { records, doubts, newer, out, back: [], aside, passed: [] }
}

/** Sorts all that was loaded; what was set aside by a program that knew less comes back. */
export function sortLoaded<E extends AnyEvent>(
  { journal, quarantined }: Loaded,
  knowledge: Knowledge,
): Sorted<E> {
  const sorted = sortOut<E>(journal, knowledge)
  if (quarantined.length === 0) return sorted
  const known = new Set([...sorted.records, ...sorted.doubts.map(({ record }) => record)].map(({ id }) => id))
  const doubts = [...sorted.doubts]
  const staying: Quarantined[] = []
  for (const [key, value] of quarantined) {
    const { reason, schema } = reasonOf(key)
    const settled = reason === 'displaced' || (reason === 'content' && schema >= knowledge.schema)
    const examined = settled ? null : examine<E>(value, knowledge.isEvent)
    if (examined && 'record' in examined && !known.has(examined.record.id))
      doubts.push({ key, record: unmarked(examined.record), value, from: 'quarantine' })
    else if (!sorted.aside.some((entry) => entry.key === key)) staying.push({ key, reason, value })
  }
  return { ...sorted, doubts, aside: [...staying, ...sorted.aside] }
}

/** The same without doubts: their contents examined, by code that a start with none does not fetch. */
export const settle = async <E extends AnyEvent>(
  sorted: Sorted<E>,
  knowledge: Knowledge,
): Promise<Sorted<E>> =>
  sorted.doubts.length === 0 ? sorted : (await import('./settle.ts')).settleDoubts(sorted, knowledge)
