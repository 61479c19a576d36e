import { supersequence } from '../bound/supersequence.ts'
import type { Order } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { emptyOrder, orderByRule, PLAIN_RULE, type Rule } from './by-rule.ts'

/** How people order work without a plan. */
export type Habit = 'coatByCoat' | 'stackByStack' | 'potByPot'

/** Tuned on seeds the tests do not use: few and unlike each other. */
const RULES: readonly Rule[] = [
  PLAIN_RULE,
  { switchWeight: 0, tailWeight: 0, byDry: false },
  { switchWeight: 1, tailWeight: 0.5, byDry: false },
  { switchWeight: 2, tailWeight: 0.05, byDry: false },
  { switchWeight: 2, tailWeight: 0.3, byDry: false },
  { switchWeight: 2, tailWeight: 1, byDry: false },
  { switchWeight: 4, tailWeight: 0.1, byDry: false },
  { switchWeight: 4, tailWeight: 0.5, byDry: false },
  { switchWeight: 8, tailWeight: 0.2, byDry: false },
  { switchWeight: 0.5, tailWeight: 0.3, byDry: false },
]

const DRY_RULES: readonly Rule[] = [
  { switchWeight: 1, tailWeight: 0.3, byDry: true },
  { switchWeight: 2, tailWeight: 1, byDry: true },
  { switchWeight: 4, tailWeight: 0.5, byDry: true },
]

/** Bucket indices of a pot's coats. */
function stackOf(problem: Problem, p: number): number[] {
  const stack: number[] = []
  for (let o = problem.firstOp[p]!; o >= 0; o = problem.next[o]!)
    if (problem.bucket[o]! >= 0) stack.push(problem.bucket[o]!)
  return stack
}

/** Preparation of these pots, round by round, waxing before wiping. */
function preparation(problem: Problem, pots: readonly number[]): number[] {
  const ops: number[] = []
  const longest = Math.max(0, ...pots.map((p) => problem.pots[p]!.prep.length))
  for (let k = longest; k > 0; k--)
    for (const p of pots) {
      const { length } = problem.pots[p]!.prep
      if (length >= k) ops.push(problem.firstOp[p]! + length - k)
    }
  return ops
}

const firstCoat = (problem: Problem, p: number) => problem.firstOp[p]! + problem.pots[p]!.prep.length

/** All first coats bucket by bucket, then all second coats, and so on; longest remaining chain first. */
function byCoat(problem: Problem, pots: readonly number[]): number[] {
  const ops = preparation(problem, pots)
  const deepest = Math.max(...pots.map((p) => problem.pots[p]!.coats.length))
  for (let k = 0; k < deepest; k++) {
    const round = pots.filter((p) => problem.pots[p]!.coats.length > k).map((p) => firstCoat(problem, p) + k)
    ops.push(
      ...round.sort((a, b) => problem.bucket[a]! - problem.bucket[b]! || problem.tail[b]! - problem.tail[a]!),
    )
  }
  return ops
}

/** All of it in the hands that are free first. */
const toOrder = (problem: Problem, ops: readonly number[]): Order => {
  const order = emptyOrder(problem)
  order.ops.set(ops)
  order.potter.fill(problem.freeS.indexOf(Math.min(...problem.freeS)))
  return order
}

/** The order people fall into by a habit. */
export function orderByHabit(problem: Problem, habit: Habit): Order {
  const all = problem.pots.map((_, p) => p)
  if (habit === 'coatByCoat') return toOrder(problem, problem.n === 0 ? [] : byCoat(problem, all))
  if (habit === 'potByPot')
    return toOrder(
      problem,
      all.flatMap((p) => byCoat(problem, [p])),
    )
  const groups = new Map<string, number[]>()
  for (const p of all) {
    const key = stackOf(problem, p).join()
    groups.set(key, [...(groups.get(key) ?? []), p])
  }
  return toOrder(
    problem,
    [...groups.values()].flatMap((pots) => byCoat(problem, pots)),
  )
}

/** Full rounds along a shortest common order of the buckets (R7), longest remaining chain first in each visit. */
function byRounds(problem: Problem): Order {
  const all = problem.pots.map((_, p) => p)
  const stacks = all.map((p) => stackOf(problem, p))
  const { visits } = supersequence(stacks, problem.at[0]!)
  const ops = preparation(problem, all)
  const done = all.map(() => 0)
  let left = problem.dips
  const rounds = [...(problem.at[0]! >= 0 ? [problem.at[0]!] : []), ...visits]
  // Too many stacks for an exact order: go round the buckets until nothing is left.
  for (let k = 0; left > 0; k++) {
    const b = rounds[k] ?? k % problem.buckets.length
    let more = true
    while (more) {
      const layer = all.filter((p) => stacks[p]![done[p]!] === b)
      layer.sort(
        (p, q) =>
          problem.tail[firstCoat(problem, q) + done[q]!]! - problem.tail[firstCoat(problem, p) + done[p]!]!,
      )
      for (const p of layer) ops.push(firstCoat(problem, p) + done[p]!++)
      left -= layer.length
      more = layer.length > 0
    }
  }
  return toOrder(problem, ops)
}

/** Some twenty orders to start from. */
export function starts(problem: Problem): Order[] {
  if (problem.n === 0) return [emptyOrder(problem)]
  const rules = problem.input.deadline ? [...RULES, ...DRY_RULES] : RULES
  const habits: readonly Habit[] = ['coatByCoat', 'stackByStack', 'potByPot']
  return [
    ...rules.map((rule) => orderByRule(problem, rule)),
    byRounds(problem),
    ...habits.map((habit) => orderByHabit(problem, habit)),
  ]
}
