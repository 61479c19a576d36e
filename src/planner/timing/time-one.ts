import { NONE, OPEN, type Order, objective, RESTIR, STIR, type Timer } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'
import { cure, HOLD_BACK, makeSheet, nextDip, openEarlier, packed } from './sheet.ts'

/** Numbers kept per position where a stretch begins: what a pass needs to go on from there. */
const KEPT = 8

/**
 * Times a given order for one pair of hands in one pass. Every op starts as early as hands, pot and glaze allow,
 * in the order given. A stretch is what one stir covers; `cure` says what happens to a dip that would be stale.
 * To hold, the pass goes back to the stretch's start. `retry` goes on from the last stretch that begins where the
 * two orders are still the same.
 */
export function timerForOne(problem: Problem): Timer {
  const { n, bucket, dur, after, next, collar, tail, dryTail, release, openS, restirS, freshS, decantS } =
    problem
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
  // The order taken: what it was, its ready times, and the state at the start of each stretch (free -1: none).
  const base: Order = { ops: new Int32Array(n).fill(-1), potter: new Uint8Array(n), wish: new Uint8Array(n) }
  const baseReady = new Int32Array(n)
  const baseKept = new Int32Array(n * KEPT).fill(-1)
  const kept = new Int32Array(n * KEPT)

  const pass = (order: Order, limit: number, begin: number): number => {
    const { ops, wish } = order
    let free = problem.freeS[0]!
    let at = problem.at[0]!
    let stir = problem.stirS[0]!
    let poured = problem.decanted[0]!
    let openings = 0
    let restirs = 0
    let late = doneLateS
    let finish = 0
    let left = workS
    if (begin > 0) {
      const k = begin * KEPT
      free = baseKept[k]!
      at = baseKept[k + 1]!
      poured = baseKept[k + 2]!
      openings = baseKept[k + 3]!
      restirs = baseKept[k + 4]!
      late = baseKept[k + 5]!
      finish = baseKept[k + 6]!
      left = baseKept[k + 7]!
    }
    // The stretch: position of its first op (-1: begun before now), and the state before its set-up.
    let head = -1
    let headFree = 0
    let headAt = -1
    let headPoured = 0
    let [headOpenings, headRestirs, headLeft] = [0, 0, 0]
    let holder = -1
    for (let i = begin; i < n; i++) {
      timer.work++
      const o = ops[i]!
      const b = bucket[o]!
      const R = ready[o]!
      if (R < 0) return Number.POSITIVE_INFINITY
      let kind = NONE
      let target = b
      let early = -1
      if (fixedKind[o] !== NONE) {
        kind = fixedKind[o]!
        target = fixedBucket[o]!
      } else if (b < 0) {
        if (wish[o] === STIR) {
          const dip = nextDip(problem, order, 0, i)
          if (dip >= 0) {
            target = bucket[dip]!
            kind = at === target ? RESTIR : OPEN
          }
        }
      } else if (at !== b) {
        early = openEarlier(problem, sheet, order, 0, i, Math.max(R, free), free)
        kind = early < 0 ? OPEN : NONE
      } else if (wish[o] === STIR || (collar[o] && !poured)) kind = RESTIR
      let s = Math.max(R, free)
      if (kind === NONE && early < 0 && b >= 0 && s - stir > freshS[b]!) {
        const how = cure(problem, sheet, order, 0, head, i, s, free)
        if (how >= 0) early = how
        else if (how !== HOLD_BACK) kind = RESTIR
        else {
          const first = ops[head]!
          tries[first]!++
          fixedKind[first] = setUp[first]!
          fixedBucket[first] = b
          fixedEnd[first] = s - freshS[b]!
          holder = Math.max(holder, i)
          free = headFree
          at = headAt
          poured = headPoured
          openings = headOpenings
          restirs = headRestirs
          left = headLeft
          i = head - 1
          continue
        }
      }
      if (early >= 0) {
        // A set-up in an idle gap before op `e`: no time moves, but a new stretch begins there.
        const e = ops[early]!
        const opens = at !== b
        const pours = opens && collar[o] === 1
        head = early
        headFree = start[e]! - gap[e]!
        headAt = at
        headPoured = poured
        headOpenings = openings
        headRestirs = restirs
        headLeft = left + packed(problem, order, 0, early, i)
        setUp[e] = opens ? OPEN : RESTIR
        setUpBucket[e] = b
        setUpS[e] = (opens ? openS[b]! : restirS[b]!) + (pours ? decantS[b]! : 0)
        setUpDecant[e] = Number(pours)
        stir = start[e]!
        if (opens) {
          openings++
          poured = Number(pours)
          at = b
        } else restirs++
      }
      if (kind === NONE) {
        kept[i * KEPT] = -1
        setUp[o] = NONE
        gap[o] = s - free
      } else {
        const decant = collar[b >= 0 ? o : nextDip(problem, order, 0, i)]!
        const pour = decant === 1 && !(kind === RESTIR && poured === 1)
        const need = (kind === OPEN ? openS[target]! : restirS[target]!) + (pour ? decantS[target]! : 0)
        const k = i * KEPT
        // Nothing is kept where what comes later reaches back: an early set-up before preparation steps, or a
        // stretch that this op or a later one has held back.
        if (fixedKind[o] === NONE) {
          kept[k] = i > 0 && holder < i && bucket[ops[i - 1]!]! >= 0 ? free : -1
          kept[k + 1] = at
          kept[k + 2] = poured
          kept[k + 3] = openings
          kept[k + 4] = restirs
          kept[k + 5] = late
          kept[k + 6] = finish
          kept[k + 7] = left
        }
        s = Math.max(free + need, R)
        if (fixedKind[o] !== NONE && s < fixedEnd[o]!) s = fixedEnd[o]!
        head = i
        headFree = free
        headAt = at
        headPoured = poured
        headOpenings = openings
        headRestirs = restirs
        headLeft = left
        setUp[o] = kind
        setUpBucket[o] = target
        setUpS[o] = need
        setUpDecant[o] = Number(pour)
        if (kind === OPEN) {
          openings++
          poured = decant
        } else {
          restirs++
          if (decant) poured = 1
        }
        stir = s
        at = target
        gap[o] = 0
      }
      start[o] = s
      free = s + dur[o]!
      left -= dur[o]!
      const nx = next[o]!
      if (nx >= 0) ready[nx] = s + after[o]!
      // What the pot has still before it counts at once, so that a bad order is dropped early.
      const over = s + dryTail[o]! - deadlineS
      if (over > late) late = over
      const end = s + tail[o]!
      if (end > finish) finish = end
      if (objective(late, Math.max(free + left, finish), openings, restirs) > limit)
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
    run(order, limit) {
      ready.set(release)
      fixedKind.fill(NONE)
      tries.fill(0)
      return pass(order, limit, 0)
    },
    retry(order, limit) {
      const { ops, wish } = order
      let same = 0
      while (same < n && base.ops[same] === ops[same] && base.wish[ops[same]!] === wish[ops[same]!]) same++
      // The op that begins the stretch must be the same in both, so that it begins in both.
      if (same > 0) same--
      while (same > 0 && baseKept[same * KEPT]! < 0) same--
      ready.set(same > 0 ? baseReady : release)
      if (same > 0) for (let i = same; i < n; i++) if (next[ops[i]!]! >= 0) ready[next[ops[i]!]!] = -1
      fixedKind.fill(NONE)
      tries.fill(0)
      kept.set(baseKept.subarray(0, (same + 1) * KEPT))
      const first = ops[same]!
      if (same > 0 && bucket[first]! >= 0) {
        // It began for reasons that lie before it; they are not looked into again.
        fixedKind[first] = baseKept[same * KEPT + 1] === bucket[first] ? RESTIR : OPEN
        fixedBucket[first] = bucket[first]!
        fixedEnd[first] = 0
      }
      return pass(order, limit, same)
    },
    take(order) {
      base.ops.set(order.ops)
      base.wish.set(order.wish)
      baseReady.set(ready)
      baseKept.set(kept)
    },
  }
  return timer
}
