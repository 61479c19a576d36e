import type { Stamped } from '../../../shared/events.ts'
import type { Table } from '../model/state.ts'

/** Jumps, so far, of the clock that wrote a record, ms; another phone's are taken off already. */
export const skewOf = (table: Table, { from }: Stamped): number => (from ? 0 : table.skewMs)

/** The moment of a record in table time, ms. */
export const tableTime = (table: Table, stamped: Stamped): number => stamped.at - skewOf(table, stamped)
