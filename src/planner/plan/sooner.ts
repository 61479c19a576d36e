import { AUTO, NONE, type Order, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { relocate } from '../search/runs.ts'
import { copyOrder, type Found, versus } from '../search/search.ts'

/**
 * Seconds. A dip that could go less than this sooner stays where it was told: keeping it may save a stir. Steps that begin sooner
 * by so much, taken together, are worth another order; by as much again, each further stir. Our choice.
 */
export const WORTH_S = 3600
/** Seconds. Idle hands open a bucket for dips that would wait so much longer, where they stay idle so long. Our choice. */
const VISIT_S = 900

const sumOf = (start: Int32Array): number => start.reduce((sum, s) => sum + s, 0)
const copyOf = ({ ops, potter, wish }: Order): Order => ({
  ops: ops.slice(),
  potter: potter.slice(),
  wish: wish.slice(),
})

/** When the hands turn to each op: to the stir before it, where it has one. */
const beginsOf = ({ n }: Problem, { start, setUp, setUpS }: Timer): Int32Array =>
  Int32Array.from({ length: n }, (_, o) => start[o]! - (setUp[o] === NONE ? 0 : setUpS[o]!))

/**
 * The order `told` with no dip kept back for nothing: each that could go goes along with an earlier one of its bucket, or
 * first of all, or into a visit of its own with all that would stand as long while the hands are idle. Lateness and
 * finish are no worse for it, nor openings where all pots can go within the hour. The search does not ask how long a pot
 * waits: one that was washed off and dries for hours would let others wait for it beside an open bucket, to save a stir,
 * or beside a closed one, to save an opening. `allowed` says of an order whether it may be told.
 */
export function sooner(
  problem: Problem,
  timer: Timer,
  found: Found,
  told: Order,
  allowed: (order: Order) => boolean,
): Order {
  const { n, bucket, release, after, dur } = problem
  if (timer.run(told, Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) return told
  const best = copyOf(told)
  const tried = copyOf(told)
  let start = timer.start.slice()
  let beginS = beginsOf(problem, timer)
  let restirs = timer.restirs
  let openings = timer.openings
  let changed = false
  const readyS = (o: number): number => (release[o]! >= 0 ? release[o]! : start[o - 1]! + after[o - 1]!)
  // Nobody stands for hours beside pots that are ready to save an opening for one that is not.
  const hasLate = problem.firstOp.some((o) => release[o]! >= WORTH_S)
  const belowAt = (o: number): number => (release[o]! >= 0 ? -1 : best.ops.indexOf(o - 1))
  /** How long the hands of the op at `from` are idle before what is at `to`, its pot being ready, s. */
  const idleS = (from: number, to: number): number => {
    const [o, next] = [best.ops[from]!, best.ops[to]!]
    const potter = best.potter[o]!
    if (best.potter[next] !== potter) return 0
    let freeS = problem.freeS[potter]!
    for (let k = 0; k < to; k++) {
      const e = best.ops[k]!
      if (best.potter[e] === potter) freeS = start[e]! + dur[e]!
    }
    return beginS[next]! - Math.max(freeS, readyS(o))
  }
  /** The op at `from` with the dips that are kept for their bucket as long, and could be where `to` is: as they are ready. */
  const groupOf = (from: number, to: number): readonly number[] => {
    const o = best.ops[from]!
    return [...best.ops.subarray(to)]
      .filter(
        (e) =>
          bucket[e] === bucket[o] &&
          best.potter[e] === best.potter[o] &&
          start[e]! - readyS(e) >= WORTH_S &&
          belowAt(e) < to,
      )
      .sort((a, b) => readyS(a) - readyS(b))
  }
  /** Puts ops of the best order where `to` is; how much sooner the steps begin, 0 where it may not be told. */
  const gainS = (group: readonly number[], to: number): number => {
    copyOrder(best, tried)
    group.forEach((e, k) => {
      tried.wish[e] = AUTO
      relocate(tried.ops, tried.ops.indexOf(e), to + k)
    })
    if (timer.run(tried, Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) return 0
    const stirs = Math.max(0, timer.restirs - restirs)
    const more = hasLate ? Math.max(0, timer.openings - openings) : 0
    const least = {
      ...found,
      openings: hasLate ? Math.max(timer.openings, found.openings) : found.openings,
      restirs: Math.max(timer.restirs, found.restirs),
    }
    const gain = sumOf(start) - sumOf(timer.start)
    const isWorth = gain >= WORTH_S * (1 + stirs + more)
    return isWorth && versus(timer, least) <= 0 && allowed(tried) ? gain : 0
  }
  for (let at = 1; at < n; at++) {
    const o = best.ops[at]!
    if (bucket[o]! < 0 || start[o]! - readyS(o) < WORTH_S) continue
    const below = belowAt(o)
    let most: { readonly to: number; readonly group: readonly number[]; readonly gain: number } | undefined
    // From the latest on: places in their order where nothing else decides.
    for (let to = at - 1; to > below; to--) {
      const same = to === 0 || bucket[best.ops[to - 1]!] === bucket[o]
      const groups = [
        ...(same ? [[o]] : []),
        // One stir, or one opening instead of another, does for all that would stand there.
        ...(idleS(at, to) >= VISIT_S ? [groupOf(at, to)] : []),
      ]
      for (const group of groups) {
        const gain = gainS(group, to)
        if (gain > (most?.gain ?? 0)) most = { to, group, gain }
      }
    }
    if (!most) continue
    gainS(most.group, most.to)
    copyOrder(tried, best)
    changed = true
    start = timer.start.slice()
    beginS = beginsOf(problem, timer)
    restirs = timer.restirs
    openings = timer.openings
  }
  return changed ? best : told
}
