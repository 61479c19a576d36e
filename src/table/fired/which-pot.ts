import { SURE } from '../../engine/kiln/sure.ts'
import { widestMm } from '../forecast/shape-inputs.ts'
import type { LoadState, MatchedPot } from '../model/load-state.ts'
import type { PotState, Table } from '../model/state.ts'
import { firedOf } from './fired-pot.ts'

/** Heights and widths that differ by less than this part may be taken for each other after the fire. Our choice. */
const ALIKE_PART = 0.08

const near = (a: number, b: number): boolean => Math.abs(a - b) < ALIKE_PART * Math.max(a, b)

const areAlike = (a: PotState, b: PotState): boolean =>
  near(a.facts.shape.heightMm, b.facts.shape.heightMm) && near(widestMm(a.facts), widestMm(b.facts))

/** A pot that a piece was told to be, surely or by a hand that took it in. */
const isFound = (pot: PotState | undefined, { sureness }: MatchedPot): boolean =>
  sureness >= SURE || (pot !== undefined && firedOf(pot).found?.takenIn === true)

/** A piece that somebody judged as one pot of a load without being sure. */
export interface UnsurePiece {
  readonly potId: string
  /** How sure it is that pot, 0 to 1. */
  readonly sureness: number
  /** Pots of the load of its size, which it may be as well. */
  readonly orIds: readonly string[]
}

const inLoad = (table: Table, { things }: LoadState): readonly PotState[] =>
  Object.values(table.pots).filter(({ facts: { potId, lidOf } }) => things[lidOf ?? potId] !== undefined)

const kept = new WeakMap<
  LoadState,
  { readonly pots: Table['pots']; readonly pieces: readonly UnsurePiece[] }
>()

/** Pieces of a load that were told from others, none of them surely, each with the pots that it may be as well. */
export function unsurePieces(table: Table, load: LoadState): readonly UnsurePiece[] {
  const matched = Object.entries(load.matched ?? {})
  if (matched.every(([, { sureness }]) => sureness >= SURE)) return []
  const before = kept.get(load)
  if (before?.pots === table.pots) return before.pieces
  const found = new Set(matched.flatMap(([potId, one]) => (isFound(table.pots[potId], one) ? potId : [])))
  const open = inLoad(table, load).filter(
    (pot) => !found.has(pot.facts.potId) && !firedOf(pot).found?.takenIn,
  )
  const pieces = matched.flatMap(([potId, { sureness }]): UnsurePiece[] => {
    const pot = table.pots[potId]
    if (!pot || found.has(potId)) return []
    const others = open.filter((other) => other !== pot && areAlike(other, pot))
    return [{ potId, sureness, orIds: others.map(({ facts }) => facts.potId) }]
  })
  kept.set(load, { pots: table.pots, pieces })
  return pieces
}

/**
 * How sure it is, 0 to 1, that what was judged as a pot of a load was that pot: as it was told, a lid as its jar. One that was
 * known by its place may be what an unsure piece alike was taken from.
 */
export function surenessOf(table: Table, load: LoadState, { facts: { potId, lidOf } }: PotState): number {
  const own = load.matched?.[potId]
  if (own) return own.sureness
  const jar = lidOf === undefined ? undefined : load.matched?.[lidOf]
  const beside = unsurePieces(table, load).reduce(
    (sum, { sureness, orIds }) => sum + (orIds.includes(potId) ? (1 - sureness) / orIds.length : 0),
    0,
  )
  return Math.min(jar?.sureness ?? 1, Math.max(0, 1 - beside))
}
