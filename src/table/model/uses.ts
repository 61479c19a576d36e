import type { BucketFacts, CoatFacts } from '../../../shared/nouns.ts'
import { coatsOn, planOf, potsOnTable } from './plan.ts'
import type { BucketState, DipState, Table } from './state.ts'

/** What needs a bucket that is to go: the name of a stack, or the number of a pot with its coat on or planned. */
export function needsBucket(table: Table, bucketId: string): string | number | undefined {
  const names = (coats: readonly Pick<CoatFacts, 'bucketId'>[]) =>
    coats.some((coat) => coat.bucketId === bucketId)
  const stack = Object.values(table.stacks).find(({ coats }) => names(coats))
  if (stack) return stack.name
  return potsOnTable(table).find((pot) => names(planOf(table, pot)) || names(coatsOn(pot)))?.facts.number
}

/** The number of a pot that a stack is needed for, if it is. */
export const needsStack = (table: Table, stackId: string): number | undefined =>
  potsOnTable(table).find(({ facts }) => facts.stackId === stackId)?.facts.number

/** A bucket as the fill that a dip went into is known: what was scratched and weighed of later ones says nothing of it. */
export function factsDipped(
  table: Table,
  { bucketId, outAt }: Pick<DipState, 'bucketId' | 'outAt'>,
): BucketFacts | undefined {
  const bucket = bucketOfCoat(table, bucketId)
  return bucket?.past?.find(({ until }) => outAt < until)?.facts ?? bucket?.facts
}

/** A bucket by its id, where coats of it may be on although it was taken off the table. */
export const bucketOfCoat = (table: Table, bucketId: string): BucketState | undefined =>
  table.buckets[bucketId] ?? table.removed?.[bucketId]
