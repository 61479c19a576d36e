import type { Stamped } from '../../../shared/events.ts'
import { drafting } from '../model/change.ts'
import { EMPTY_TABLE } from '../model/defaults.ts'
import type { HitLine, Table } from '../model/state.ts'
import { hitLine } from './hit-line.ts'
import { asItWas, foldedAnewFrom, looksBack, readAhead } from './read-ahead.ts'
import { HITS_KEPT, happened, reduce } from './reduce.ts'
import { tableTime } from './table-time.ts'
import { hitKey, isAwaited } from './waiting.ts'

/** A table on the way to a later one: the fold of the first `at` events. */
interface Mark {
  readonly at: number
  readonly table: Table
}

/** So many events are folded anew at most, beyond those since the one that is taken back. */
const MARK_EVERY = 250
/** Marks are kept among the latest events: nobody takes back what was done a thousand hits ago. */
const MARKS_KEPT = 4

const marksOf = new WeakMap<Table, readonly Mark[]>()

/**
 * The table after all events, in the order given (the journal's own order). A hit that was taken back, and not
 * put back since, is left out as if it had never been, and so is the START of a count that was called off; a dip is
 * folded as it was put right. Nothing is erased, so putting back is exact. Records of other phones are as
 * `seen.ts` sees them.
 */
export function fold(events: readonly Stamped[]): Table {
  return foldFrom(BEGIN, [], events)
}

/** The same in steps of so many events, between which others may have the thread; returned when all are folded. */
export const foldSteps = (events: readonly Stamped[], each: number): Generator<void, Table> =>
  folding(BEGIN, [], events, each)

const BEGIN: Mark = { at: 0, table: EMPTY_TABLE }

/** The fold of `before` and `next`, where `table` is the fold of `before`; anew only where history changed. */
export function step(table: Table, before: readonly Stamped[], next: readonly Stamped[]): Table {
  const marks = marksOf.get(table) ?? []
  if (next.some((stamped) => isAwaited(table, stamped))) return fold([...before, ...next])
  if (next.some(({ event }) => looksBack(event))) {
    const all = [...before, ...next]
    const from = foldedAnewFrom(all, next)
    const usable = marks.filter(({ at }) => at <= from)
    const last = usable.at(-1)
    return last ? foldFrom(last, usable.slice(0, -1), all) : fold(all)
  }
  const after = next.reduce((t, stamped) => reduce(t, stamped), table)
  const apart = before.length - (marks.at(-1)?.at ?? 0) >= MARK_EVERY
  const due = apart && next[0]?.hit !== before.at(-1)?.hit
  marksOf.set(after, due ? kept([...marks, { at: before.length, table }]) : marks)
  return after
}

const kept = ([first, ...others]: readonly Mark[]): readonly Mark[] =>
  first ? [first, ...others.slice(-MARKS_KEPT)] : others

/** The fold of `events` from a mark on; `earlier` ones stand as well. */
function foldFrom(from: Mark, earlier: readonly Mark[], events: readonly Stamped[]): Table {
  const steps = folding(from, earlier, events, events.length)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

function* folding(
  from: Mark,
  earlier: readonly Mark[],
  events: readonly Stamped[],
  each: number,
): Generator<void, Table> {
  const ahead = yield* readAhead(events, each)
  if (each < events.length) yield
  const lines = new Map(from.table.hits.map((line) => [line.hit, line]))
  const gone = new Map<string, HitLine>()
  const { takenBack, ...begun } = from.table
  let past = takenBack
  const passed = [...earlier, from]
  let marked = from.at
  const markFrom = events.length - MARKS_KEPT * MARK_EVERY
  /** One hit may take back several: they are put back together, under the name of the first that has one. */
  const takenOff = (hit: string, at: number): typeof past => {
    const before = past?.at === at ? past : { hit, at, all: [] }
    return { ...gone.get(hit), ...before, all: [...before.all, hit] }
  }
  const asSeen = (table: Table): Table => ({
    ...table,
    hits: latest(lines),
    ...(past ? { takenBack: past } : {}),
  })
  let at = from.at - 1
  const foldPart = (start: Table, part: readonly Stamped[]): Table => {
    let table = start
    for (const stamped of part) {
      at++
      if (at >= markFrom && at - marked >= MARK_EVERY && stamped.hit !== events[at - 1]?.hit) {
        passed.push({ at, table: asSeen({ ...table, pots: { ...table.pots } }) })
        marked = at
      }
      const { event, hit } = stamped
      if (event.kind === 'taken-back' && ahead.back.has(event.hit) && ahead.there().has(hitKey(event.hit)))
        past = stamped.from ? past : takenOff(event.hit, tableTime(table, stamped))
      else if (ahead.out.has(hit)) {
        const line = hitLine(table, stamped)
        if (line) gone.set(hit, line)
      } else {
        const named = asItWas(stamped, ahead)
        const line = named && hitLine(table, named)
        if (line) {
          lines.delete(hit)
          lines.set(hit, line)
          past = undefined
        }
        table = happened(table, stamped, ahead)
      }
    }
    return table
  }
  let table: Table = begun
  for (let first = from.at; first < events.length; first += each) {
    if (first > from.at) yield
    const part = events.slice(first, first + each)
    table = drafting(table, (start) => foldPart(start, part))
  }
  const done = asSeen(table)
  marksOf.set(done, kept(passed))
  return done
}

const latest = (lines: ReadonlyMap<string, HitLine>): readonly HitLine[] =>
  [...lines.values()].slice(-HITS_KEPT)
