/** Whose a record is, where several phones met: what each put on the table, and may take from it. */

import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { phoneOfWriter } from '../../../shared/record.ts'
import { change, noPots } from '../model/change.ts'
import { EMPTY_TABLE } from '../model/defaults.ts'
import type { Table } from '../model/state.ts'
import { keptOver } from './waiting.ts'

/** The phone that wrote a record; nothing where it has no name. */
export const phoneOf = ({ writer = '' }: Stamped): string => phoneOfWriter(writer)

/** Whether something is put on a table. */
const puts = ({ kind }: TableEvent): boolean => PUTS.has(kind)
const PUTS = new Set<TableEvent['kind']>(['board-set', 'bucket-set', 'stack-set', 'pot-set', 'tile-read'])

/** The table after a record: this phone has put something on it, if the record says so. */
export const ownedBy = (table: Table, stamped: Stamped): Table =>
  table.own || !puts(stamped.event) || phoneOf(stamped) !== (table.phone ?? '')
    ? table
    : { ...table, own: true }

/**
 * The hits of demos that are not what a phone began with. They were laid on the own table once, which they cleared, or
 * come with the records of another phone. `back`: hits that were taken back, which were never there.
 */
export function demosBeside(
  events: readonly Stamped[],
  phone: string,
  back: ReadonlySet<string>,
): readonly string[] {
  const laid = events.filter(({ event }) => event.kind === 'demo-laid')
  if (laid.length === 0) return []
  const own = (stamped: Stamped) => phone === '' || phoneOf(stamped) === phone
  const begun = events.find(
    (stamped) =>
      !back.has(stamped.hit) &&
      own(stamped) &&
      (puts(stamped.event) || stamped.event.kind === 'table-cleared'),
  )?.hit
  return laid.map(({ hit }) => hit).filter((hit) => hit !== begun)
}

/**
 * The table after `phone` cleared its own. Another phone takes its pots alone from a table on which this one, or a third,
 * has put something; where there is nothing else, the table was that phone's, and is cleared.
 */
export function clearedBy(phone: string, table: Table): Table {
  if (phone === (table.phone ?? '')) return cleared(table)
  const pots = Object.values(table.pots)
  if (!table.own && pots.every(({ from, gone }) => from === phone || gone)) return cleared(table)
  return pots
    .filter(({ from }) => from === phone)
    .reduce((next, { facts }) => change(next, facts.potId, { gone: true }), table)
}

/** A cleared table keeps what is the phone's, and a pan that is on. */
function cleared(table: Table): Table {
  const { settings, phone, skewMs, skews, hits, pan } = table
  return {
    ...EMPTY_TABLE,
    pots: noPots(table),
    settings,
    ...(phone === undefined ? {} : { phone }),
    skewMs,
    ...(skews === undefined ? {} : { skews }),
    hits,
    ...(pan === undefined ? {} : { pan }),
    ...keptOver(table.waiting),
  }
}
