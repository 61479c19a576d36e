import { lowerBound } from '../bound/bound.ts'
import { HOLD, type Order, objective, STIR, type Timer } from '../problem/order.ts'
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

/** What the search makes small of an order found. */
const worth = (found: Found): number => objective(found.lateS, found.finishS, found.openings, found.restirs)

/** The best few of the starts that come out unlike each other, best first. */
function bestFew(problem: Problem, timer: Timer, orders: readonly Order[], most: number): Found[] {
  const few: Found[] = []
  for (const order of orders) {
    if (timer.run(order, Number.POSITIVE_INFINITY) === Number.POSITIVE_INFINITY) continue
    if (few.some((each) => versus(timer, each) === 0)) continue
    const found = nothingYet(problem)
    keep(found, timer, order)
    few.push(found)
  }
  return few.sort((a, b) => worth(a) - worth(b)).slice(0, most)
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

/** How a search goes: in how many rounds, and which chances it takes. */
interface Course {
  readonly rounds: number
  readonly salt: number
}
const WHOLE: Course = { rounds: ROUNDS, salt: 0 }
/** Sets the chances of one course apart from those of the next. */
const SALT = 7919

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
  { rounds, salt }: Course = WHOLE,
): Generator<void, void> {
  if (problem.n < 2 || meetsBound(problem, found)) return
  const random = makeRandom(problem.input.seed + salt * SALT)
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
    const nowRound = Math.min(rounds, Math.floor((spent / annealing) * rounds))
    if (nowRound !== round) {
      round = nowRound
      fromBest()
    }
    const polish = spent >= annealing
    const part = (spent / annealing) * rounds - round
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

/**
 * Several starts, and the part of the work that goes on them. Boards of more steps than `most` are better searched from one:
 * a part of the work is too little for them. Tuned.
 */
const SEVERAL = { starts: 6, part: 0.5, most: 100 } as const

/**
 * Anneals from the best few of `orders`, one round each: what a board leads to is not told by how its starts come out, and
 * one start leads into one valley. As `search` else.
 * @returns the work that went on it, 0 where one start is better; `found` is made the best.
 */
export function* searchFromSeveral(
  problem: Problem,
  timer: Timer,
  found: Found,
  orders: readonly Order[],
  work: number,
  allowed: (order: Order) => boolean,
): Generator<void, number> {
  const few = problem.n > SEVERAL.most ? [] : bestFew(problem, timer, orders, SEVERAL.starts)
  if (few.length < 2) return 0
  const spent = Math.floor(work * SEVERAL.part)
  for (const [k, each] of few.entries()) {
    yield* search(problem, timer, each, spent / few.length, allowed, { rounds: 1, salt: k + 1 })
    timer.run(each.order, Number.POSITIVE_INFINITY)
    if (versus(timer, found) < 0) keep(found, timer, each.order)
    if (meetsBound(problem, found)) break
  }
  return spent
}
