import { pairsOf } from '../../engine/melt/coats.ts'
import { zonesAtEnd } from '../forecast/hypothetical-dip.ts'
import { planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { type FactorTold, factorsOf } from './lesson.ts'
import { judgedPots, type PotResult } from './results.ts'

/** A result that says that more runs than is reckoned with, of a glaze or pair that a pot is to carry. */
export interface Danger {
  readonly told: FactorTold
  /** The worst of the results behind it: on the shelf, then past the foot line, then the farthest. */
  readonly worst: PotResult
}

const rank = ({ seen, pastFoot }: PotResult): number =>
  seen?.kind === 'shelf' ? 1e6 : (pastFoot ? 1e3 : 0) + (seen?.kind === 'measured' ? seen.mm : 0)

/** Dangers that nobody answered: shown at once, whatever is asked. */
export const dangersOf = (table: Table): readonly Danger[] =>
  factorsOf(table).flatMap((told): Danger[] => {
    const worst = told.results.toSorted((a, b) => rank(b) - rank(a))[0]
    return told.leads === 'danger' && !told.answered && worst ? [{ told, worst }] : []
  })

/** What would run less than is reckoned with: it waits for a hand that takes it. */
export const reliefsOf = (table: Table): readonly FactorTold[] =>
  factorsOf(table).filter(
    ({ leads, answered, scratchFirst }) => leads === 'relief' && !answered && !scratchFirst,
  )

/** Whether any pot with this glaze ran at all: before that nothing needs to be computed, and a card waits for this. */
const ranWith = (table: Table, bucketId: string): boolean =>
  judgedPots(table).some(
    ({ pot, found }) =>
      found.run !== undefined && found.run.is !== 'none' && pot.dips.some((dip) => dip.bucketId === bucketId),
  )

/** Dangers of a coat that a pot is about to get, or of what its whole plan comes to: for its armed card. */
export function dangersFor(table: Table, pot: PotState, bucketId: string): readonly Danger[] {
  if (!ranWith(table, bucketId)) return []
  const all = dangersOf(table).filter(({ told }) => told.bucketId === bucketId)
  if (all.length === 0) return []
  const lone = all.filter(({ told }) => told.underId === undefined)
  if (lone.length === all.length)
    return planOf(table, pot).some((coat) => coat.bucketId === bucketId) ? lone : []
  const zones = zonesAtEnd(table, pot) ?? []
  const coats = zones.flatMap(({ face, fromMm, toMm, coats: on }) =>
    on.map(({ dipId, glazeId, likelyMm, upperMm }) => ({
      dipId,
      glazeId,
      face,
      fromMm,
      toMm,
      likelyMm,
      upperMm,
      dose: null,
    })),
  )
  const pairs = pairsOf(coats)
  return all.filter(
    ({ told }) =>
      told.underId === undefined ||
      pairs.some(({ over, under }) => over === told.bucketId && under === told.underId),
  )
}
