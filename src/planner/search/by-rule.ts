import { AUTO, type Order } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'

/** What a change of bucket and a long remaining chain weigh against an earlier start; plain numbers. */
export interface Rule {
  readonly switchWeight: number
  readonly tailWeight: number
  /** Remaining time up to kiln-dry rather than up to the last dip. */
  readonly byDry: boolean
}

/** Open bucket first, longest remaining chain first. */
export const PLAIN_RULE: Rule = { switchWeight: 1, tailWeight: 0.1, byDry: false }

/** An order with room for every dip of the problem, nobody's hands nor moment chosen. */
export const emptyOrder = (problem: Problem): Order => ({
  ops: new Int32Array(problem.n),
  potter: new Uint8Array(problem.n),
  wish: new Uint8Array(problem.n).fill(AUTO),
})

/**
 * Builds an order step by step: of all pots' next steps the one with the least
 * (earliest start + weighted change of bucket - weighted remaining chain) goes next, in the potter where it scores
 * best. With one pair of hands everything is in potter 0. `begun`: ops that go first, as given.
 */
export function orderByRule(problem: Problem, rule: Rule, begun: readonly number[] = []): Order {
  const order = emptyOrder(problem)
  const { potterCount, bucket, dur, after, next } = problem
  const chain = rule.byDry ? problem.dryTail : problem.tail
  const at = problem.pots.map((_, p) => problem.firstOp[p]!)
  const ready = at.map((o) => problem.release[o]!)
  const free = Int32Array.from(problem.freeS)
  const open = Int32Array.from(problem.at)
  const busy = new Int32Array(problem.buckets.length)
  const live = problem.pots.map((_, p) => p)
  for (let k = 0; k < problem.n; k++) {
    let best = Number.POSITIVE_INFINITY
    let bestSlot = 0
    let bestPotter = 0
    let bestStart = 0
    const given = begun[k]
    for (let slot = 0; slot < live.length; slot++) {
      const p = live[slot]!
      const o = at[p]!
      if (given !== undefined && o !== given) continue
      const b = bucket[o]!
      for (let l = 0; l < potterCount; l++) {
        const change = b >= 0 && open[l] !== b ? problem.openS[b]! : 0
        const elsewhere = b >= 0 && potterCount === 2 && open[1 - l] === b
        const begin = Math.max(ready[p]!, free[l]! + change, b >= 0 ? busy[b]! + change : 0)
        const score =
          begin + rule.switchWeight * (elsewhere ? 2 * change : change) - rule.tailWeight * chain[o]!
        if (score >= best) continue
        best = score
        bestSlot = slot
        bestPotter = l
        bestStart = begin
      }
    }
    const p = live[bestSlot]!
    const o = at[p]!
    order.ops[k] = o
    order.potter[o] = bestPotter
    free[bestPotter] = bestStart + dur[o]!
    if (bucket[o]! >= 0) {
      open[bestPotter] = bucket[o]!
      if (potterCount === 2) {
        if (open[1 - bestPotter] === bucket[o]) open[1 - bestPotter] = -1
        busy[bucket[o]!] = bestStart + dur[o]!
      }
    }
    ready[p] = bestStart + after[o]!
    at[p] = next[o]!
    if (next[o]! < 0) live.splice(bestSlot, 1)
  }
  return order
}
