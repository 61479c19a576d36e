import { HOLD, HOLD_TRIES, NONE, type Order, STIR } from '../problem/order.ts'
import type { Problem } from '../problem/problem.ts'

/** What a timing pass writes, per op; and what a return to a stretch's start has decided (`fixed...`). */
export const makeSheet = (n: number) => ({
  start: new Int32Array(n),
  ready: new Int32Array(n),
  /** Idle time of the hands right before the op. */
  gap: new Int32Array(n),
  setUp: new Uint8Array(n),
  setUpBucket: new Int32Array(n),
  setUpS: new Int32Array(n),
  setUpDecant: new Uint8Array(n),
  fixedKind: new Uint8Array(n),
  fixedBucket: new Int32Array(n),
  /** Earliest end of the stir. */
  fixedEnd: new Int32Array(n),
  tries: new Uint8Array(n),
})

export type Sheet = ReturnType<typeof makeSheet>

/** The first dip of potter `l` from position `i` on, -1 for none. */
export function nextDip({ bucket, n }: Problem, { ops, potter }: Order, l: number, i: number): number {
  for (let j = i; j < n; j++) if (potter[ops[j]!] === l && bucket[ops[j]!]! >= 0) return ops[j]!
  return -1
}

/** Time without a gap of the hands of potter `l` from position `head` up to position `i`. */
export function packed({ dur }: Problem, { ops, potter }: Order, l: number, head: number, i: number): number {
  let sum = 0
  for (let j = head; j < i; j++) if (potter[ops[j]!] === l) sum += dur[ops[j]!]!
  return sum
}

/** Position of the latest op of potter `l` from `least` to `i` with an idle gap of `need` before it, -1 for none. */
function latestGap(sheet: Sheet, { ops, potter }: Order, l: number, least: number, i: number, need: number) {
  for (let j = i - 1; j >= least; j--) if (potter[ops[j]!] === l && sheet.gap[ops[j]!]! >= need) return j
  return -1
}

/**
 * Hands idle before preparation steps right before the dip at `i`: the position to open the dip's bucket at, -1
 * for none. There it costs nothing, and the stir still covers the dip, which would start at `s` with no set-up.
 */
export function openEarlier(
  problem: Problem,
  sheet: Sheet,
  order: Order,
  l: number,
  i: number,
  s: number,
  free: number,
): number {
  const { ops, potter, wish } = order
  const o = ops[i]!
  if (i === 0 || wish[o] === STIR || problem.bucket[ops[i - 1]!]! >= 0) return -1
  const b = problem.bucket[o]!
  const need = problem.openS[b]! + (problem.collar[o] ? problem.decantS[b]! : 0)
  if (s >= free + need) return -1
  let first = i
  while (first > 0 && (potter[ops[first - 1]!] !== l || problem.bucket[ops[first - 1]!]! < 0)) first--
  const j = latestGap(sheet, order, l, first, i, need)
  return j >= 0 && s - sheet.start[ops[j]!]! <= problem.freshS[b]! ? j : -1
}

/** Cures of a stale dip that are no early re-stir. */
export const HOLD_BACK = -1
const STIR_NOW = -2

/**
 * What to do for the dip at `i` that would be stale at `s`. In turn: re-stir right before it if hands are idle
 * long enough; re-stir in the latest idle gap that still covers it; hold the stretch's first op (at `head`, -1:
 * begun before now) back where that doesn't delay this dip; re-stir anyway. A wish to hold comes first.
 * @returns position of an op to re-stir before, HOLD_BACK or STIR_NOW.
 */
export function cure(
  problem: Problem,
  sheet: Sheet,
  order: Order,
  l: number,
  head: number,
  i: number,
  s: number,
  free: number,
): number {
  const { ops, wish } = order
  const b = problem.bucket[ops[i]!]!
  const fresh = problem.freshS[b]!
  const mayHold =
    head >= 0 && sheet.tries[ops[head]!]! < HOLD_TRIES && packed(problem, order, l, head, i) <= fresh
  if (mayHold && wish[ops[i]!] === HOLD) return HOLD_BACK
  if (s - free >= problem.restirS[b]!) return STIR_NOW
  const j = latestGap(sheet, order, l, head + 1, i, problem.restirS[b]!)
  if (j >= 0 && sheet.setUp[ops[j]!] === NONE && s - sheet.start[ops[j]!]! <= fresh) return j
  return mayHold ? HOLD_BACK : STIR_NOW
}
