import type { Stamped } from '../../../shared/events.ts'
import { EMPTY_TABLE } from '../model/defaults.ts'
import type { HitLine, Table } from '../model/state.ts'
import { HITS_KEPT, happened, hitLine, reduce } from './reduce.ts'

/**
 * The table after all events, in the order given (the journal's own order). A hit that was taken back, and not
 * put back since, is left out as if it had never been; nothing is erased, so putting it back is exact.
 */
export function fold(events: readonly Stamped[]): Table {
  const out = takenBack(events)
  const named = new Map<string, HitLine>()
  let past: Table['takenBack']
  let table = EMPTY_TABLE
  for (const stamped of events) {
    const { event, at, hit } = stamped
    if (event.kind === 'taken-back' && out.has(event.hit)) past = { hit: event.hit, at: at - table.skewMs }
    else if (!out.has(hit)) {
      const line = hitLine(table, stamped)
      if (line) {
        named.delete(hit)
        named.set(hit, line)
        past = undefined
      }
      table = happened(table, stamped)
    }
  }
  const hits = [...named.values()].slice(-HITS_KEPT)
  return { ...table, hits, ...(past ? { takenBack: past } : {}) }
}

/** The hits that stand as taken back. */
function takenBack(events: readonly Stamped[]): ReadonlySet<string> {
  const out = new Set<string>()
  for (const { event } of events) {
    if (event.kind === 'taken-back') out.add(event.hit)
    else if (event.kind === 'put-back') out.delete(event.hit)
  }
  return out
}

/** The fold of `before` and `next`, where `table` is the fold of `before`; anew only where history changed. */
export function step(table: Table, before: readonly Stamped[], next: readonly Stamped[]): Table {
  if (next.some(({ event }) => event.kind === 'taken-back' || event.kind === 'put-back'))
    return fold([...before, ...next])
  return next.reduce(reduce, table)
}
