import { lowerBound } from '../bound/bound.ts'
import { checkWork } from '../problem/check.ts'
import { type Order, STIR, type Timer } from '../problem/order.ts'
import { layProblem, type Problem } from '../problem/problem.ts'
import { emptyOrder } from '../search/by-rule.ts'
import { ordersByStay } from '../search/by-stay.ts'
import { exact, PROVABLE_DIPS } from '../search/exact.ts'
import { type CardInHand, recall } from '../search/recall.ts'
import { relocate } from '../search/runs.ts'
import { bestStart, type Found, keep, search, searchFromSeveral, versus } from '../search/search.ts'
import { starts } from '../search/starts.ts'
import { ordersByVisits } from '../search/visits.ts'
import { makeTimer } from '../timing/timing.ts'
import type { Plan, PlanInput } from '../types.ts'
import { natural } from './natural.ts'
import { readPlan } from './read.ts'
import { sooner, WORTH_S } from './sooner.ts'

/** Ops timed in the final answer; about 100 ms on a desk machine, four to six times that on a phone. Tuned. */
export const FINAL_WORK = 1_000_000
/** Ops timed besides, while the hands work: half a second on a desk machine. Tuned. */
export const LONG_WORK = 10_000_000
/** A small problem is searched this long before the exact method takes over. Tuned. */
const SMALL_WORK = 60_000
/** With less work no order is made by looking ahead. Tuned. */
const PILOTS_FROM_WORK = 50_000
/** A new order that gains less, in lateness and in finish, isn't worth telling anybody (R12). */
const CALM_S = 60
/** A card counts as in hand when it was to begin no later than this after the hands come free. Assumption. */
const IN_HAND_S = 60

export interface Replanned {
  readonly plan: Plan
  /** The order told before still stands. */
  readonly kept: boolean
  /** What the new order gains over the old one, seconds of lateness and of finish; 0 without an old one. */
  readonly latenessGainS: number
  readonly finishGainS: number
}

/** The cards that no hard rule has broken since: their pot may go when it was to go, their bucket is wanted. */
function standing(problem: Problem, cards: readonly CardInHand[]): CardInHand[] {
  return cards.filter(({ potter, op, startS, opStartS }) => {
    const free = problem.freeS[potter]!
    return (
      !problem.input.hands[potter]?.away &&
      startS <= free + IN_HAND_S &&
      problem.release[op]! >= 0 &&
      problem.release[op]! <= Math.max(free, opStartS)
    )
  })
}

/**
 * Whether an order begins with the cards in hand: a dip with no stir put in before it, a bucket's card with any of
 * its pots.
 */
function keeps(problem: Problem, order: Order, cards: readonly CardInHand[]): boolean {
  return cards.every(({ potter, op, bucket }) => {
    const first = order.ops.find((o) => order.potter[o] === potter)
    if (bucket < 0) return first === op && order.wish[op] !== STIR
    return first !== undefined && (first === op || problem.bucket[first] === bucket)
  })
}

/** Before what its own hands do: the other hands needn't wait for it. */
function putFirst(order: Order, cards: readonly CardInHand[]): Order {
  for (const { potter, op } of cards) {
    const first = order.ops.findIndex((o) => order.potter[o] === potter)
    const at = order.ops.indexOf(op)
    if (first >= 0 && first < at) relocate(order.ops, at, first)
    order.potter[op] = potter
  }
  return order
}

/** Whether a board is begun with more care: a fresh one, and where there is time. Told again, the old order begins better. */
const withCare = (hasOld: boolean, work: number): boolean =>
  work >= PILOTS_FROM_WORK && (!hasOld || work > FINAL_WORK)

/** Orders to begin with. Those of habits are told apart from the quick ones: the first answer must come at once. */
function begun(problem: Problem, timer: Timer, careful: boolean, work: number): Order[] {
  const quick = work > 0 ? [...starts(problem), ...ordersByStay(problem)] : starts(problem)
  return careful ? [...quick, ...ordersByVisits(problem, timer)] : quick
}

/** Searches from `found`, and first from the best few of `several`; makes `found` the best. @returns whether it is proven. */
function* searched(
  problem: Problem,
  timer: Timer,
  found: Found,
  several: readonly Order[],
  work: number,
  allowed: (order: Order) => boolean,
): Generator<void, boolean> {
  const small = work > 0 && problem.potterCount === 1 && problem.dips <= PROVABLE_DIPS
  const spent = small ? 0 : yield* searchFromSeveral(problem, timer, found, several, work, allowed)
  yield* search(problem, timer, found, (small ? Math.min(work, SMALL_WORK) : work) - spent, allowed)
  if (!small) return false
  const { better, proven: ended } = yield* exact(problem, found)
  let proven = ended && better === null
  if (better && allowed(better.order)) {
    timer.run(better.order, Number.POSITIVE_INFINITY)
    // The timer must repeat the exact method's path; where it could not, nothing is claimed.
    proven = ended && versus(timer, better) === 0
    if (versus(timer, found) < 0) keep(found, timer, better.order)
  }
  if (!proven) yield* search(problem, timer, found, work - SMALL_WORK, allowed)
  return proven
}

