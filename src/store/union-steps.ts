import { type AnyEvent, compareRecords, type JournalRecord } from '../../shared/record.ts'
import { isSame, prevails, type Union } from './union.ts'

/** The union of two journals as `unite` makes it, in steps of so many records, between which others may have the thread. */
export function* uniteSteps<R extends JournalRecord<AnyEvent>>(
  ours: readonly R[],
  theirs: readonly R[],
  each: number,
): Generator<void, Union<R>, undefined> {
  let work = 0
  const isDue = () => ++work % each === 0
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
