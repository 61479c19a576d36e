import { NONE, OPEN, objective, RESTIR, STIR, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { cure, HOLD_BACK, makeSheet, nextDip, openEarlier } from './sheet.ts'

/**
 * As `timerForOne` for two pairs of hands: each has its own stretch, a bucket is with one of them at a time, and
 * no two counts overlap. To hold, the pass begins again.
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
  // Per potter: free from, bucket at hand, stir's end, poured off; and the same at the current stretch's start.
  const free = new Int32Array(potterCount)
  const at = new Int32Array(potterCount)
  const stir = new Int32Array(potterCount)
  const poured = new Uint8Array(potterCount)
  const from = new Int32Array(potterCount)
  // Per bucket: whose hands have it, end of the last dip in it.
  const holder = new Int32Array(problem.buckets.length)
  const busy = new Int32Array(problem.buckets.length)
  let countFree = 0

  const clear = () => {
    ready.set(release)
    holder.fill(-1)
    busy.fill(0)
    countFree = 0
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
    run(order, limit) {
      const { ops, potter, wish } = order
      clear()
      fixedKind.fill(NONE)
      tries.fill(0)
      let openings = 0
      let restirs = 0
      let late = doneLateS
      let finish = 0
      let left = workS
      for (let i = 0; i < n; i++) {
        timer.work++
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
            clear()
            openings = restirs = 0
            late = doneLateS
            finish = 0
            left = workS
            i = -1
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
    },
    retry: (order, limit) => timer.run(order, limit),
    take() {},
  }
  return timer
}
