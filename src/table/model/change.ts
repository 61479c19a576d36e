import type { DipState, PotState, Table } from './state.ts'

/** The pots of a fold under way, which nobody has seen yet: changed in place, so that an event costs no copy of all. */
let draft: Record<string, PotState> | undefined
/** The pot that each of the draft's dips is on. */
const homes = new Map<string, string>()

/** Runs a fold that starts at this table. Until it ends, {@link withPot} changes the pots in place. */
export function drafting<T>(table: Table, work: (table: Table) => T): T {
  draft = { ...table.pots }
  for (const pot of Object.values(draft)) for (const { dipId } of pot.dips) homes.set(dipId, pot.facts.potId)
  try {
    return work({ ...table, pots: draft })
  } finally {
    draft = undefined
    homes.clear()
  }
}

/** Whether these pots are still being changed in place: nothing may be kept under them. */
export const isDraft = (pots: Table['pots']): boolean => pots === draft

/** The table with this pot in place of the one of its id. */
export function withPot(table: Table, pot: PotState): Table {
  const { potId } = pot.facts
  if (table.pots !== draft) return { ...table, pots: { ...table.pots, [potId]: pot } }
  if (draft[potId]?.dips !== pot.dips) for (const { dipId } of pot.dips) homes.set(dipId, potId)
  draft[potId] = pot
  return table
}

/** Pots for a table that has none any more. */
export function noPots(table: Table): Table['pots'] {
  if (table.pots !== draft) return {}
  homes.clear()
  draft = {}
  return draft
}

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

/** A dip and the pot it is on. */
export function dipOf(
  table: Table,
  dipId: string,
): { readonly pot: PotState; readonly dip: DipState } | undefined {
  const home = table.pots === draft ? homes.get(dipId) : undefined
  const there = home === undefined ? undefined : table.pots[home]
  for (const pot of table.pots === draft ? (there ? [there] : []) : Object.values(table.pots)) {
    const dip = pot.dips.find((d) => d.dipId === dipId)
    if (dip) return { pot, dip }
  }
  return undefined
}

/** Applies `mend` to a dip wherever it is. */
export function changeDip(table: Table, dipId: string, mend: (dip: DipState) => DipState): Table {
  const found = dipOf(table, dipId)
  if (!found) return table
  const { pot, dip } = found
  return withPot(table, { ...pot, dips: pot.dips.map((d) => (d === dip ? mend(dip) : d)) })
}
