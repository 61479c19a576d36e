import { NONE, OPEN, type Order, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import type { Reason } from '../types.ts'

/** Earliest start by the pot's own clock. */
function readyS(problem: Problem, timer: Timer, o: number): number {
  if (problem.release[o]! >= 0) return problem.release[o]!
  return timer.start[o - 1]! + problem.after[o - 1]!
}

/** The op before `position` in the same potter, -1 for none. */
function before(order: Order, position: number): number {
  const potter = order.potter[order.ops[position]!]
  for (let j = position - 1; j >= 0; j--) if (order.potter[order.ops[j]!] === potter) return order.ops[j]!
  return -1
}

function handsFreeS(problem: Problem, timer: Timer, order: Order, position: number): number {
  const o = order.ops[position]!
  const last = before(order, position)
  const free = last < 0 ? problem.freeS[order.potter[o]!]! : timer.start[last]! + problem.dur[last]!
  return free + (timer.setUp[o] === NONE ? 0 : timer.setUpS[o]!)
}

/** Other pots' dips in bucket `b` that could start at `time`: later in the order and ready by then. */
function rivals(problem: Problem, timer: Timer, order: Order, position: number, time: number): number[] {
  const o = order.ops[position]!
  const found: number[] = []
  for (let j = position + 1; j < problem.n; j++) {
    const e = order.ops[j]!
    if (problem.bucket[e] !== problem.bucket[o] || problem.pot[e] === problem.pot[o]) continue
    if (readyS(problem, timer, e) <= time) found.push(e)
  }
  return found
}

/** R5, R3, R6, R2 of the rules of thumb, in this order of telling. */
export function dipReason(
  problem: Problem,
  timer: Timer,
  order: Order,
  position: number,
): { readonly reason: Reason; readonly heldS: number } {
  const o = order.ops[position]!
  const start = timer.start[o]!
  const heldS = Math.max(
    0,
    start - Math.max(readyS(problem, timer, o), handsFreeS(problem, timer, order, position)),
  )
  if (heldS > 0) return { reason: 'heldSavesStir', heldS }
  const others = rivals(problem, timer, order, position, start)
  if (others.length === 0) return { reason: timer.setUp[o] === OPEN ? 'onlyReady' : 'bucketOpen', heldS }
  if (timer.lateS > 0 && others.every((e) => problem.dryTail[e]! < problem.dryTail[o]!))
    return { reason: 'deadline', heldS }
  if (
    others.every((e) => problem.tail[e]! <= problem.tail[o]!) &&
    others.some((e) => problem.tail[e]! < problem.tail[o]!)
  )
    return { reason: 'longestChain', heldS }
  return { reason: 'bucketOpen', heldS }
}

/** Openings: what makes this bucket the next one. Re-stirs: stale now, or early because hands are idle. */
export function setUpReason(problem: Problem, timer: Timer, order: Order, position: number): Reason {
  const o = order.ops[position]!
  const begin = timer.start[o]! - timer.setUpS[o]!
  const last = before(order, position)
  const free = last < 0 ? problem.freeS[order.potter[o]!]! : timer.start[last]! + problem.dur[last]!
  if (timer.setUp[o] !== OPEN) {
    if (timer.setUpDecant[o]) return 'pourOff'
    return begin > free ? 'stirInWait' : 'stale'
  }
  const ready = readyS(problem, timer, o)
  if (begin > free || ready > begin) return 'inWait'
  const b = timer.setUpBucket[o]!
  const dips = order.ops.subarray(position).filter((e) => problem.bucket[e]! >= 0)
  const longest = Math.max(...dips.map((e) => problem.tail[e]!))
  return dips.some((e) => problem.bucket[e] === b && problem.tail[e] === longest)
    ? 'longestChain'
    : 'nextBucket'
}

/** Why waxing or wiping stands where it does. */
export function prepReason(problem: Problem, _timer: Timer, order: Order, position: number): Reason {
  const o = order.ops[position]!
  if (problem.after[o]! > problem.dur[o]!) return 'startsWait'
  return order.ops.subarray(0, position).some((e) => problem.bucket[e]! >= 0) ? 'inWait' : 'onlyReady'
}
