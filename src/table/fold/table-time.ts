import type { Stamped } from '../../../shared/events.ts'
import type { Table } from '../model/state.ts'
import { phoneOf } from './whose.ts'

/** Jumps, so far, of the clock that wrote a record, ms. */
export const skewOf = (table: Table, stamped: Stamped): number => {
  const phone = phoneOf(stamped)
  return phone === (table.phone ?? '') ? table.skewMs : (table.skews?.[phone] ?? 0)
}

/** The moment of a record in table time, ms. */
export const tableTime = (table: Table, stamped: Stamped): number => stamped.at - skewOf(table, stamped)
