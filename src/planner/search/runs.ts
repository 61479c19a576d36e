import type { Order } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'

/** Takes the op at `from` out and puts it where `to` is. */
export function relocate(ops: Int32Array, from: number, to: number): void {
  const o = ops[from]!
  if (from < to) ops.copyWithin(from, from + 1, to + 1)
  else ops.copyWithin(to + 1, to, from)
  ops[to] = o
}

/** Runs of one bucket and one pair of hands in an order, by the position of one of their ops. */
export interface Runs {
  readonly from: (order: Order, p: number) => number
  readonly to: (order: Order, p: number) => number
  /** Moves positions from..to as one block so that it starts at `target` of what is left; false when it can't. */
  readonly moveBlock: (ops: Int32Array, from: number, to: number, target: number) => boolean
}

/** The stretches of an order that are dipped from one bucket without another between, kept for one board. */
export function makeRuns({ n, bucket }: Problem): Runs {
  const held = new Int32Array(n)
  const alike = ({ ops, potter }: Order, p: number, q: number) =>
    bucket[ops[p]!] === bucket[ops[q]!] && potter[ops[p]!] === potter[ops[q]!]
  return {
    from(order, p) {
      let from = p
      while (from > 0 && alike(order, from - 1, p)) from--
      return from
    },
    to(order, p) {
      let to = p
      while (to < n - 1 && alike(order, to + 1, p)) to++
      return to
    },
    moveBlock(ops, from, to, target) {
      const size = to - from + 1
      if (target === from || target < 0 || target > n - size) return false
      held.set(ops.subarray(from, to + 1))
      if (target < from) ops.copyWithin(target + size, target, from)
      else ops.copyWithin(from, to + 1, target + size)
      ops.set(held.subarray(0, size), target)
      return true
    },
  }
}
