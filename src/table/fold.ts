import type { Stamped } from '../../shared/events.ts'
import { EMPTY_TABLE } from './defaults.ts'
import { reduce } from './reduce.ts'
import type { Table } from './state.ts'

/**
 * The table after all events, in the order given (the journal's own order). A hit that was taken back, and not
 * put back since, is left out as if it had never been; nothing is erased, so putting it back is exact.
 */
export function fold(events: readonly Stamped[]): Table {
  const out = takenBack(events)
  let table = EMPTY_TABLE
  for (const stamped of events) if (!out.has(stamped.hit)) table = reduce(table, stamped)
  const lastTakenBack = [...out].at(-1)
  return lastTakenBack === undefined ? table : { ...table, lastTakenBack }
}

/** The hits that stand as taken back, the latest last. */
export function takenBack(events: readonly Stamped[]): ReadonlySet<string> {
  const out = new Set<string>()
  for (const { event } of events) {
    if (event.kind === 'taken-back') {
      out.delete(event.hit)
      out.add(event.hit)
    } else if (event.kind === 'put-back') out.delete(event.hit)
  }
  return out
}

/** One more event on a table that is the fold of `before`; folds anew only where history itself changed. */
export function step(table: Table, before: readonly Stamped[], next: readonly Stamped[]): Table {
  if (next.some(({ event }) => event.kind === 'taken-back' || event.kind === 'put-back'))
    return fold([...before, ...next])
  return next.reduce(reduce, table)
}
