import type { TableEvent } from '../../../shared/events.ts'
import type { BucketFacts } from '../../../shared/nouns.ts'
import { atTable } from '../entry/handout.ts'
import { freeLetter, freePattern } from '../entry/offer.ts'
import { happened } from '../fold/reduce.ts'
import type { Action, Refusal } from '../model/action.ts'
import type { Table } from '../model/state.ts'
import { potRefusal } from './decide-pots.ts'
import { bucketRefusal, coatsRefusal } from './decide-setup.ts'
import { type Decision, type HitStamp, NOTHING } from './decision.ts'

/** Taken as it was handed on: what is new here, and what stood here otherwise. */
const NEW = { handed: true } as const
const ANEW = { anew: true } as const

/**
 * Takes what was handed on: stacks, the buckets that this table lacks, and the pots of a class. All that is right of it, or
 * nothing. It is no word of this phone's own, but of a stack that stands here otherwise and is of no class, went by another id
 * here, or was said here otherwise. A number or place that another pot has is no fault of it: that is asked about.
 */
export function decideHandout(table: Table, action: Action, stamp: HitStamp): Decision {
  if (action.do !== 'take-handout') return NOTHING
  const { stacks, buckets, pots, plans, board, away } = atTable(table, action.handout, action.name)
  const given = new Set(action.handout.stacks.map(({ stackId }) => stackId))
  const events: TableEvent[] = []
  let then = table
  const take = (event: TableEvent) => {
    events.push(event)
    then = happened(then, { ...stamp, id: stamp.hit, event })
  }
  for (const facts of buckets) {
    const bucket = besideOthers(then, facts)
    const wrong = bucketRefusal(then, bucket)
    if (wrong) return { refusal: wrong }
    take({ kind: 'bucket-set', bucket, ...NEW })
  }
  for (const { stack, is } of stacks) {
    const wrong: Refusal | undefined = coatsRefusal(then, stack.coats)
    if (wrong) return { refusal: wrong }
    const { stackId } = stack
    const isOfClass =
      action.handout.class && table.stacks[stackId] && given.has(stackId) && !table.ownStacks?.has(stackId)
    if (is !== 'here') take({ kind: 'stack-set', stack, ...(is === 'new' ? NEW : isOfClass ? ANEW : {}) })
  }
  if (board) take({ kind: 'board-set', board, ...NEW })
  for (const pot of pots) {
    const wrong = potRefusal(then, { do: 'set-pot', pot })
    if (wrong) return { refusal: wrong }
    take({ kind: 'pot-set', pot, ...(table.pots[pot.potId] ? ANEW : NEW) })
  }
  for (const { potId, coats } of plans) {
    if (then.pots[potId]?.gone !== false) continue
    const wrong = coatsRefusal(then, coats)
    if (wrong) return { refusal: wrong }
    take({ kind: 'plan-changed', potId, coats, ...(table.pots[potId] ? ANEW : NEW) })
  }
  for (const { facts } of away) take({ kind: 'pot-gone', potId: facts.potId, ...NEW })
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
