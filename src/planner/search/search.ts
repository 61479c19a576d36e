import { lowerBound } from '../bound/bound.ts'
import { HOLD, type Order, STIR, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { emptyOrder } from './by-rule.ts'
import { makeMove } from './moves.ts'
import { makeRandom } from './random.ts'
import { starts } from './starts.ts'

/** The aims a search compares, in order: lateness, finish, openings, re-stirs. */
export interface Found {
  readonly order: Order
  lateS: number
  finishS: number
  openings: number
  restirs: number
}

/** Overwrites `to` with `from`, both of one problem. */
export function copyOrder(from: Order, to: Order): void {
  to.ops.set(from.ops)
  to.potter.set(from.potter)
  to.wish.set(from.wish)
}

/** Smaller than 0 when the timer's last run is better than `found`. */
export const versus = (timer: Timer, found: Found): number =>
  timer.lateS - found.lateS ||
  timer.finishS - found.finishS ||
  timer.openings - found.openings ||
  timer.restirs - found.restirs

/** Remembers this order and what the timer's last run said of it. */
export function keep(found: Found, timer: Timer, order: Order): void {
  copyOrder(order, found.order)
  found.lateS = timer.lateS
  found.finishS = timer.finishS
  found.openings = timer.openings
  found.restirs = timer.restirs
}

const nothingYet = (problem: Problem): Found => ({
  order: emptyOrder(problem),
  lateS: Number.POSITIVE_INFINITY,
  finishS: Number.POSITIVE_INFINITY,
  openings: Number.POSITIVE_INFINITY,
  restirs: Number.POSITIVE_INFINITY,
})

/** Best of the starts that `allowed` lets pass. */
export function bestStart(problem: Problem, timer: Timer, orders: readonly Order[] = starts(problem)): Found {
  const found = nothingYet(problem)
  for (const order of orders) {
    if (timer.run(order, Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) continue
    if (versus(timer, found) < 0) keep(found, timer, order)
  }
  return found
}

function meetsBound(problem: Problem, found: Found): boolean {
  const bound = lowerBound(problem)
  return (
    found.lateS === bound.lateS &&
    found.finishS === bound.finishS &&
    found.openings === bound.openings &&
    found.restirs <= Math.max(0, bound.stirs - found.openings)
  )
}

/** Rounds of annealing; each starts from the best so far. Temperatures in seconds of the objective. Tuned. */
const ROUNDS = 3
const WARM_S = 90
const COLD_S = 2
/** Share of the work at the end in which nothing worse is taken. */
const POLISH = 0.15
/** Work between two chances to stop: a few ms on a desk machine, 20 on a phone. */
const SLICE = 50_000
/** Starting warm again costs less after the first round. */
const COOLER = 0.5

/**
 * Anneals over orders until `work` ops have been timed, or the bound is met. The threshold is drawn before a
 * candidate is timed, so that a bad one stops early. Same problem, seed and work: same answer.
 * Yields now and then so that a newer question can be heard. `allowed`: refuses candidates that would change the card in hand.
 */
export function* search(
  problem: Problem,
  timer: Timer,
  found: Found,
  work: number,
  allowed: (order: Order) => boolean,
): Generator<void, void> {
  if (problem.n < 2 || meetsBound(problem, found)) return
  const random = makeRandom(problem.input.seed)
  const move = makeMove(problem, random)
  let current = emptyOrder(problem)
  let other = emptyOrder(problem)
  let value = 0
  const fromBest = () => {
    copyOrder(found.order, current)
    value = timer.run(current, Number.POSITIVE_INFINITY)
    timer.take(current)
  }
  const before = timer.work
  fromBest()
  let pause = SLICE
  const annealing = work * (1 - POLISH)
  let round = 0
  // Tries that come to nothing cost work too, or a problem without moves would never end.
  for (let tries = 0; timer.work + tries - before < work; tries++) {
    const spent = timer.work + tries - before
    if (spent >= pause) {
      pause += SLICE
      yield
    }
    const nowRound = Math.min(ROUNDS, Math.floor((spent / annealing) * ROUNDS))
    if (nowRound !== round) {
      round = nowRound
      fromBest()
    }
    const polish = spent >= annealing
    const part = (spent / annealing) * ROUNDS - round
    const heat = polish ? 0 : WARM_S * COOLER ** round * (COLD_S / WARM_S) ** part
    copyOrder(current, other)
    if (polish && random.int(3) === 0) {
      const o = other.ops[random.int(problem.n)]!
      if (other.wish[o] === HOLD) continue
      other.wish[o] = other.wish[o] === STIR && random.int(2) ? 0 : HOLD
    } else if (!move(other)) continue
    if (!allowed(other)) continue
    const limit = value - heat * Math.log(random.unit())
    const candidate = timer.retry(other, limit)
    if (candidate > limit) continue
    const swap = current
    current = other
    other = swap
    value = candidate
    timer.take(current)
    if (versus(timer, found) < 0) {
      keep(found, timer, current)
      if (meetsBound(problem, found)) return
    }
  }
}
