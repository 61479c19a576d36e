import type { BoardFacts, BucketFacts, PotFacts } from '../../../shared/nouns.ts'
import type { Body, Slop } from '../../engine/contract.ts'
import { clingsAt } from '../../engine/slop/film.ts'
import { nearestSlop } from '../../engine/slop/slop.ts'
import { bisqueOf } from '../../engine/wall/body.ts'
import { type PickUp, pinPickUp } from '../../engine/wall/calibrate.ts'
import type { BucketState, Table } from '../model/state.ts'

/** The clay of a pot, or of the board, as the engine takes it. */
export function bodyOf({ board }: Table, pot?: PotFacts): Body {
  const { absorption, sorptivityMmPerSqrtS } = board
  const dipped = sorptivityMmPerSqrtS === undefined ? undefined : { absorption, sorptivityMmPerSqrtS }
  return bisqueOf(pot?.absorption ?? absorption, dipped)
}

const pins = new WeakMap<BucketFacts, { readonly board: BoardFacts; readonly pickUp: PickUp | undefined }>()

/** What the scratch of a bucket says of its pick-up, on the board's own clay; undefined without one. */
export function pickUpOfPin(table: Table, facts: BucketFacts): PickUp | undefined {
  if (facts.pinMm === undefined) return undefined
  const before = pins.get(facts)
  if (before?.board === table.board) return before.pickUp
  const slop = nearestSlop(facts.targetGramsPerMl, facts.solidsGravity)
  let pickUp: PickUp | undefined
  try {
    pickUp = pinPickUp(slop, facts.pinMm, bodyOf(table))
  } catch (error) {
    // Clay that the tile would fill, or a coat thinner than its film: such a scratch says nothing.
    if (!(error instanceof RangeError)) throw error
  }
  pins.set(facts, { board: table.board, pickUp })
  return pickUp
}

/** What clings of this slop, from the slide that was weighed at the bucket's target; nothing without one. */
function clinging(slop: Slop, facts: BucketFacts): Pick<Slop, 'clingsGramsPerCm2'> {
  const { clingsGramsPerCm2: weighed, targetGramsPerMl, solidsGravity } = facts
  if (weighed === undefined) return {}
  const target = nearestSlop(targetGramsPerMl, solidsGravity).gramsPerMl
  return { clingsGramsPerCm2: Math.min(MOST_CLINGS, clingsAt(slop, weighed, target)) }
}

/** The engine takes no heavier film, g/cm2. */
const MOST_CLINGS = 1

/** The slop of a bucket at a density, as the person's own scratch and slide say where there are any. */
export function slopOf(table: Table, { facts }: Pick<BucketState, 'facts'>, gramsPerMl: number): Slop {
  const slop = nearestSlop(gramsPerMl, facts.solidsGravity)
  const pickUp = pickUpOfPin(table, facts)
  return {
    ...slop,
    ...(pickUp ? { pickUpFactor: pickUp.factor, pickUpSd: pickUp.sd } : {}),
    ...clinging(slop, facts),
  }
}
