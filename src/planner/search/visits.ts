import type { Order, Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { orderByRule, PLAIN_RULE } from './by-rule.ts'

/** Beginnings kept from one visit to the next, and how long a visit waits for its next pot, s. Tuned. */
const WIDTH = 6
const PATIENCE_S = [0, 300] as const
/** Boards of more steps than these are left to the rules: looking ahead costs their square. Tuned. */
const MOST_OPS = 240
/** So many of the orders made are told, unlike each other. */
const TOLD = 6

interface Weighed {
  readonly order: Order
  readonly value: number
}

/** Puts an order among the best few, unless one comes out like it. */
function tell(best: Weighed[], one: Weighed): void {
  const at = best.findIndex(({ value }) => value >= one.value)
  if (best[at]?.value === one.value) return
  best.splice(at < 0 ? best.length : at, 0, one)
  best.length = Math.min(best.length, TOLD)
}

interface Beginning {
  readonly ops: readonly number[]
  readonly value: number
}

/** Hands and pots after a beginning, freshness aside. */
function after(problem: Problem, ops: readonly number[]) {
  const { bucket, dur, openS, next } = problem
  const at = Int32Array.from(problem.firstOp)
  const ready = Int32Array.from(problem.firstOp, (o) => problem.release[o]!)
  let free = problem.freeS[0]!
  let open = problem.at[0]!
  const go = (o: number) => {
    const p = problem.pot[o]!
    const b = bucket[o]!
    const change = b >= 0 && b !== open ? openS[b]! : 0
    const start = Math.max(ready[p]!, free + change)
    if (b >= 0) open = b
    free = start + dur[o]!
    ready[p] = start + problem.after[o]!
    at[p] = next[o]!
  }
  for (const o of ops) go(o)
  const changeS = (b: number) => (b >= 0 && b !== open ? openS[b]! : 0)
  return { at, ready, go, changeS, freeS: () => free }
}

/** One visit: every pot that wants this bucket, the longest chain first, and those that come within `patienceS`. */
function visit(problem: Problem, ops: readonly number[], b: number, patienceS: number): number[] {
  const state = after(problem, ops)
  const line: number[] = []
  for (;;) {
    const free = state.freeS() + state.changeS(b)
    let chosen = -1
    let soonest = free + patienceS
    for (let p = 0; p < state.at.length; p++) {
      const o = state.at[p]!
      if (o < 0 || problem.bucket[o] !== b) continue
      const ready = Math.max(free, state.ready[p]!)
      if (line.length > 0 && ready > soonest) continue
      if (chosen >= 0 && ready === soonest && problem.tail[o]! <= problem.tail[chosen]!) continue
      if (chosen >= 0 && ready > soonest) continue
      chosen = o
      soonest = ready
    }
    if (chosen < 0) return line
    state.go(chosen)
    line.push(chosen)
  }
}

/**
 * An order made visit by visit: each beginning is tried with every bucket next, its rest filled in by the plain rule
 * and timed, and the best few go on. The pilot method: C. Duin, S. Voss, "The pilot method", Networks 34 (1999) 181.
 * One pair of hands.
 * @returns the orders that came out best, the best first; none where the board has more than `most` steps.
 */
export function ordersByVisits(problem: Problem, timer: Timer, most: number = MOST_OPS): Order[] {
  if (problem.potterCount > 1 || problem.n === 0 || problem.n > most) return []
  const buckets = [...new Set(problem.bucket)]
  let beginnings: readonly Beginning[] = [{ ops: [], value: Number.POSITIVE_INFINITY }]
  const best: Weighed[] = []
  while (beginnings.length > 0) {
    const following = new Map<string, Beginning>()
    for (const { ops } of beginnings)
      for (const b of buckets)
        for (const patienceS of PATIENCE_S) {
          const line = visit(problem, ops, b, patienceS)
          if (line.length === 0) continue
          const longer = [...ops, ...line]
          const key = longer.join()
          if (following.has(key)) continue
          const order = orderByRule(problem, PLAIN_RULE, longer)
          const value = timer.run(order, Number.POSITIVE_INFINITY)
          tell(best, { order, value })
          if (longer.length < problem.n) following.set(key, { ops: longer, value })
        }
    beginnings = [...following.values()].sort((a, b) => a.value - b.value).slice(0, WIDTH)
  }
  return best.map(({ order }) => order)
}
