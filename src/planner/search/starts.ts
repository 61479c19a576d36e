import { supersequence } from '../bound/supersequence.ts'
import type { Order } from '../problem/order.ts'
import type { Board } from '../problem/problem.ts'
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
function stackOf(board: Board, p: number): number[] {
  const stack: number[] = []
  for (let o = board.firstOp[p]!; o >= 0; o = board.next[o]!)
    if (board.bucket[o]! >= 0) stack.push(board.bucket[o]!)
  return stack
}

/** Preparation of these pots, round by round, waxing before wiping. */
function preparation(board: Board, pots: readonly number[]): number[] {
  const ops: number[] = []
  const longest = Math.max(0, ...pots.map((p) => board.pots[p]!.prep.length))
  for (let k = longest; k > 0; k--)
    for (const p of pots) {
      const { length } = board.pots[p]!.prep
      if (length >= k) ops.push(board.firstOp[p]! + length - k)
    }
  return ops
}

const firstCoat = (board: Board, p: number) => board.firstOp[p]! + board.pots[p]!.prep.length

/** All first coats bucket by bucket, then all second coats, and so on; longest remaining chain first. */
function byCoat(board: Board, pots: readonly number[]): number[] {
  const ops = preparation(board, pots)
  const deepest = Math.max(...pots.map((p) => board.pots[p]!.coats.length))
  for (let k = 0; k < deepest; k++) {
    const round = pots.filter((p) => board.pots[p]!.coats.length > k).map((p) => firstCoat(board, p) + k)
    ops.push(...round.sort((a, b) => board.bucket[a]! - board.bucket[b]! || board.tail[b]! - board.tail[a]!))
  }
  return ops
}

/** All of it in the hands that are free first. */
const toOrder = (board: Board, ops: readonly number[]): Order => {
  const order = emptyOrder(board)
  order.ops.set(ops)
  order.lane.fill(board.freeS.indexOf(Math.min(...board.freeS)))
  return order
}

/** The order people fall into by a habit. */
export function orderByHabit(board: Board, habit: Habit): Order {
  const all = board.pots.map((_, p) => p)
  if (habit === 'coatByCoat') return toOrder(board, board.n === 0 ? [] : byCoat(board, all))
  if (habit === 'potByPot')
    return toOrder(
      board,
      all.flatMap((p) => byCoat(board, [p])),
    )
  const groups = new Map<string, number[]>()
  for (const p of all) {
    const key = stackOf(board, p).join()
    groups.set(key, [...(groups.get(key) ?? []), p])
  }
  return toOrder(
    board,
    [...groups.values()].flatMap((pots) => byCoat(board, pots)),
  )
}

/** Full rounds along a shortest common order of the buckets (R7), longest remaining chain first in each visit. */
function byRounds(board: Board): Order {
  const all = board.pots.map((_, p) => p)
  const stacks = all.map((p) => stackOf(board, p))
  const { visits } = supersequence(stacks, board.at[0]!)
  const ops = preparation(board, all)
  const done = all.map(() => 0)
  let left = board.dips
  const rounds = [...(board.at[0]! >= 0 ? [board.at[0]!] : []), ...visits]
  // Too many stacks for an exact order: go round the buckets until nothing is left.
  for (let k = 0; left > 0; k++) {
    const b = rounds[k] ?? k % board.buckets.length
    let more = true
    while (more) {
      const layer = all.filter((p) => stacks[p]![done[p]!] === b)
      layer.sort(
        (p, q) => board.tail[firstCoat(board, q) + done[q]!]! - board.tail[firstCoat(board, p) + done[p]!]!,
      )
      for (const p of layer) ops.push(firstCoat(board, p) + done[p]!++)
      left -= layer.length
      more = layer.length > 0
    }
  }
  return toOrder(board, ops)
}

/** Some twenty orders to start from. */
export function starts(board: Board): Order[] {
  if (board.n === 0) return [emptyOrder(board)]
  const rules = board.input.deadline ? [...RULES, ...DRY_RULES] : RULES
  const habits: readonly Habit[] = ['coatByCoat', 'stackByStack', 'potByPot']
  return [
    ...rules.map((rule) => orderByRule(board, rule)),
    byRounds(board),
    ...habits.map((habit) => orderByHabit(board, habit)),
  ]
}
