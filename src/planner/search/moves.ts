import { AUTO, HOLD, type Order, STIR } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import type { Random } from './random.ts'
import { makeRuns, relocate } from './runs.ts'

/** Changes `order` in place in one random way; false when this try came to nothing. */
export type Move = (order: Order) => boolean

/** Shares of the moves, parts of the sum. Tuned. */
const SHARES = {
  next: 30,
  shift: 20,
  swap: 15,
  pot: 8,
  visit: 10,
  split: 8,
  sort: 5,
  wish: 10,
  potter: 20,
} as const

/** Small changes of an order, drawn by `random`, none of which breaks a pot's own sequence. */
export function makeMove(problem: Problem, random: Random): Move {
  const { n, bucket, pot, release, next, potterCount } = problem
  const at = new Int32Array(n)
  const { from: runFrom, to: runTo, moveBlock } = makeRuns(problem)

  const find = (ops: Int32Array, o: number): number => ops.indexOf(o)
  /** Positions an op may take without passing its pot's neighbours. */
  const lowest = (ops: Int32Array, o: number) => (release[o]! >= 0 ? 0 : find(ops, o - 1) + 1)
  const highest = (ops: Int32Array, o: number) => (next[o]! < 0 ? n - 1 : find(ops, o + 1) - 1)

  /** Next to another op of the same bucket. */
  const besideSame: Move = ({ ops, potter }) => {
    const p = random.int(n)
    const o = ops[p]!
    const low = lowest(ops, o)
    const high = highest(ops, o)
    if (low === high) return false
    const begin = low + random.int(high - low + 1)
    for (let k = 0; k <= high - low; k++) {
      const q = low + ((begin - low + k) % (high - low + 1))
      if (q === p || bucket[ops[q]!] !== bucket[o]) continue
      const to = q > p ? (random.int(2) ? q : q - 1) : random.int(2) ? q : q + 1
      if (to === p) continue
      potter[o] = potter[ops[q]!]!
      relocate(ops, p, to)
      return true
    }
    return false
  }

  const shift: Move = ({ ops }) => {
    const p = random.int(n)
    const o = ops[p]!
    let low = lowest(ops, o)
    let high = highest(ops, o)
    if (random.int(2)) {
      low = Math.max(low, p - 6)
      high = Math.min(high, p + 6)
    }
    const to = low + random.int(high - low + 1)
    if (to === p) return false
    relocate(ops, p, to)
    return true
  }

  /** Two ops of the same bucket change places. */
  const swap: Move = ({ ops }) => {
    const p = random.int(n)
    const begin = random.int(n)
    for (let k = 0; k < n; k++) {
      const q = (begin + k) % n
      const a = ops[p]!
      const b = ops[q]!
      if (bucket[a] !== bucket[b] || pot[a] === pot[b]) continue
      if (q < lowest(ops, a) || q > highest(ops, a) || p < lowest(ops, b) || p > highest(ops, b)) continue
      ops[p] = b
      ops[q] = a
      return true
    }
    return false
  }

  /** Takes a whole pot out and puts each op back beside its bucket, going forward. */
  const replantPot: Move = ({ ops }) => {
    const p = pot[ops[random.int(n)]!]!
    let low = 0
    for (let o = problem.firstOp[p]!; o >= 0; o = next[o]!) {
      const from = find(ops, o)
      const high = n - 1
      const begin = low + random.int(high - low + 1)
      let to = begin
      for (let k = 0; k < high - low; k++) {
        const q = low + ((begin - low + k) % (high - low + 1))
        if (bucket[ops[q]!] === bucket[o] && pot[ops[q]!] !== p) {
          to = q
          break
        }
      }
      to = Math.max(low, Math.min(to, high))
      relocate(ops, from, to)
      low = Math.min(to + 1, n - 1)
    }
    return true
  }

  /** A visit goes before or after a neighbouring one, or joins the next visit of its bucket. */
  const moveVisit: Move = (order) => {
    const { ops } = order
    const p = random.int(n)
    const from = runFrom(order, p)
    const to = runTo(order, p)
    if (random.int(2)) {
      if (to + 1 >= n) return false
      return moveBlock(ops, from, to, from + runTo(order, to + 1) - to)
    }
    for (let q = to + 1; q < n; q++)
      if (bucket[ops[q]!] === bucket[ops[p]!]) return moveBlock(ops, from, to, q - (to - from + 1))
    return false
  }

  /** The tail of a visit goes behind a later run, or its head before an earlier one. */
  const split: Move = (order) => {
    const { ops } = order
    const p = random.int(n)
    if (random.int(2)) {
      const to = runTo(order, p)
      if (to + 1 >= n) return false
      let end = runTo(order, to + 1)
      for (let k = random.int(3); k > 0 && end + 1 < n; k--) end = runTo(order, end + 1)
      return moveBlock(ops, p, to, end - (to - p))
    }
    const from = runFrom(order, p)
    if (from === 0) return false
    let begin = runFrom(order, from - 1)
    for (let k = random.int(3); k > 0 && begin > 0; k--) begin = runFrom(order, begin - 1)
    return moveBlock(ops, from, p, begin)
  }

  /** Longest remaining chain first inside a visit. */
  const sort: Move = (order) => {
    const p = random.int(n)
    const chain = random.int(2) ? problem.tail : problem.dryTail
    const run = order.ops.subarray(runFrom(order, p), runTo(order, p) + 1)
    if (run.length < 2) return false
    run.sort((a, b) => chain[b]! - chain[a]! || a - b)
    return true
  }

  const wish: Move = (order) => {
    const o = order.ops[random.int(n)]!
    const now = order.wish[o]!
    order.wish[o] =
      now !== AUTO && random.int(2)
        ? AUTO
        : now === STIR
          ? HOLD
          : now === HOLD
            ? STIR
            : random.int(2)
              ? STIR
              : HOLD
    return true
  }

  const changePotter: Move = (order) => {
    const p = random.int(n)
    const whole = random.int(2)
    const from = whole ? runFrom(order, p) : p
    const to = whole ? runTo(order, p) : p
    for (let q = from; q <= to; q++) at[q - from] = order.ops[q]!
    const potter = 1 - order.potter[order.ops[p]!]!
    for (let k = 0; k <= to - from; k++) order.potter[at[k]!] = potter
    return true
  }

  const table: [number, Move][] = [
    [SHARES.next, besideSame],
    [SHARES.shift, shift],
    [SHARES.swap, swap],
    [SHARES.pot, replantPot],
    [SHARES.visit, moveVisit],
    [SHARES.split, split],
    [SHARES.sort, sort],
    [SHARES.wish, wish],
  ]
  if (potterCount > 1) table.push([SHARES.potter, changePotter])
  const wheel = table.flatMap(([share, move]) => Array.from({ length: share }, () => move))
  return (order) => wheel[random.int(wheel.length)]!(order)
}
