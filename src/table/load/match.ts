import { type MatchPot, matching, SHRINKAGE, type Shrinkage } from '../../engine/kiln/matching.ts'
import { seedOf } from '../../engine/numeric/random.ts'
import { unsurePieces } from '../fired/which-pot.ts'
import { widestMm } from '../forecast/shape-inputs.ts'
import type { LoadState } from '../model/load-state.ts'
import { otherPiece } from '../model/pieces.ts'
import type { PotState, Table } from '../model/state.ts'
import { potsIn } from './loads.ts'

/** What is seen of a piece that nobody knows any more; what is left out nobody looked at. Sizes are those after the fire. */
export interface SeenPiece {
  readonly heightMm?: number
  /** Its widest, across. */
  readonly widthMm?: number
  readonly stackId?: string
  /** Its place, as 2.4, or the number of its shelf alone. */
  readonly place?: string
}

/** Pots that it may be, the likeliest first, at most three, with how sure, 0 to 1. */
export interface MatchAnswer {
  readonly options: readonly { readonly potId: string; readonly sureness: number }[]
  readonly sure: boolean
}

/** Rulers are read to the millimetre. */
const STEP_MM = 1
/** A length against the truth, part of it: what one piece says of the shrinkage. Assumption. */
const LENGTH_PART = 0.02

/** Pots of a load, and their lids, that nobody has found yet. */
export function notFound(table: Table, load: LoadState): readonly PotState[] {
  const all = potsIn(table, load).flatMap((pot) => {
    const other = otherPiece(table, pot.facts)
    return other && load.things[other.facts.potId] === undefined ? [pot, other] : [pot]
  })
  return all.filter(({ facts }) => load.matched?.[facts.potId] === undefined)
}

/** How much a load shrinks, as those of it that were found have shown. */
export function shrinkageOf(table: Table, load: LoadState): Shrinkage {
  let [weight, sum] = [SHRINKAGE.sd ** -2, SHRINKAGE.mean / SHRINKAGE.sd ** 2]
  for (const [potId, { heightMm, widthMm }] of Object.entries(load.matched ?? {})) {
    const facts = table.pots[potId]?.facts
    if (!facts) continue
    for (const [before, after] of [
      [facts.shape.heightMm, heightMm],
      [widestMm(facts), widthMm],
    ] as const) {
      if (after === undefined) continue
      weight += LENGTH_PART ** -2
      sum += (1 - after / before) / LENGTH_PART ** 2
    }
  }
  return { mean: sum / weight, sd: weight ** -0.5 }
}

/**
 * Which pot of a load this piece may be: by its place, the stack that is seen, and its size after shrinking. Pieces that
 * nobody was sure of may be the pot as well: so what is left over is no surer than they were.
 */
export function matchPiece(table: Table, load: LoadState, seen: SeenPiece): MatchAnswer {
  const left = notFound(table, load)
  if (left.length === 0) return { options: [], sure: false }
  const before = unsurePieces(table, load)
  const named = before.flatMap(({ potId }) => table.pots[potId] ?? [])
  const taken = new Set(named.map(({ facts }) => facts.potId))
  const pots = [...left, ...named].map(({ facts }): MatchPot => {
    const place = load.things[facts.potId]?.place ?? load.things[facts.lidOf ?? '']?.place
    return {
      id: facts.potId,
      heightMm: facts.shape.heightMm,
      widthMm: widestMm(facts),
      stackId: facts.stackId,
      place: place ?? null,
      ...(taken.has(facts.potId) ? { taken: true } : {}),
    }
  })
  const unseen = { heightMm: null, widthMm: null, stackId: null, place: null }
  const earlier = before.map((told) => ({ id: told.potId, ...unseen, told }))
  const piece = {
    id: 'piece',
    heightMm: seen.heightMm ?? null,
    widthMm: seen.widthMm ?? null,
    stackId: seen.stackId ?? null,
    place: seen.place ?? null,
  }
  const { pieces } = matching(
    pots,
    [piece, ...earlier],
    STEP_MM,
    shrinkageOf(table, load),
    seedOf(load.loadId),
  )
  return pieces[0] ?? { options: [], sure: false }
}
