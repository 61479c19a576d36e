import { AUTO, type Order, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { relocate } from '../search/runs.ts'
import { copyOrder, type Found, versus } from '../search/search.ts'

/**
 * Seconds. A dip that could go less than this sooner stays where it was told: keeping it may save a stir. Steps that begin sooner
 * by so much, taken together, are worth another order; by as much again, each further stir. Our choice.
 */
export const WORTH_S = 3600

const sumOf = (start: Int32Array): number => start.reduce((sum, s) => sum + s, 0)
const copyOf = ({ ops, potter, wish }: Order): Order => ({
  ops: ops.slice(),
  potter: potter.slice(),
  wish: wish.slice(),
})

/**
 * The order `told` with no dip kept back for nothing: each that could go goes along with an earlier one of its bucket, or
 * first of all, where lateness, finish and openings are no worse for it. The search does not ask how long a pot waits: one
 * that was washed off and dries for hours would let others wait for it beside an open bucket, to save a stir. `allowed`
 * says of an order whether it may be told.
 */
export function sooner(
  problem: Problem,
  timer: Timer,
  found: Found,
  told: Order,
  allowed: (order: Order) => boolean,
): Order {
  const { n, bucket, release, after } = problem
  if (timer.run(told, Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) return told
  const best = copyOf(told)
  const tried = copyOf(told)
  let start = timer.start.slice()
  let restirs = timer.restirs
  let changed = false
  const readyS = (o: number): number => (release[o]! >= 0 ? release[o]! : start[o - 1]! + after[o - 1]!)
  /** Puts the op at `from` of the best order where `to` is; how much sooner the steps begin, 0 where it may not be told. */
  const gainS = (from: number, to: number): number => {
    copyOrder(best, tried)
    tried.wish[best.ops[from]!] = AUTO
    relocate(tried.ops, from, to)
    if (timer.run(tried, Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) return 0
    const stirs = Math.max(0, timer.restirs - restirs)
    const noWorse = versus(timer, { ...found, restirs: Math.max(timer.restirs, found.restirs) }) <= 0
    const gain = sumOf(start) - sumOf(timer.start)
    return noWorse && gain >= WORTH_S * (1 + stirs) && allowed(tried) ? gain : 0
  }
  for (let at = 1; at < n; at++) {
    const o = best.ops[at]!
    if (bucket[o]! < 0 || start[o]! - readyS(o) < WORTH_S) continue
    const below = release[o]! >= 0 ? -1 : best.ops.indexOf(o - 1)
    let most = 0
    let place = -1
    // From the latest on: places in their order where nothing else decides.
    for (let to = at - 1; to > below; to--) {
      if (to > 0 && bucket[best.ops[to - 1]!] !== bucket[o]) continue
      const gain = gainS(at, to)
      if (gain <= most) continue
      most = gain
      place = to
    }
    if (place < 0) continue
    gainS(at, place)
    copyOrder(tried, best)
    changed = true
    start = timer.start.slice()
    restirs = timer.restirs
  }
  return changed ? best : told
}
