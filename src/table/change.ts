import type { DipState, PotState, Table } from './state.ts'

export const withPot = (table: Table, pot: PotState): Table => ({
  ...table,
  pots: { ...table.pots, [pot.facts.potId]: pot },
})

export const withBucket = (table: Table, bucketId: string, bucket: Table['buckets'][string]): Table => ({
  ...table,
  buckets: { ...table.buckets, [bucketId]: bucket },
})

export function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  const { [key]: _gone, ...rest } = record
  return rest
}

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

export function changeLastDip(table: Table, potId: string, mend: (dip: DipState) => DipState): Table {
  const pot = table.pots[potId]
  const last = pot?.dips.at(-1)
  return pot && last ? withPot(table, { ...pot, dips: [...pot.dips.slice(0, -1), mend(last)] }) : table
}
