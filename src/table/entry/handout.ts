import type { BucketFacts, Handout, StackFacts } from '../../../shared/nouns.ts'
import type { Table } from '../model/state.ts'
import { reachMm } from './cover.ts'

/** The stack, or all of them, with the buckets they are dipped in. */
export function handoutOf(table: Table, stackId?: string): Handout {
  const stacks = Object.values(table.stacks).filter(
    (stack) => stackId === undefined || stack.stackId === stackId,
  )
  const wanted = new Set(stacks.flatMap(({ coats }) => coats.map(({ bucketId }) => bucketId)))
  const buckets = Object.values(table.buckets).flatMap(({ facts }) =>
    wanted.has(facts.bucketId) ? [facts] : [],
  )
  return { stacks, buckets }
}

/** What a handout means at this table. */
export interface AtTable {
  readonly stacks: readonly {
    /** Dipped in the buckets of this table where it has them. */
    readonly stack: StackFacts
    /** It stands here already, stands here with other coats, or is new. */
    readonly is: 'here' | 'other' | 'new'
  }[]
  /** Those that this table lacks. */
  readonly buckets: readonly BucketFacts[]
}

/** A glaze or stack of the same name is the same, whoever named it. */
const named = (name: string): string => name.trim().toLocaleLowerCase()

/**
 * What of a handout is new here. A bucket that stands here stays as it is: its glaze was read and filled at this table.
 */
export function atTable(table: Table, handout: Handout): AtTable {
  const own = Object.values(table.buckets).map(({ facts }) => facts)
  const here = new Map(
    handout.buckets.map(({ bucketId, name }) => [
      bucketId,
      table.buckets[bucketId]?.facts ?? own.find((facts) => named(facts.name) === named(name)),
    ]),
  )
  const stacks = handout.stacks.map((stack) => {
    const before =
      table.stacks[stack.stackId] ??
      Object.values(table.stacks).find(({ name }) => named(name) === named(stack.name))
    const coats = stack.coats.map((coat) => ({
      ...coat,
      bucketId: here.get(coat.bucketId)?.bucketId ?? coat.bucketId,
    }))
    const so = { ...stack, stackId: before?.stackId ?? stack.stackId, coats }
    const is = !before ? 'new' : sameCoats(before, so) ? 'here' : 'other'
    return { stack: so, is } as const
  })
  return { stacks, buckets: handout.buckets.filter(({ bucketId }) => !here.get(bucketId)) }
}

const sameCoats = (a: StackFacts, b: StackFacts): boolean =>
  a.coats.length === b.coats.length &&
  a.coats.every((coat, i) => {
    const other = b.coats[i]
    return (
      coat.bucketId === other?.bucketId &&
      coat.holdS === other.holdS &&
      coat.cover.kind === other.cover.kind &&
      reachMm(coat.cover) === reachMm(other.cover)
    )
  })
