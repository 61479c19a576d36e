import { SURE } from '../../engine/kiln/sure.ts'
import { spanOf } from '../forecast/drawing.ts'
import { widestMm } from '../forecast/shape-inputs.ts'
import type { LoadState, MatchedPot } from '../model/load-state.ts'
import { coatsOn } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { coatOf, isSure } from './fired-coats.ts'
import { firedOf } from './fired-pot.ts'

/** Heights and widths that differ by less than this part may be taken for each other after the fire. Our choice. */
const ALIKE_PART = 0.08

const near = (a: number, b: number): boolean => Math.abs(a - b) < ALIKE_PART * Math.max(a, b)

const areAlike = (a: PotState, b: PotState): boolean =>
  near(a.facts.shape.heightMm, b.facts.shape.heightMm) && near(widestMm(a.facts), widestMm(b.facts))

/** A pot that a piece was told to be, surely or by a hand that took it in. */
const isFound = (pot: PotState | undefined, { sureness }: MatchedPot): boolean =>
  sureness >= SURE || (pot !== undefined && firedOf(pot).found?.takenIn === true)

const idOf = ({ facts }: PotState): string => facts.potId

/** A piece that somebody judged as one pot of a load without being sure. */
export interface UnsurePiece {
  readonly potId: string
  /** How sure it is that pot, 0 to 1. */
  readonly sureness: number
  /** Pots of the load of its size, not judged by their places before, which it may be as well. */
  readonly orIds: readonly string[]
  /** All pots of the load of its size, found or not. */
  readonly likeIds: readonly string[]
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
  const all = inLoad(table, load)
  const open = all.filter((pot) => !found.has(pot.facts.potId) && !firedOf(pot).found?.takenIn)
  const pieces = matched.flatMap(([potId, { sureness, after }]): UnsurePiece[] => {
    const pot = table.pots[potId]
    if (!pot || found.has(potId)) return []
    const others = open.filter(
      (other) => other !== pot && !after?.includes(other.facts.potId) && areAlike(other, pot),
    )
    const like = all.filter((other) => other !== pot && areAlike(other, pot))
    return [{ potId, sureness, orIds: others.map(idOf), likeIds: like.map(idOf) }]
  })
  kept.set(load, { pots: table.pots, pieces })
  return pieces
}

/** Edges that lie within so many mm of each other, and dry thicknesses that differ by less than this part, run alike. Our choice. */
const SAME_EDGE_MM = 3
const SAME_COAT_PART = 0.1

const within = (
  a: number | undefined,
  b: number | undefined,
  most: (a: number, b: number) => number,
): boolean => (a === undefined || b === undefined ? a === b : Math.abs(a - b) <= most(a, b))

/** Whether pots carry the same: the same glazes in the same order, as far down and as thick. Whichever was seen, it teaches alike. */
function teachAlike(table: Table, a: PotState, b: PotState): boolean {
  const others = coatsOn(b)
  const coats = coatsOn(a)
  if (coats.length !== others.length || coats.some(({ bucketId }, i) => bucketId !== others[i]?.bucketId))
    return false
  return (
    isSure(table, a) &&
    isSure(table, b) &&
    coats.every((dip, i) => {
      const other = others[i] ?? dip
      const [span, otherSpan] = [spanOf(a.facts, dip.cover), spanOf(b.facts, other.cover)]
      return (
        dip.cover.kind === other.cover.kind &&
        within(span?.fromMm, otherSpan?.fromMm, () => SAME_EDGE_MM) &&
        within(
          coatOf(table, a, dip.dipId),
          coatOf(table, b, other.dipId),
          (mm, otherMm) => SAME_COAT_PART * Math.max(mm, otherMm),
        )
      )
    })
  )
}

/** How sure it was, 0 to 1, when a pot was told from others, a lid by its jar; 1 of one that nobody had to tell. */
export const toldSureness = ({ matched }: LoadState, { facts: { potId, lidOf } }: PotState): number =>
  (matched?.[potId] ?? matched?.[lidOf ?? ''])?.sureness ?? 1

/**
 * Whether it is known which pot of a load was judged as this one, or what it says is the same whichever it was. One that was
 * known by its place may be what an unsure piece alike was taken from; what went wrong there, `isHarm`, stands all the same.
 */
export function isWhich(table: Table, load: LoadState, pot: PotState, isHarm: () => boolean): boolean {
  const pieces = unsurePieces(table, load)
  if (pieces.length === 0) return true
  const { potId, lidOf } = pot.facts
  const own = load.matched?.[potId] ? pot : table.pots[lidOf ?? '']
  const isSame = (id: string): boolean => {
    const other = table.pots[id]
    return other !== undefined && own !== undefined && teachAlike(table, own, other)
  }
  const piece = own && pieces.find((one) => one.potId === own.facts.potId)
  if (piece) {
    // Where the others were all found since it is still the one or another of them.
    const among = piece.orIds.length > 0 ? piece.orIds : piece.likeIds
    const same = among.filter(isSame).length / Math.max(1, among.length)
    return piece.sureness + (1 - piece.sureness) * same >= SURE
  }
  if (load.matched?.[potId] || isHarm()) return true
  const beside = pieces.reduce((sum, { potId: named, sureness, orIds }) => {
    const other = table.pots[named]
    const may = orIds.includes(potId) && !(other && teachAlike(table, pot, other))
    return sum + (may ? (1 - sureness) / orIds.length : 0)
  }, 0)
  return 1 - beside >= SURE
}
