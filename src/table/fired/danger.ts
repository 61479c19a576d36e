import { pairsOf } from '../../engine/melt/coats.ts'
import { zonesAtEnd } from '../forecast/hypothetical-dip.ts'
import { planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { answeredOf } from './answers.ts'
import { type FactorTold, factorsOf } from './lesson.ts'
import { judgedPots, onShelf, type PotResult } from './results.ts'

/** Something that speaks against a glaze, or a pair, that a pot is to carry. */
export interface Danger {
  readonly told: FactorTold
  /** A hand kept what less is reckoned with: it is said all the same, and asks nothing. */
  readonly kept: boolean
  /**
   * More runs than is reckoned with; a drip came farther; a pot reached the shelf, whatever the others say; or what less was reckoned with from
   * counts no more.
   */
  readonly why: 'more' | 'drip' | 'shelf' | 'gone'
  /** The worst of the results that say so: on the shelf, then past the foot line, then the farthest. */
  readonly worst: PotResult | undefined
}

const rank = ({ found, seen, pastFoot }: PotResult): number =>
  onShelf(found.run) ? 1e6 : (pastFoot ? 1e3 : 0) + (seen?.kind === 'measured' ? seen.mm : 0)

const worstOf = (results: readonly PotResult[]): PotResult | undefined =>
  results.toSorted((a, b) => rank(b) - rank(a))[0]

/** Dangers that nobody answered, and those that were not taken: shown at once, whatever is asked. */
export const dangersOf = (table: Table): readonly Danger[] =>
  factorsOf(table).flatMap((told): Danger[] => {
    const { asks, leads, more, dripped, shelved, against, drips } = told
    const danger = (why: Danger['why'], worst: readonly PotResult[], kept = false): Danger[] => [
      { told, kept, why, worst: worstOf(worst) },
    ]
    if (asks && more.length > 0) return danger('more', more)
    if (asks && dripped.length > 0) return danger('drip', dripped)
    if (asks && shelved.length > 0) return danger('shelf', shelved)
    if (asks && leads === 'danger') return danger('gone', [])
    if (against.length > 0) return danger('more', against, true)
    return drips.length > 0 ? danger('drip', drips, true) : []
  })

/** What would run less than is reckoned with: it waits for a hand that takes it. */
export const reliefsOf = (table: Table): readonly FactorTold[] =>
  factorsOf(table).filter(({ leads, asks, scratchFirst }) => leads === 'relief' && asks && !scratchFirst)

/** Whether anything can speak against this glaze: before that nothing needs to be computed, and a card waits for this. */
const mayRun = (table: Table, bucketId: string): boolean =>
  lessonTaken(table, bucketId) ||
  judgedPots(table).some(
    ({ pot, found }) =>
      found.run !== undefined && found.run.is !== 'none' && pot.dips.some((dip) => dip.bucketId === bucketId),
  )

const lessonTaken = (table: Table, bucketId: string): boolean =>
  answeredOf(table, 'lesson-taken').some((one) => one.bucketId === bucketId)

/** Dangers of a coat that a pot is about to get, or of what its whole plan comes to: for its armed card. */
export function dangersFor(table: Table, pot: PotState, bucketId: string): readonly Danger[] {
  if (!mayRun(table, bucketId)) return []
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
