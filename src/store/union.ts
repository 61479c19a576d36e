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
const prevails = (a: JournalRecord<AnyEvent>, b: JournalRecord<AnyEvent>) =>
  a.sum !== b.sum ? a.sum < b.sum : JSON.stringify(a) < JSON.stringify(b)

/** Whether two records of one id are one. */
export const isSame = (a: JournalRecord<AnyEvent>, b: JournalRecord<AnyEvent>) =>
  a === b || (a.sum === b.sum && JSON.stringify(a) === JSON.stringify(b))

/**
 * Union of two journals by id: commutative, associative, idempotent, so that phones may exchange theirs in any
 * order and any number of times. `ours` holds each id once and is in the order of the fold.
 */
export function unite<R extends JournalRecord<AnyEvent>>(ours: readonly R[], theirs: readonly R[]): Union<R> {
  for (const steps = uniteSteps(ours, theirs, Number.POSITIVE_INFINITY); ; ) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

/** The same in steps of so many records, between which others may have the thread. */
export function* uniteSteps<R extends JournalRecord<AnyEvent>>(
  ours: readonly R[],
  theirs: readonly R[],
  each: number,
): Generator<void, Union<R>, undefined> {
  let work = 0
  const isDue = () => ++work % each === 0
  if (ours.length === 0) {
    // As a start has them. Stored journals lie in a few runs, which sort fast.
    const records = yield* inOrder(theirs, each)
    if (yield* areApart(records, each)) return { records, added: records, displaced: [] }
  }
  const named = new Set<string>()
  for (const { id } of theirs) {
    if (isDue()) yield
    named.add(id)
  }
  const byId = new Map<string, R>()
  for (const record of ours) {
    if (isDue()) yield
    if (named.has(record.id)) byId.set(record.id, record)
  }
  const added = new Map<string, R>()
  const displaced: R[] = []
  for (const record of theirs) {
    if (isDue()) yield
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
  if (added.size === 0) return { records: ours, added: [], displaced }
  const fresh = yield* inOrder([...added.values()], each)
  const records: R[] = []
  let next = 0
  for (const record of ours) {
    if (isDue()) yield
    for (let one = fresh[next]; one && compareRecords(one, record) < 0; one = fresh[++next]) records.push(one)
    if (displaced.length === 0 || !added.has(record.id)) records.push(record)
  }
  for (; next < fresh.length; next++) {
    if (isDue()) yield
    records.push(fresh[next] as R)
  }
  return { records, added: fresh, displaced }
}

/** These in the order of the fold; files and packs have them so. */
function* inOrder<R extends JournalRecord<AnyEvent>>(
  records: readonly R[],
  each: number,
): Generator<void, readonly R[], undefined> {
  for (let at = 1; at < records.length; at++) {
    if (at % each === 0) yield
    if (compareRecords(records[at - 1] as R, records[at] as R) > 0) return [...records].sort(compareRecords)
  }
  return records
}

/** Whether these, in order, hold no id twice: so where each writer's count goes up. */
function* areApart(
  records: readonly JournalRecord<AnyEvent>[],
  each: number,
): Generator<void, boolean, undefined> {
  const last = new Map<string, number>()
  let at = 0
  for (const { writer, seq } of records) {
    if (++at % each === 0) yield
    if (seq <= (last.get(writer) ?? 0)) return false
    last.set(writer, seq)
  }
  return true
}
