import type { Hands, HitLine, Table } from './state.ts'

export type Potter = 0 | 1

const turns = new WeakMap<Table, Table>()

/** The table seen by the other pair of hands: their bucket, collar and choice stand where the own ones stood. */
export function otherView(table: Table): Table {
  const before = turns.get(table)
  if (before) return before
  const { openBucket, openedAt, usedAt, collar, picked, others, potter, ...shared } = table
  const mine: Hands = {
    ...(openBucket === undefined ? {} : { openBucket }),
    ...(openedAt === undefined ? {} : { openedAt }),
    ...(usedAt === undefined ? {} : { usedAt }),
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
  const before = table.openBucket === bucketId ? table : undefined
  return taken(
    {
      ...table,
      openBucket: bucketId,
      openedAt: before?.openedAt ?? at,
      usedAt: Math.max(before?.usedAt ?? at, at),
    },
    bucketId,
  )
}

/** These hands dipped into this bucket: one that stands open with the other hands stays theirs, whoever dips into it. */
export function dippedInto(table: Table, bucketId: string, at: number, told: boolean): Table {
  const { others } = table
  if (others?.openBucket === bucketId && (others.openedAt ?? 0) <= at) return table
  return told ? openedThen(table, bucketId, at) : opened(table, bucketId, at)
}

/** Nobody has this bucket open any more. */
export function shut(table: Table, bucketId: string): Table {
  const { openBucket, openedAt: _at, ...rest } = table
  return taken(openBucket === bucketId ? rest : table, bucketId)
}

/** The other hands no longer have this bucket open. */
function taken(table: Table, bucketId: string): Table {
  if (table.others?.openBucket !== bucketId) return table
  // When they used it last stays: what is told of before that opens nothing for them.
  const { openBucket: _open, openedAt: _at, ...others } = table.others
  const { others: _shut, ...alone } = table
  return Object.keys(others).length > 0 ? { ...alone, others } : alone
}

/**
 * The same of a dip that is told of afterwards: since `at` the hands may have used another bucket, or the others this
 * one, and then it is not open for them now.
 */
function openedThen(table: Table, bucketId: string, at: number): Table {
  const { others, usedAt = 0 } = table
  if (others?.openBucket === bucketId && (others.usedAt ?? 0) > at) {
    if (usedAt > at) return table
    const { openBucket: _shut, openedAt: _at, ...rest } = table
    return { ...rest, usedAt: at }
  }
  const movedOn = table.openBucket !== bucketId && usedAt > at
  return movedOn ? taken(table, bucketId) : opened(table, bucketId, at)
}

/** The hit that these hands would take back: with two at the phone their own, else the latest. */
export const lastHit = (table: Table): HitLine | undefined =>
  table.settings.potters === 2
    ? table.hits.findLast(({ hands, logged }) => logged || (hands ?? 0) === potterOf(table))
    : table.hits.at(-1)

/**
 * The hit that can be taken back at `now`. A count that was called off is not taken up in its middle: nothing went in. One
 * that was stopped goes on only while it would still count: after that the pot is long out.
 */
export function takesBack(table: Table, now: number): HitLine | undefined {
  const last = lastHit(table)
  if (last?.kind === 'count-cancelled') return undefined
  if (last?.kind !== 'count-stopped') return last
  const dip = table.pots[last.potId ?? '']?.dips.at(-1)
  return dip && now < dip.underAt + dip.plannedHoldS * 1000 ? last : undefined
}