/** The board as one of two potters has it alone: who is at the table, of two the one who is free first. */
function single({ input }: Problem): Problem {
  const [first, second] = input.hands
  return layProblem({
    ...input,
    hands: [second && (second.freeAtS < first.freeAtS || first.away) ? second : first],
  })
}

/**
 * The best order found for one of two potters, done by either alone. Searched with as much work again.
 */
function* alone(problem: Problem, own: Problem, work: number): Generator<void, Order[]> {
  const { input } = problem
  const timer = makeTimer(own)
  const careful = withCare(false, work)
  const begins = begun(own, timer, careful, work)
  const found = bestStart(own, timer, begins)
  yield* searched(own, timer, found, careful ? begins : [], work, () => true)
  const firstOp = new Map(problem.pots.map((pot, p) => [pot.id, problem.firstOp[p]!]))
  const here = (o: number) => {
    const p = own.pot[o]!
    return firstOp.get(own.pots[p]!.id)! + o - own.firstOp[p]!
  }
  return input.hands.map((_, l) => {
    const order = emptyOrder(problem)
    found.order.ops.forEach((o, k) => {
      order.ops[k] = here(o)
      order.wish[here(o)] = found.order.wish[o]!
    })
    order.potter.fill(l)
    return order
  })
}

/**
 * Two are never told a worse plan than one: where no bound says that `found` is better than all plans of one potter, the best of
 * those is searched for and takes its place if it is better. Else they search on together, with as much work.
 */
function* orAlone(
  problem: Problem,
  timer: Timer,
  found: Found,
  cards: readonly CardInHand[],
  work: number,
  allowed: (order: Order) => boolean,
): Generator<void, void> {
  if (problem.potterCount < 2 || problem.n === 0) return
  const own = single(problem)
  const bound = lowerBound(own)
  if ((found.lateS - bound.lateS || found.finishS - bound.finishS) < 0)
    return yield* search(problem, timer, found, work, allowed)
  for (const order of yield* alone(problem, own, work)) {
    timer.run(putFirst(order, cards), Number.POSITIVE_INFINITY)
    if (versus(timer, found) < 0) keep(found, timer, order)
  }
}

/**
 * Plans, or plans again after something has happened. Yields now and then; returns the answer. With `previous`,
 * the card in hand and its bucket stay unless a hard rule broke, and the old order stays when a new one gains
 * less than a minute.
 * @throws RangeError naming field, value and allowed range.
 */
export function* planning(input: PlanInput, previous: Plan | null, work: number): Generator<void, Replanned> {
  checkWork(work)
  const problem = layProblem(input)
  const timer = makeTimer(problem)
  const old = previous && recall(problem, timer, previous)
  const cards = old ? standing(problem, old.cards) : []
  const allowed = (order: Order) => cards.length === 0 || keeps(problem, order, cards)
  const careful = withCare(old !== null, work)
  const begins = begun(problem, timer, careful, work).map((order) => putFirst(order, cards))
  const found: Found = bestStart(problem, timer, begins)
  if (old && allowed(old.found.order)) {
    timer.run(old.found.order, Number.POSITIVE_INFINITY)
    if (versus(timer, found) < 0) keep(found, timer, old.found.order)
  }
  const proven = yield* searched(problem, timer, found, careful ? begins : [], work, allowed)
  yield* orAlone(problem, timer, found, cards, work, allowed)
  const latenessGainS = old ? old.found.lateS - found.lateS : 0
  const finishGainS = old ? old.found.finishS - found.finishS : 0
  const stay = old !== null && previous !== null && latenessGainS < CALM_S && finishGainS < CALM_S
  if (!stay) {
    const inHand = new Set(cards.map(({ op }) => problem.pot[op]!))
    const listed = natural(problem, timer, found, inHand)
    const order = sooner(problem, timer, found, listed, allowed)
    const plan = readPlan(problem, timer, order, proven && order === listed)
    return { plan, kept: false, latenessGainS, finishGainS }
  }
  const same = [
    latenessGainS,
    finishGainS,
    old.found.openings - found.openings,
    old.found.restirs - found.restirs,
  ]
  // Calm ends where a pot now needs hours more: what was told of the others was told without that.
  const upset = old.found.finishS + input.nowS - previous.finishS >= WORTH_S
  const order = upset ? sooner(problem, timer, old.found, old.found.order, allowed) : old.found.order
  const stands = order === old.found.order
  const plan = readPlan(problem, timer, order, proven && stands && same.every((gain) => gain === 0))
  return { plan, kept: stands, latenessGainS, finishGainS }
}

/** Runs a search that could be paused to its end. */
export function drain<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/**
 * The first answer, without search: the old order where it keeps up, else the best of some twenty quick orders.
 * @throws RangeError naming field, value and allowed range.
 */
export function firstPlan(input: PlanInput, previous: Plan | null = null): Plan {
  return drain(planning(input, previous, 0)).plan
}
