import type { Hands, Table } from './state.ts'

export type Potter = 0 | 1

const turns = new WeakMap<Table, Table>()

/** The table seen by the other pair of hands: their bucket, collar and choice stand where the own ones stood. */
export function otherView(table: Table): Table {
  const before = turns.get(table)
  if (before) return before
  const { openBucket, openedAt, collar, picked, others, potter, ...shared } = table
  const mine: Hands = {
    ...(openBucket === undefined ? {} : { openBucket }),
    ...(openedAt === undefined ? {} : { openedAt }),
    ...(collar === undefined ? {} : { collar }),
    ...(picked === undefined ? {} : { picked }),
  }
  const other: Table = {
    ...shared,
    ...others,
    ...(Object.keys(mine).length > 0 ? { others: mine } : {}),
    ...(potter === 1 ? {} : { potter: 1 }),
  }
  turns.set(table, other)
  turns.set(other, table)
  return other
}

/** The table as a pair of hands sees it. */
export const viewOf = (table: Table, potter: Potter): Table =>
  (table.potter ?? 0) === potter ? table : otherView(table)

/** Whose turn the table is seen from. */
export const potterOf = (table: Table): Potter => table.potter ?? 0

/** These hands have this bucket open, and no others: a new visit of it begins, or the old one goes on. */
export function opened(table: Table, bucketId: string, at: number): Table {
  const openedAt = table.openBucket === bucketId ? table.openedAt : at
  const here: Table = { ...table, openBucket: bucketId, openedAt }
  if (table.others?.openBucket !== bucketId) return here
  const { openBucket: _open, openedAt: _at, ...others } = table.others
  return { ...here, others }
}
