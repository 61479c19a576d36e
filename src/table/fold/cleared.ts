import { noPots } from '../model/change.ts'
import { EMPTY_TABLE } from '../model/defaults.ts'
import type { Table } from '../model/state.ts'
import { keptOver } from './waiting.ts'

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
