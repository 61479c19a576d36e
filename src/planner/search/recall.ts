import { AUTO, HOLD, type Order, STIR, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import type { Plan, PlanAction } from '../types.ts'
import { emptyOrder } from './by-rule.ts'
import { bestStart, type Found } from './search.ts'

type Step = Exclude<PlanAction, { kind: 'open' | 'restir' }>

type SetUp = Pick<Extract<PlanAction, { kind: 'open' | 'restir' }>, 'bucketId' | 'startS'>

const isStep = (action: PlanAction): action is Step => action.kind !== 'open' && action.kind !== 'restir'

/**
 * Finds the ops of an earlier plan among what is left now. Coats are counted from the end of the pot's stack, so
 * that those done since then drop out; an action whose bucket or kind no longer fits is left out.
 */
function opFinder(problem: Problem, plan: Plan): (action: Step) => number {
  const index = new Map(problem.pots.map((pot, p) => [pot.id, p]))
  const dips = new Map<string, number>()
  const preps = new Map<string, number>()
  for (const action of plan.actions)
    if (action.kind === 'dip') dips.set(action.potId, Math.max(dips.get(action.potId) ?? 0, action.coat + 1))
    else if (isStep(action)) preps.set(action.potId, Math.max(preps.get(action.potId) ?? 0, action.step + 1))
  return (action) => {
    const p = index.get(action.potId)
    if (p === undefined) return -1
    const pot = problem.pots[p]!
    if (action.kind === 'dip') {
      const k = action.coat - dips.get(pot.id)! + pot.coats.length
      if (pot.coats[k]?.bucketId !== action.bucketId) return -1
      return problem.firstOp[p]! + pot.prep.length + k
    }
    const k = action.step - preps.get(pot.id)! + pot.prep.length
    return pot.prep[k]?.kind === action.kind ? problem.firstOp[p]! + k : -1
  }
}

/** What hands were told to do next. */
export interface CardInHand {
  readonly potter: number
  readonly op: number
  /** A set-up of this bucket is the card, and `op` is what follows it; -1 when `op` itself is. */
  readonly bucket: number
  /** When the card and when `op` was to begin, from now. */
  readonly startS: number
  readonly opStartS: number
}

export interface Recalled {
  /** The old order with what is new put where it costs least. */
  readonly found: Found
  readonly cards: readonly CardInHand[]
}

/** Ops new to the plan go, in their pot's order, where the objective is least. */
function insertNew(
  problem: Problem,
  timer: Timer,
  ops: readonly number[],
  potters: Map<number, number>,
): number[] {
  const { next, release } = problem
  const known = new Set(ops)
  const missing = Array.from({ length: problem.n }, (_, o) => o).filter((o) => !known.has(o))
  const line = [...ops]
  // First right before what follows them on their pot, so that there is a whole order to compare.
  for (const o of [...missing].reverse())
    line.splice(next[o]! >= 0 ? line.indexOf(next[o]!) : line.length, 0, o)
  const order = emptyOrder(problem)
  for (const o of line) order.potter[o] = potters.get(o) ?? 0
  for (const o of missing) {
    line.splice(line.indexOf(o), 1)
    const low = release[o]! >= 0 ? 0 : line.indexOf(o - 1) + 1
    const high = next[o]! >= 0 ? line.indexOf(next[o]!) : line.length
    let best = Number.POSITIVE_INFINITY
    let chosen = high
    for (let q = low; q <= high; q++) {
      order.ops.set([...line.slice(0, q), o, ...line.slice(q)])
      const value = timer.run(order, Number.POSITIVE_INFINITY)
      if (value >= best) continue
      best = value
      chosen = q
    }
    line.splice(chosen, 0, o)
  }
  return line
}

/** The order a plan was made of, put onto this problem, timed as the input is now. */
export function recall(problem: Problem, timer: Timer, plan: Plan): Recalled {
  const opOf = opFinder(problem, plan)
  const ops: number[] = []
  const potters = new Map<number, number>()
  const stirred = new Set<number>()
  const cards = new Map<number, CardInHand>()
  const setUps = new Map<number, SetUp>()
  /** A set-up that the open bucket shows to be done is no card any more. */
  const toCome = (setUp: SetUp | undefined, potter: number): SetUp | undefined => {
    const b = problem.at[potter]!
    const done =
      setUp &&
      b >= 0 &&
      problem.buckets[b]!.id === setUp.bucketId &&
      problem.stirS[potter]! + problem.input.nowS >= setUp.startS
    return done ? undefined : setUp
  }
  const sorted = [...plan.actions].sort((a, b) => a.startS - b.startS || a.endS - b.endS)
  for (const action of sorted) {
    const potter = Math.min(action.potter, problem.potterCount - 1)
    if (!isStep(action)) {
      setUps.set(action.potter, action)
      continue
    }
    const before = toCome(setUps.get(action.potter), potter)
    setUps.delete(action.potter)
    const o = opOf(action)
    if (o < 0) continue
    ops.push(o)
    potters.set(o, potter)
    if (before) stirred.add(o)
    if (!cards.has(potter))
      cards.set(potter, {
        potter,
        op: o,
        bucket: before ? problem.buckets.findIndex((bucket) => bucket.id === before.bucketId) : -1,
        startS: (before?.startS ?? action.startS) - problem.input.nowS,
        opStartS: action.startS - problem.input.nowS,
      })
  }
  const line = insertNew(problem, timer, ops, potters)
  const base = emptyOrder(problem)
  base.ops.set(line)
  for (const o of line) base.potter[o] = potters.get(o) ?? 0
  const withWishes = (wishOf: (o: number) => number): Order => ({
    ops: base.ops.slice(),
    potter: base.potter.slice(),
    wish: Uint8Array.from(base.wish, (_, o) => wishOf(o)),
  })
  const asPlanned = (o: number) => (stirred.has(o) ? STIR : problem.bucket[o]! >= 0 ? HOLD : AUTO)
  const hold = (o: number) => (problem.bucket[o]! >= 0 ? HOLD : AUTO)
  const found = bestStart(problem, timer, [withWishes(asPlanned), withWishes(() => AUTO), withWishes(hold)])
  return { found, cards: [...cards.values()] }
}
