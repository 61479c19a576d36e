import type { TableEvent } from '../../../shared/events.ts'
import type { BucketFacts } from '../../../shared/nouns.ts'
import { atTable } from '../entry/handout.ts'
import { freeLetter, freePattern } from '../entry/offer.ts'
import type { Action, Refusal } from '../model/action.ts'
import type { Table } from '../model/state.ts'
import { bucketRefusal, coatsRefusal } from './decide-setup.ts'
import { type Decision, NOTHING } from './decision.ts'

/** Takes stacks that were handed on, with the buckets that this table lacks: all that is right of them, or nothing. */
export function decideHandout(table: Table, action: Action): Decision {
  if (action.do !== 'take-handout') return NOTHING
  const { stacks, buckets } = atTable(table, action.handout)
  const events: TableEvent[] = []
  let then = table
  for (const facts of buckets) {
    const bucket = besideOthers(then, facts)
    const wrong = bucketRefusal(then, bucket)
    if (wrong) return { refusal: wrong }
    events.push({ kind: 'bucket-set', bucket })
    then = withBucket(then, bucket)
  }
  for (const { stack, is } of stacks) {
    const wrong: Refusal | undefined = coatsRefusal(then, stack.coats)
    if (wrong) return { refusal: wrong }
    if (is !== 'here') events.push({ kind: 'stack-set', stack })
  }
  return events.length > 0 ? { events } : NOTHING
}

/** With a letter and a pattern that no other bucket has, its own where they are free. */
function besideOthers(table: Table, facts: BucketFacts): BucketFacts {
  const others = Object.values(table.buckets).map((bucket) => bucket.facts)
  const letter = others.some((other) => other.letter === facts.letter)
    ? freeLetter(table, facts.name, undefined)
    : facts.letter
  const pattern = others.some((other) => other.pattern === facts.pattern) ? freePattern(table) : facts.pattern
  return { ...facts, letter, pattern }
}

const withBucket = (table: Table, facts: BucketFacts): Table => ({
  ...table,
  buckets: {
    ...table.buckets,
    [facts.bucketId]: { facts, gramsPerMl: facts.targetGramsPerMl, log: [] },
  },
})
