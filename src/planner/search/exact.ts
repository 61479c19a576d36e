import { HOLD, type Order, STIR } from '../problem/order.ts'
import type { Board } from '../problem/problem.ts'
import { emptyOrder } from './by-rule.ts'
import { leastAhead } from './lookahead.ts'
import { extend, firstLabel, type Label } from './partial-plan.ts'
import type { Found } from './search.ts'

/** Up to here *proven best* is tried for; without preparation steps it is nearly always reached. */
export const PROVABLE_DIPS = 18
/** Labels made before giving up; about 0.2 s on a desk machine. Tuned. */
const MOST_LABELS = 150_000

/** Labels between two chances to stop. */
const SLICE = 4000

/** True when label `a` can do whatever `b` can, at least as early, with no more set-ups. */
function dominates(a: Label, b: Label): boolean {
  if (a.freeS > b.freeS || a.lateS > b.lateS || a.openings > b.openings || a.restirs > b.restirs) return false
  if (a.stirS < b.stirS || a.packedS > b.packedS || a.packedDryS > b.packedDryS) return false
  for (let p = 0; p < a.readyS.length; p++)
    if (a.readyS[p]! > b.readyS[p]! || a.packedReadyS[p]! > b.packedReadyS[p]!) return false
  return true
}

/** The order and wishes that make the timer repeat the label's path. */
function traceBack(board: Board, last: Label): Order {
  const order = emptyOrder(board)
  order.wish.fill(HOLD)
  let k = board.n
  for (let label: Label | null = last; label?.before; label = label.before) {
    order.ops[--k] = label.op
    if (label.stirred) order.wish[label.op] = STIR
    else if (board.bucket[label.op]! < 0) order.wish[label.op] = 0
  }
  return order
}

/** What the exact method says: whether it came to an end, and what beats the plan it was given. */
export interface Verdict {
  readonly proven: boolean
  /** The best order, as it comes out; null when nothing is better. */
  readonly better: Found | null
}

const verdict = (board: Board, proven: boolean, best: Label | null): Verdict => ({
  proven,
  better: best && {
    order: traceBack(board, best),
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
export function* exact(board: Board, found: Found, most: number = MOST_LABELS): Generator<void, Verdict> {
  let best: Label | null = null
  let target = {
    lateS: found.lateS,
    finishS: found.finishS,
    openings: found.openings,
    restirs: found.restirs,
  }
  const ahead = leastAhead(board)
  const hopeless = (label: Label): boolean => {
    const least = ahead(label)
    return (
      (least.lateS - target.lateS ||
        least.finishS - target.finishS ||
        least.openings - target.openings ||
        least.restirs - target.restirs) >= 0
    )
  }
  let level = new Map<string, Label[]>([['', [firstLabel(board)]]])
  let made = 0
  for (let k = 0; k < board.n; k++) {
    const following = new Map<string, Label[]>()
    for (const labels of level.values())
      for (const label of labels)
        for (const child of extend(board, label)) {
          if (++made % SLICE === 0) yield
          if (made > most) return verdict(board, false, best)
          if (hopeless(child)) continue
          if (k === board.n - 1) {
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
  return verdict(board, true, best)
}
