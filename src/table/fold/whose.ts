/** What of a table is whose, where it is cleared or a demo is laid on it. */

import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { noPots } from '../model/change.ts'
import { EMPTY_TABLE } from '../model/defaults.ts'
import type { Table } from '../model/state.ts'
import { keptOver } from './waiting.ts'

/** Whether a table begins with it. */
const begins = ({ kind }: TableEvent): boolean => BEGINS.has(kind)
const BEGINS = new Set<TableEvent['kind']>([
  'board-set',
  'bucket-set',
  'stack-set',
  'pot-set',
  'tile-read',
  'table-cleared',
])

/**
 * The hits of demos that are not what this phone began with: they were laid on a table that they cleared. `back`: hits
 * that were taken back, which were never there.
 */
export function demosBeside(events: readonly Stamped[], back: ReadonlySet<string>): readonly string[] {
  const laid = events.filter(({ event }) => event.kind === 'demo-laid')
  if (laid.length === 0) return []
  const begun = events.find(
    ({ hit, from, event }) => !back.has(hit) && from === undefined && begins(event),
  )?.hit
  return laid.map(({ hit }) => hit).filter((hit) => hit !== begun)
}

/** A cleared table keeps what is the phone's, and a pan that is on. */
export function cleared(table: Table): Table {
  const { settings, skewMs, hits, pan } = table
  return {
    ...EMPTY_TABLE,
    pots: noPots(table),
    settings,
    skewMs,
    hits,
    ...(pan === undefined ? {} : { pan }),
    ...keptOver(table.waiting),
  }
}
