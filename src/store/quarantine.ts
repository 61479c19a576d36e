import { crc32 } from '../../shared/crc.ts'
import { type AnyEvent, examine, type Fault, type JournalRecord } from '../../shared/record.ts'
import type { Entry, Loaded, Move } from './journal-storage.ts'
import { isPackKey, keyed, unpack } from './pack.ts'

/** Why something was set aside. `displaced`: another record of the same id prevailed. */
export type QuarantineReason = Exclude<Fault, 'newer'> | 'displaced'

/** A value set aside: kept as found, out of the fold. */
export interface Quarantined {
  readonly key: string
  readonly reason: QuarantineReason
  readonly value: unknown
}

/** What was loaded, sorted into what can be folded and what cannot. */
export interface Sorted<E extends AnyEvent> {
  readonly records: readonly JournalRecord<E>[]
  /** Records of a newer program: left where they are. */
  readonly newer: number
  /** To be moved out of the journal. */
  readonly out: readonly Move[]
  /** To be moved back, as this program can read them. */
  readonly back: readonly Move[]
  /** All that is then aside. */
  readonly aside: readonly Quarantined[]
}

const REASONS: readonly string[] = ['shape', 'sum', 'kind', 'displaced']

function textOf(value: unknown): string {
  try {
    return JSON.stringify(value) ?? ''
  } catch {
    return ''
  }
}

/** Key in quarantine: says why, and never covers another content of the same key. */
export const quarantineKey = (reason: QuarantineReason, key: string, value: unknown) =>
  `${reason}~${key}~${crc32(textOf(value)).toString(36)}`

function reasonOf(key: string): QuarantineReason {
  const [reason] = key.split('~')
  return REASONS.includes(reason ?? '') ? (reason as QuarantineReason) : 'shape'
}

/** Sorts journal values by whether they can be folded; what is packed is taken out of its pack. */
export function sortOut<E extends AnyEvent>(
  entries: readonly Entry[],
  isEvent: (event: AnyEvent) => boolean,
): Omit<Sorted<E>, 'back'> {
  const records: JournalRecord<E>[] = []
  const out: Move[] = []
  const aside: Quarantined[] = []
  let newer = 0

  const examined = (key: string, value: unknown): QuarantineReason | null => {
    const result = examine<E>(value, isEvent)
    if ('record' in result) {
      if (result.record.id !== key) return 'shape'
      records.push(result.record)
      return null
    }
    if (result.fault !== 'newer') return result.fault
    newer++
    return null
  }

  for (const [key, value] of entries) {
    if (!isPackKey(key)) {
      const reason = examined(key, value)
      if (reason === null) continue
      const to = quarantineKey(reason, key, value)
      out.push({ from: key, to, value })
      aside.push({ key: to, reason, value })
      continue
    }
    const { intact, values } = unpack(value)
    for (const [id, packed] of keyed(values)) {
      const known = intact && isEvent((packed as JournalRecord<E>).event)
      if (known) records.push(packed as JournalRecord<E>)
      const reason = known ? null : examined(id, packed)
      // It stays in its pack as well, and is found again under the same key.
      if (reason !== null) aside.push({ key: quarantineKey(reason, id, packed), reason, value: packed })
    }
  }
  return { records, newer, out, aside }
}

/** Sorts all that was loaded; what was set aside by a program that knew less comes back. */
export function sortLoaded<E extends AnyEvent>(
  { journal, quarantined: aside }: Loaded,
  isEvent: (event: AnyEvent) => boolean,
): Sorted<E> {
  const sorted = sortOut<E>(journal, isEvent)
  const known = new Set(sorted.records.map((record) => record.id))
  const records = [...sorted.records]
  const back: Move[] = []
  const staying: Quarantined[] = []
  for (const [key, value] of aside) {
    const reason = reasonOf(key)
    const examined = examine<E>(value, isEvent)
    if (reason !== 'displaced' && 'record' in examined && !known.has(examined.record.id)) {
      back.push({ from: key, to: examined.record.id, value })
      records.push(examined.record)
    } else if (!sorted.aside.some((entry) => entry.key === key)) staying.push({ key, reason, value })
  }
  return { ...sorted, records, back, aside: [...staying, ...sorted.aside] }
}
