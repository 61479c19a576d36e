import { NONE, OPEN, type Order, objective, RESTIR, STIR, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { makeMemory } from './memory.ts'
import { cure, HOLD_BACK, makeSheet, nextDip, openEarlier } from './sheet.ts'

/** Numbers that a pass adds up: the end of the last count, openings, re-stirs, lateness, finish, work left. */
const SUMS = 6

/**
 * As `timerForOne` for two pairs of hands: each has its own stretch, a bucket is with one of them at a time, and
 * no two counts overlap. To hold, the pass begins again; `retry` goes on from the last state kept where the two orders are the
 * same and nothing later reaches back.
 */
export function timerForTwo(problem: Problem): Timer {
  const {
    n,
    potterCount,
    bucket,
    dur,
    after,
    out,
    next,
    collar,
    tail,
    dryTail,
    release,
    openS,
    restirS,
    freshS,
    decantS,
  } = problem
  const { deadlineS, doneLateS, workS } = problem
  const sheet = makeSheet(n)
  const {
    start,
    ready,
    gap,
    setUp,
    setUpBucket,
    setUpS,
    setUpDecant,
    fixedKind,
    fixedBucket,
    fixedEnd,
    tries,
  } = sheet
  // All that a pass carries on, in one line of numbers. Per potter: free from, bucket at hand, stir's end, poured off, and where the
  // current stretch began; per bucket: whose hands have it, end of the last dip in it.
  const buckets = problem.buckets.length
  const state = new Int32Array(5 * potterCount + 2 * buckets + SUMS)
  const part = (k: number) => state.subarray(k * potterCount, (k + 1) * potterCount)
  const [free, at, stir, poured, from] = [part(0), part(1), part(2), part(3), part(4)] as const
  const holder = state.subarray(5 * potterCount, 5 * potterCount + buckets)
  const busy = state.subarray(5 * potterCount + buckets, 5 * potterCount + 2 * buckets)
  const sums = state.subarray(5 * potterCount + 2 * buckets)
  const memory = makeMemory(problem, sheet, state)

  const clear = () => {
    holder.fill(-1)
    busy.fill(0)
    sums.set([0, 0, 0, doneLateS, 0, workS])
    for (let l = 0; l < potterCount; l++) {
      free[l] = problem.freeS[l]!
      at[l] = problem.at[l]!
      stir[l] = problem.stirS[l]!
      poured[l] = problem.decanted[l]!
      from[l] = -1
      if (at[l]! >= 0) {
        holder[at[l]!] = l
        if (!problem.input.hands[l]!.away) busy[at[l]!] = free[l]!
      }
    }
  }

  /** The state before position `i` of `order`, to which everything there was timed by now. */
  const goBack = (order: Order, i: number) => {
    if (i > 0) {
      memory.backTo(order, i)
      return
    }
    ready.set(release)
    clear()
  }

  const pass = (order: Order, limit: number, begin: number): number => {
    const { ops, potter, wish } = order
    if (begin === 0) memory.clear()
    goBack(order, begin)
    let [countFree, openings, restirs] = [sums[0]!, sums[1]!, sums[2]!]
    let [late, finish, left] = [sums[3]!, sums[4]!, sums[5]!]
    for (let i = begin; i < n; i++) {
      timer.work++
      if (memory.keeps(i)) {
        sums[0] = countFree
        sums[1] = openings
        sums[2] = restirs
        sums[3] = late
        sums[4] = finish
        sums[5] = left
        memory.keep(i)
      }
      const o = ops[i]!
      const l = potter[o]!
      const b = bucket[o]!
      const R = ready[o]!
      if (R < 0) return Number.POSITIVE_INFINITY
      const T = free[l]!
      const floor = b >= 0 && countFree > R ? countFree : R
      let kind = NONE
      let target = b
      if (fixedKind[o] !== NONE) {
        // What was a re-stir may have become an opening: holding back changes what comes before, too.
        target = fixedBucket[o]!
        kind = at[l] === target && holder[target] === l ? RESTIR : OPEN
      } else if (b < 0) {
        if (wish[o] === STIR) {
          const dip = nextDip(problem, order, l, i)
          target = dip < 0 ? -1 : bucket[dip]!
          memory.reach(i, n - 1)
          if (target >= 0) kind = at[l] === target && holder[target] === l ? RESTIR : OPEN
        }
      } else if (at[l] !== b || holder[b] !== l) {
        kind = OPEN
        const need = openS[b]! + (collar[o] ? decantS[b]! : 0)
        const j = openEarlier(problem, sheet, order, l, i, Math.max(floor, T), T)
        const e = j >= 0 ? ops[j]! : -1
        if (e >= 0 && start[e]! - need >= busy[b]!) {
          kind = NONE
          from[l] = j
          memory.reach(j, i)
          setUp[e] = OPEN
          setUpBucket[e] = b
          setUpS[e] = need
          setUpDecant[e] = collar[o]!
          stir[l] = start[e]!
          at[l] = b
          holder[b] = l
          poured[l] = collar[o]!
          openings++
        }
      } else if (wish[o] === STIR || (collar[o] && !poured[l])) kind = RESTIR
      let s = Math.max(floor, T)
      if (kind === NONE && b >= 0 && s - stir[l]! > freshS[b]!) {
        const how = cure(problem, sheet, order, l, from[l]!, i, s, T)
        if (how >= 0) {
          const e = ops[how]!
          from[l] = how
          memory.reach(how, i)
          setUp[e] = RESTIR
          setUpBucket[e] = b
          setUpS[e] = restirS[b]!
          setUpDecant[e] = 0
          stir[l] = start[e]!
          restirs++
        } else if (how !== HOLD_BACK) kind = RESTIR
        else {
          const first = ops[from[l]!]!
          tries[first]!++
          fixedKind[first] = setUp[first]!
          fixedBucket[first] = b
          fixedEnd[first] = s - freshS[b]!
          memory.reach(from[l]!, i)
          // What a pass that went on has behind it cannot be held back any more.
          if (from[l]! < begin) return pass(order, limit, 0)
          goBack(order, begin)
          ;[countFree, openings, restirs] = [sums[0]!, sums[1]!, sums[2]!]
          ;[late, finish, left] = [sums[3]!, sums[4]!, sums[5]!]
          i = begin - 1
          continue
        }
      }
      if (kind !== NONE) {
        const decant = collar[b >= 0 ? o : nextDip(problem, order, l, i)]!
        const pour = decant === 1 && !(kind === RESTIR && poured[l] === 1)
        const need = (kind === OPEN ? openS[target]! : restirS[target]!) + (pour ? decantS[target]! : 0)
        s = T + need
        if (kind === OPEN && s < busy[target]! + need) s = busy[target]! + need
        if (s < floor) s = floor
        if (fixedKind[o] !== NONE && s < fixedEnd[o]!) s = fixedEnd[o]!
        from[l] = i
        setUp[o] = kind
        setUpBucket[o] = target
        setUpS[o] = need
        setUpDecant[o] = Number(pour)
        if (kind === OPEN) {
          openings++
          poured[l] = decant
        } else {
          restirs++
          if (decant) poured[l] = 1
        }
        stir[l] = s
        at[l] = target
        holder[target] = l
        if (busy[target]! < s) busy[target] = s
        gap[o] = 0
      } else {
        setUp[o] = NONE
        gap[o] = s - T
      }
      start[o] = s
      free[l] = s + dur[o]!
      if (b >= 0) {
        busy[b] = free[l]!
        countFree = s + out[o]!
      }
      const nx = next[o]!
      if (nx >= 0) ready[nx] = s + after[o]!
      left -= dur[o]!
      // What the pot has still before it counts at once, so that a bad order is dropped early.
      const over = s + dryTail[o]! - deadlineS
      if (over > late) late = over
      const end = s + tail[o]!
      if (end > finish) finish = end
      const shared = (free[0]! + free[1]! + left) / 2
      if (objective(late, Math.max(shared, finish), openings, restirs) > limit)
        return Number.POSITIVE_INFINITY
    }
    timer.lateS = late
    timer.finishS = finish
    timer.openings = openings
    timer.restirs = restirs
    return objective(late, finish, openings, restirs)
  }

  const timer: Timer = {
    lateS: 0,
    finishS: 0,
    openings: 0,
    restirs: 0,
    work: 0,
    start,
    setUp,
    setUpBucket,
    setUpS,
    setUpDecant,
    run: (order, limit) => pass(order, limit, 0),
    retry: (order, limit) => pass(order, limit, memory.goOn(order)),
    take: (order) => memory.take(order),
  }
  return timer
}
