import { HOLD, type Order, STIR } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { emptyOrder } from './by-rule.ts'
import { leastAhead } from './least-ahead.ts'
import { extend, firstPartialPlan, type PartialPlan } from './partial-plan.ts'
import type { Found } from './search.ts'

/** Up to here *proven best* is tried for; without preparation steps it is nearly always reached. */
export const PROVABLE_DIPS = 18
/** Labels made before giving up; about 0.2 s on a desk machine. Tuned. */
const MOST_LABELS = 150_000

/** Labels between two chances to stop. */
const SLICE = 4000

/** True when partial plan `a` can do whatever `b` can, at least as early, with no more set-ups. */
function dominates(a: PartialPlan, b: PartialPlan): boolean {
  if (a.freeS > b.freeS || a.lateS > b.lateS || a.openings > b.openings || a.restirs > b.restirs) return false
  if (a.stirS < b.stirS || a.packedS > b.packedS || a.packedDryS > b.packedDryS) return false
  for (let p = 0; p < a.readyS.length; p++)
    if (a.readyS[p]! > b.readyS[p]! || a.packedReadyS[p]! > b.packedReadyS[p]!) return false
  return true
}

/** The order and wishes that make the timer repeat the label's path. */
function traceBack(problem: Problem, last: PartialPlan): Order {
  const order = emptyOrder(problem)
  order.wish.fill(HOLD)
  let k = problem.n
  for (let partial: PartialPlan | null = last; partial?.before; partial = partial.before) {
    order.ops[--k] = partial.op
    if (partial.stirred) order.wish[partial.op] = STIR
    else if (problem.bucket[partial.op]! < 0) order.wish[partial.op] = 0
  }
  return order
}

/** What the exact method says: whether it came to an end, and what beats the plan it was given. */
export interface Verdict {
  readonly proven: boolean
  /** The best order, as it comes out; null when nothing is better. */
  readonly better: Found | null
}

const verdict = (problem: Problem, proven: boolean, best: PartialPlan | null): Verdict => ({
  proven,
  better: best && {
    order: traceBack(problem, best),
    lateS: best.lateS,
    finishS: best.freeS,
    openings: best.openings,
    restirs: best.restirs,
  },
})

/**
 * Label setting over (steps done, open bucket, age of its stir) with dominance: finds what beats `found` by
 * lateness, finish, openings and re-stirs, or proves that nothing does. One pair of hands only.
 * @param most labels made before giving up.
 */
export function* exact(problem: Problem, found: Found, most: number = MOST_LABELS): Generator<void, Verdict> {
  let best: PartialPlan | null = null
  let target = {
    lateS: found.lateS,
    finishS: found.finishS,
    openings: found.openings,
    restirs: found.restirs,
  }
  const ahead = leastAhead(problem)
  const hopeless = (partial: PartialPlan): boolean => {
    const least = ahead(partial)
    return (
      (least.lateS - target.lateS ||
        least.finishS - target.finishS ||
        least.openings - target.openings ||
        least.restirs - target.restirs) >= 0
    )
  }
  let level = new Map<string, PartialPlan[]>([['', [firstPartialPlan(problem)]]])
  let made = 0
  for (let k = 0; k < problem.n; k++) {
    const following = new Map<string, PartialPlan[]>()
    for (const labels of level.values())
      for (const partial of labels)
        for (const child of extend(problem, partial)) {
          if (++made % SLICE === 0) yield
          if (made > most) return verdict(problem, false, best)
          if (hopeless(child)) continue
          if (k === problem.n - 1) {
            best = child
            target = {
              lateS: child.lateS,
              finishS: child.freeS,
              openings: child.openings,
              restirs: child.restirs,
            }
            continue
          }
          const rivals = following.get(child.key)
          if (!rivals) {
            following.set(child.key, [child])
            continue
          }
          if (rivals.some((rival) => dominates(rival, child))) continue
          let kept = 0
          for (const rival of rivals) if (!dominates(child, rival)) rivals[kept++] = rival
          rivals.length = kept
          rivals.push(child)
        }
    level = following
  }
  return verdict(problem, true, best)
}
