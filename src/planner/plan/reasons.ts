import { NONE, OPEN, type Order, type Timer } from '../problem/order.ts'
import type { Board } from '../problem/problem.ts'
import type { Reason } from '../types.ts'

/** Earliest start by the pot's own clock. */
function readyS(board: Board, timer: Timer, o: number): number {
  if (board.release[o]! >= 0) return board.release[o]!
  return timer.start[o - 1]! + board.after[o - 1]!
}

/** The op before `position` in the same lane, -1 for none. */
function before(order: Order, position: number): number {
  const lane = order.lane[order.ops[position]!]
  for (let j = position - 1; j >= 0; j--) if (order.lane[order.ops[j]!] === lane) return order.ops[j]!
  return -1
}

function handsFreeS(board: Board, timer: Timer, order: Order, position: number): number {
  const o = order.ops[position]!
  const last = before(order, position)
  const free = last < 0 ? board.freeS[order.lane[o]!]! : timer.start[last]! + board.dur[last]!
  return free + (timer.setUp[o] === NONE ? 0 : timer.setUpS[o]!)
}

/** Other pots' dips in bucket `b` that could start at `time`: later in the order and ready by then. */
function rivals(board: Board, timer: Timer, order: Order, position: number, time: number): number[] {
  const o = order.ops[position]!
  const found: number[] = []
  for (let j = position + 1; j < board.n; j++) {
    const e = order.ops[j]!
    if (board.bucket[e] !== board.bucket[o] || board.pot[e] === board.pot[o]) continue
    if (readyS(board, timer, e) <= time) found.push(e)
  }
  return found
}

/** R5, R3, R6, R2 of the rules of thumb, in this order of telling. */
export function dipReason(
  board: Board,
  timer: Timer,
  order: Order,
  position: number,
): { readonly reason: Reason; readonly heldS: number } {
  const o = order.ops[position]!
  const start = timer.start[o]!
  const heldS = Math.max(
    0,
    start - Math.max(readyS(board, timer, o), handsFreeS(board, timer, order, position)),
  )
  if (heldS > 0) return { reason: 'heldSavesStir', heldS }
  const others = rivals(board, timer, order, position, start)
  if (others.length === 0) return { reason: timer.setUp[o] === OPEN ? 'onlyReady' : 'bucketOpen', heldS }
  if (timer.lateS > 0 && others.every((e) => board.dryTail[e]! < board.dryTail[o]!))
    return { reason: 'deadline', heldS }
  if (
    others.every((e) => board.tail[e]! <= board.tail[o]!) &&
    others.some((e) => board.tail[e]! < board.tail[o]!)
  )
    return { reason: 'longestChain', heldS }
  return { reason: 'bucketOpen', heldS }
}

/** Openings: what makes this bucket the next one. Re-stirs: stale now, or early because hands are idle. */
export function setUpReason(board: Board, timer: Timer, order: Order, position: number): Reason {
  const o = order.ops[position]!
  const begin = timer.start[o]! - timer.setUpS[o]!
  const last = before(order, position)
  const free = last < 0 ? board.freeS[order.lane[o]!]! : timer.start[last]! + board.dur[last]!
  if (timer.setUp[o] !== OPEN) {
    if (timer.setUpDecant[o]) return 'pourOff'
    return begin > free ? 'stirInWait' : 'stale'
  }
  const ready = readyS(board, timer, o)
  if (begin > free || ready > begin) return 'inWait'
  const b = timer.setUpBucket[o]!
  const dips = order.ops.subarray(position).filter((e) => board.bucket[e]! >= 0)
  const longest = Math.max(...dips.map((e) => board.tail[e]!))
  return dips.some((e) => board.bucket[e] === b && board.tail[e] === longest) ? 'longestChain' : 'nextBucket'
}

/** Why waxing or wiping stands where it does. */
export function prepReason(board: Board, _timer: Timer, order: Order, position: number): Reason {
  const o = order.ops[position]!
  if (board.after[o]! > board.dur[o]!) return 'startsWait'
  return order.ops.subarray(0, position).some((e) => board.bucket[e]! >= 0) ? 'inWait' : 'onlyReady'
}
