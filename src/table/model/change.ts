import type { DipState, PotState, Table } from './state.ts'

/** The table with this pot in place of the one of its id. */
export const withPot = (table: Table, pot: PotState): Table => ({
  ...table,
  pots: { ...table.pots, [pot.facts.potId]: pot },
})

/** The table with this bucket under its id. */
export const withBucket = (table: Table, bucketId: string, bucket: Table['buckets'][string]): Table => ({
  ...table,
  buckets: { ...table.buckets, [bucketId]: bucket },
})

/** A record without one of its keys. */
export function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  const { [key]: _gone, ...rest } = record
  return rest
}

/** The table with these facts of a pot changed; as it was where no such pot is. */
export function change(table: Table, potId: string, facts: Partial<PotState>): Table {
  const pot = table.pots[potId]
  return pot ? withPot(table, { ...pot, ...facts }) : table
}

/** Nobody has chosen a pot any more. */
export function unpicked(table: Table): Table {
  if (!table.picked) return table
  const { picked: _done, ...rest } = table
  return rest
}

/** Applies `mend` to a dip wherever it is; `undefined` removes it. */
export function changeDip(table: Table, dipId: string, mend: (dip: DipState) => DipState | undefined): Table {
  for (const pot of Object.values(table.pots)) {
    const dip = pot.dips.find((d) => d.dipId === dipId)
    if (!dip) continue
    const mended = mend(dip)
    const dips = pot.dips.flatMap((d) => (d === dip ? (mended ? [mended] : []) : [d]))
    return withPot(table, { ...pot, dips })
  }
  return table
}

/** The table with a pot's latest dip mended; as it was where it has none. */
export function changeLastDip(table: Table, potId: string, mend: (dip: DipState) => DipState): Table {
  const pot = table.pots[potId]
  const last = pot?.dips.at(-1)
  return pot && last ? withPot(table, { ...pot, dips: [...pot.dips.slice(0, -1), mend(last)] }) : table
}
