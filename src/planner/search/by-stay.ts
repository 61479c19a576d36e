import { type Order, STIR } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { emptyOrder } from './by-rule.ts'

/** A habit of the workshop: what is ready for the open bucket goes first, and so it goes until nothing is. */
interface Stay {
  /** Which of the buckets that could go soonest is next: of the pot with the most still ahead, with most pots ready, or any. */
  readonly next: 'longest' | 'most' | 'soonest'
  /** Pots in the order they are listed in, or else the most still ahead first. */
  readonly asListed: boolean
  /** How long hands wait beside the open bucket for what comes back to it, s. */
  readonly patienceS: number
}

/** Every habit that an order is held against. */
const STAYS: readonly Stay[] = (['longest', 'most', 'soonest'] as const).flatMap((next) =>
  [false, true].flatMap((asListed) => [0, 600].map((patienceS) => ({ next, asListed, patienceS }))),
)

/** The order of one habit, each stir where its hands would see that it is due: it comes out no later than by the habit. */
function orderByStay(problem: Problem, listed: Int32Array, { next, asListed, patienceS }: Stay): Order {
  const { bucket, dur, after, collar, tail, openS, restirS, freshS, decantS } = problem
  const order = emptyOrder(problem)
  const at = Int32Array.from(problem.firstOp)
  const ready = Int32Array.from(problem.firstOp, (o) => problem.release[o]!)
  let [free, open, stir, poured] = [
    problem.freeS[0]!,
    problem.at[0]!,
    problem.stirS[0]!,
    problem.decanted[0] === 1,
  ]
  const live = problem.pots.map((_, p) => p)
  /** Whether pot `p` goes before `q` of those that are equal otherwise. */
  const before = (p: number, q: number): boolean => {
    const more = asListed ? 0 : tail[at[p]!]! - tail[at[q]!]!
    return more > 0 || (more === 0 && listed[p]! < listed[q]!)
  }
  const changeS = (b: number) => (b >= 0 && b !== open ? openS[b]! : 0)
  const startS = (p: number) => Math.max(ready[p]!, free + changeS(bucket[at[p]!]!))

  /** Ready now for the open bucket, else for no bucket, else soon for the open bucket; -1 for none. */
  const staying = (): number => {
    let [chosen, rank] = [-1, 3]
    for (const p of live) {
      const b = bucket[at[p]!]!
      const now = ready[p]! <= free
      if (b < 0 ? !now : b !== open || ready[p]! > free + patienceS) continue
      const own = b < 0 ? 1 : now ? 0 : 2
      const sooner = chosen < 0 || own !== rank || own < 2 ? 0 : ready[chosen]! - ready[p]!
      if (
        chosen >= 0 &&
        (own > rank || (own === rank && (sooner < 0 || (sooner === 0 && !before(p, chosen)))))
      )
        continue
      chosen = p
      rank = own
    }
    return chosen
  }
  const could = new Uint8Array(live.length)
  const count = new Int32Array(problem.buckets.length + 1)
  /** Of those that could go soonest, by the habit. */
  const changing = (): number => {
    let soonest = Number.POSITIVE_INFINITY
    for (const p of live) soonest = Math.min(soonest, startS(p))
    count.fill(0)
    for (const p of live) {
      could[p] = Number(startS(p) === soonest)
      count[bucket[at[p]!]! + 1]! += could[p]!
    }
    const weight = (p: number): number =>
      next === 'soonest' ? 0 : next === 'longest' ? tail[at[p]!]! : count[bucket[at[p]!]! + 1]!
    let best = -1
    for (const p of live) {
      if (could[p] === 0) continue
      const more = best < 0 ? 1 : weight(p) - weight(best)
      if (more > 0 || (more === 0 && before(p, best))) best = p
    }
    return best
  }
  for (let k = 0; k < problem.n; k++) {
    const kept = staying()
    const p = kept < 0 ? changing() : kept
    const o = at[p]!
    const b = bucket[o]!
    let s = Math.max(free, ready[p]!)
    if (b >= 0) {
      const opens = open !== b
      const pours = collar[o] === 1 && (opens || !poured)
      if (opens || pours || s - stir > freshS[b]!) {
        s = Math.max(s, free + (opens ? openS[b]! : restirS[b]!) + (pours ? decantS[b]! : 0))
        if (!opens) order.wish[o] = STIR
        stir = s
        poured = pours || (poured && !opens)
        open = b
      }
    }
    order.ops[k] = o
    free = s + dur[o]!
    ready[p] = s + after[o]!
    at[p] = problem.next[o]!
    if (at[p]! < 0) live.splice(live.indexOf(p), 1)
  }
  return order
}

/** The orders of hands that stay at the open bucket, so that no answer is worse than any of them. One pair of hands. */
export function ordersByStay(problem: Problem): Order[] {
  if (problem.potterCount > 1) return []
  const places = new Map(problem.input.pots.map(({ id }, i) => [id, i]))
  const listed = Int32Array.from(problem.pots, ({ id }) => places.get(id)!)
  return STAYS.map((stay) => orderByStay(problem, listed, stay))
}
