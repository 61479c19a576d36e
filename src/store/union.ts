import { type AnyEvent, compareRecords, type JournalRecord } from '../../shared/record.ts'

export interface Union<R> {
  /** All, each id once, in the order of the fold. */
  readonly records: readonly R[]
  /** Those of `theirs` that were new or prevailed. */
  readonly added: readonly R[]
  /** What lost against another record of the same id: two contents under one id mean that one is forged or torn. */
  readonly displaced: readonly R[]
}

/** Of two contents under one id the same one prevails on every phone, whichever came first. */
export const prevails = (a: JournalRecord<AnyEvent>, b: JournalRecord<AnyEvent>) =>
  a.sum !== b.sum ? a.sum < b.sum : JSON.stringify(a) < JSON.stringify(b)

/** Whether two records of one id are one. */
export const isSame = (a: JournalRecord<AnyEvent>, b: JournalRecord<AnyEvent>) =>
  a === b || (a.sum === b.sum && JSON.stringify(a) === JSON.stringify(b))

/**
 * Union of two journals by id: commutative, associative, idempotent, so that phones may exchange theirs in any
 * order and any number of times. `ours` holds each id once and is in the order of the fold.
 */
export function unite<R extends JournalRecord<AnyEvent>>(ours: readonly R[], theirs: readonly R[]): Union<R> {
  const byId = new Map(ours.map((record) => [record.id, record]))
  const added = new Map<string, R>()
  const displaced: R[] = []
  for (const record of theirs) {
    const present = byId.get(record.id)
    if (present && isSame(present, record)) continue
    if (present && prevails(present, record)) {
      displaced.push(record)
      continue
    }
    if (present) displaced.push(present)
    byId.set(record.id, record)
    added.set(record.id, record)
  }
  const sorted = (records: Iterable<R>) => [...records].sort(compareRecords)
  if (added.size === 0) return { records: ours, added: [], displaced }
  return { records: sorted(byId.values()), added: sorted(added.values()), displaced }
}
