import type { Order, Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { type Found, versus } from '../search/search.ts'

/** Pots that nothing tells apart: alike in their steps, and in what else breaks ties. */
function groupsOf(problem: Problem, fixed: ReadonlySet<number>): readonly (readonly number[])[] {
  const groups = new Map<string, number[]>()
  for (const [p, { runny = false, heightMm = 0 }] of problem.pots.entries()) {
    if (fixed.has(p)) continue
    const key = `${problem.kin[p]} ${runny} ${heightMm}`
    const group = groups.get(key)
    if (group) group.push(p)
    else groups.set(key, [p])
  }
  return [...groups.values()].filter((group) => group.length > 1)
}

/**
 * The order with pots that nothing else tells apart in the order that the input lists them in, each at a turn for which
 * it is ready. `fixed`: pots, by their index, that stay at their turn. An order that this would make worse is left.
 */
export function natural(problem: Problem, timer: Timer, found: Found, fixed: ReadonlySet<number>): Order {
  const { order } = found
  timer.run(order, Number.POSITIVE_INFINITY)
  const listed = new Map(problem.input.pots.map(({ id }, i) => [id, i]))
  const place = (p: number): number => listed.get(problem.pots[p]!.id)!
  const beginsS = (p: number): number => timer.start[problem.firstOp[p]!]!
  const turn = Int32Array.from(problem.pots, (_, p) => p)
  for (const group of groupsOf(problem, fixed)) {
    const left = group.toSorted((a, b) => place(a) - place(b))
    for (const p of group.toSorted((a, b) => beginsS(a) - beginsS(b) || place(a) - place(b))) {
      const ready = left.findIndex((other) => problem.release[problem.firstOp[other]!]! <= beginsS(p))
      turn[p] = left.splice(Math.max(0, ready), 1)[0]!
    }
  }
  const opOf = (o: number): number => {
    const p = problem.pot[o]!
    return problem.firstOp[turn[p]!]! + o - problem.firstOp[p]!
  }
  const listing: Order = {
    ops: order.ops.map(opOf),
    potter: order.potter.slice(),
    wish: order.wish.slice(),
  }
  for (let o = 0; o < problem.n; o++) {
    listing.potter[opOf(o)] = order.potter[o]!
    listing.wish[opOf(o)] = order.wish[o]!
  }
  const weighed = timer.run(listing, Number.POSITIVE_INFINITY)
  return weighed === Number.POSITIVE_INFINITY || versus(timer, found) > 0 ? order : listing
}
