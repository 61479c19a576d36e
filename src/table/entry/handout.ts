import type {
  BucketFacts,
  ClassPlan,
  CoatFacts,
  Handout,
  PotFacts,
  StackFacts,
} from '../../../shared/nouns.ts'
import { isBegun, potsOnTable } from '../model/plan.ts'
import { isSame } from '../model/same.ts'
import type { PotState, Table } from '../model/state.ts'
import { reachMm } from './cover.ts'

/** The stack, or all of them, with the buckets they are dipped in. */
export function handoutOf(table: Table, stackId?: string): Handout {
  const stacks = Object.values(table.stacks).filter(
    (stack) => stackId === undefined || stack.stackId === stackId,
  )
  return { stacks, buckets: bucketsOf(table, stacks) }
}

const bucketsOf = (
  table: Table,
  plans: readonly { readonly coats: readonly CoatFacts[] }[],
): readonly BucketFacts[] => {
  const wanted = new Set(plans.flatMap(({ coats }) => coats.map(({ bucketId }) => bucketId)))
  return Object.values(table.buckets).flatMap(({ facts }) => (wanted.has(facts.bucketId) ? [facts] : []))
}

/** The class: every pot on the table without a coat, a lid with its jar, and all that they are to be dipped in. */
export function classOf(table: Table): Handout {
  const bare = potsOnTable(table).filter((pot) => !isBegun(pot))
  // A lid does not go without its jar.
  const pots = bare.filter(
    ({ facts: { lidOf } }) => lidOf === undefined || bare.some(({ facts }) => facts.potId === lidOf),
  )
  const plans = pots.flatMap(({ facts: { potId }, ownPlan }) => (ownPlan ? [{ potId, coats: ownPlan }] : []))
  const stacks = Object.values(table.stacks)
  return {
    stacks,
    buckets: bucketsOf(table, [...stacks, ...plans]),
    class: { board: table.board, pots: pots.map(({ facts }) => facts), plans },
  }
}

/** Whose a pot is, a lid being its jar's. */
export const whoseOf = (pots: readonly PotFacts[], { whose, lidOf }: PotFacts): string | undefined =>
  lidOf === undefined ? whose : (pots.find(({ potId }) => potId === lidOf)?.whose ?? whose)

/** Names of those whose pots these are, as a list of names is sorted. */
export const namesIn = (pots: readonly PotFacts[]): readonly string[] =>
  [...new Set(pots.flatMap(({ whose }) => (whose === undefined ? [] : [whose])))].sort((a, b) =>
    a.localeCompare(b),
  )

/** Those of them that are a person's. */
export const potsOf = (pots: readonly PotFacts[], name: string): readonly PotFacts[] =>
  pots.filter((pot) => whoseOf(pots, pot) === name)

/** A class as one person takes it: the stacks and buckets, and the pots that are theirs. */
export function forOne(handout: Handout, name: string): Handout {
  if (!handout.class) return handout
  const pots = potsOf(handout.class.pots, name)
  const plans = handout.class.plans.filter((plan) => pots.some(({ potId }) => potId === plan.potId))
  return { ...handout, class: { ...handout.class, pots, plans } }
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
  /**
   * Of a class what is not here so, in this table's stacks and buckets; a pot that left the table, or was set or changed by
   * this phone itself, is not asked for.
   */
  readonly pots: readonly PotFacts[]
  readonly plans: ClassPlan['plans']
  /** What the pots share, where it is another thing here and no pot stands on the table. */
  readonly board: ClassPlan['board'] | undefined
  /** Otherwise in the plan, and set or changed by this phone itself: it stays as it is. */
  readonly kept: readonly PotFacts[]
  /** Taken by this person, and by now somebody else's: off this bench, unless something was done to it here. */
  readonly away: readonly PotState[]
}

/** A glaze or stack of the same name is the same, whoever named it. */
const named = (name: string): string => name.trim().toLocaleLowerCase()

/**
 * What of a handout is new here, of a class to the person of that name. A bucket that stands here stays as it is: its glaze
 * was read and filled at this table.
 */
export function atTable(table: Table, whole: Handout, name?: string): AtTable {
  const handout = name === undefined ? whole : forOne(whole, name)
  // What goes by its own id in the handout is nothing else's namesake.
  const given = new Set([
    ...handout.buckets.map(({ bucketId }) => bucketId),
    ...handout.stacks.map(({ stackId }) => stackId),
  ])
  const own = Object.values(table.buckets).flatMap(({ facts }) => (given.has(facts.bucketId) ? [] : [facts]))
  const here = new Map(
    handout.buckets.map(({ bucketId, name }) => [
      bucketId,
      table.buckets[bucketId]?.facts ?? own.find((facts) => named(facts.name) === named(name)),
    ]),
  )
  const dippedHere = (coats: readonly CoatFacts[]) =>
    coats.map((coat) => ({ ...coat, bucketId: here.get(coat.bucketId)?.bucketId ?? coat.bucketId }))
  const stacks = handout.stacks.map((stack) => {
    const before =
      table.stacks[stack.stackId] ??
      Object.values(table.stacks).find(
        ({ stackId, name }) => !given.has(stackId) && named(name) === named(stack.name),
      )
    const so = { ...stack, stackId: before?.stackId ?? stack.stackId, coats: dippedHere(stack.coats) }
    const is = !before ? 'new' : sameCoats(before, so) ? 'here' : 'other'
    return { stack: so, is } as const
  })
  const stackHere = new Map(handout.stacks.map(({ stackId }, i) => [stackId, stacks[i]?.stack.stackId]))
  const { board, pots = [], plans = [] } = handout.class ?? {}
  const isChanged = ({ potId }: { readonly potId: string }) => table.pots[potId]?.planned === 'changed'
  const others = pots
    .map((facts) => ({ ...facts, stackId: stackHere.get(facts.stackId) ?? facts.stackId }))
    .filter((facts) => {
      const before = table.pots[facts.potId]
      if (before?.gone) return before.planned === 'away'
      return !before || !isSame(before.facts, facts)
    })
  return {
    stacks,
    buckets: handout.buckets.filter(({ bucketId }) => !here.get(bucketId)),
    pots: others.filter((facts) => !isChanged(facts)),
    kept: others.filter(isChanged),
    away: name === undefined ? [] : awayFrom(table, whole.class?.pots ?? [], name),
    plans: plans
      .map(({ potId, coats }) => ({ potId, coats: dippedHere(coats) }))
      .filter((plan) => !isChanged(plan) && !isSame(table.pots[plan.potId]?.ownPlan, plan.coats)),
    board: potsOnTable(table).length > 0 || isSame(board, table.board) ? undefined : board,
  }
}

/** Pots taken as this person's that a plan has as somebody else's, and that nothing was done to here. */
function awayFrom(table: Table, planned: readonly PotFacts[], name: string): readonly PotState[] {
  const here = potsOnTable(table)
  const facts = here.map((pot) => pot.facts)
  const theirs = new Set(planned.filter((pot) => whoseOf(planned, pot) !== name).map(({ potId }) => potId))
  return here.filter(
    (pot) =>
      pot.planned === 'so' &&
      theirs.has(pot.facts.potId) &&
      whoseOf(facts, pot.facts) === name &&
      !isBegun(pot) &&
      pot.waxedAt === undefined &&
      pot.wipedAt === undefined,
  )
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
