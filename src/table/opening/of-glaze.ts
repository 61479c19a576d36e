import type { SubjectFacts } from '../../../shared/opening.ts'
import { pairsOn } from '../fired/fired-coats.ts'
import { type FactorTold, factorsOf } from '../fired/lesson.ts'
import { type LimitTold, limitsTold } from '../fired/limits.ts'
import { type Pair, pairOf } from '../fired/pairs.ts'
import { judgedPots } from '../fired/results.ts'
import { coatsOn } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

/** What the fire has shown of a glaze, or of it over another. */
export interface GlazeResults {
  /** How far it runs against what was told; undefined where no result says. */
  readonly factor: FactorTold | undefined
  /** How thick it may be, by the pots on which it crawled; of a pair both together. */
  readonly limit: LimitTold | undefined
  /** What is known of the pair; of a pair alone. */
  readonly pair: Pair | undefined
  /** Pairs with it that were fired or are known of; of a glaze alone. */
  readonly pairs: readonly Pair[]
}

const carries = (pot: PotState, { bucketId, underId }: SubjectFacts): boolean =>
  underId === undefined
    ? coatsOn(pot).some((dip) => dip.bucketId === bucketId)
    : pairsOn(pot).some(({ over, under }) => over === bucketId && under === underId)

/** Judged pots that carry a glaze, or a pair, the latest first. */
export const potsWith = (table: Table, subject: SubjectFacts): readonly PotState[] =>
  judgedPots(table)
    .filter(({ pot }) => carries(pot, subject))
    .map(({ pot }) => pot)
    .toReversed()

/** What came of a glaze, or of a pair, so far; it takes a phone a moment. */
export function resultsWith(table: Table, subject: SubjectFacts): GlazeResults {
  const { bucketId, underId } = subject
  const others = Object.keys(table.buckets).filter((id) => id !== bucketId)
  const pairs =
    underId === undefined
      ? others
          .flatMap((id) => [pairOf(table, bucketId, id), pairOf(table, id, bucketId)])
          .filter(({ is, good, bad }) => is !== 'untried' || good.length + bad.length > 0)
      : []
  return {
    factor: factorsOf(table).find((told) => told.bucketId === bucketId && told.underId === underId),
    limit: limitsTold(table).find((told) => told.bucketId === bucketId && told.underId === underId),
    pair: underId === undefined ? undefined : pairOf(table, bucketId, underId),
    pairs,
  }
}
