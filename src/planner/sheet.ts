import type { Board } from './board.ts'

/** What a timing pass writes, per op; and what a return to a stretch's start has decided (`told...`). */
export const makeSheet = (n: number) => ({
  start: new Int32Array(n),
  ready: new Int32Array(n),
  /** Idle time of the hands right before the op. */
  gap: new Int32Array(n),
  setUp: new Uint8Array(n),
  setUpBucket: new Int32Array(n),
  setUpS: new Int32Array(n),
  setUpDecant: new Uint8Array(n),
  toldKind: new Uint8Array(n),
  toldBucket: new Int32Array(n),
  /** Earliest end of the stir. */
  toldEnd: new Int32Array(n),
  tries: new Uint8Array(n),
})

/** The first dip from position `i` on, -1 for none. */
export function nextDip({ bucket, n }: Board, ops: Int32Array, i: number): number {
  let j = i
  while (j < n && bucket[ops[j]!]! < 0) j++
  return j < n ? ops[j]! : -1
}

/** Hands' time without a gap from position `head` up to position `i`. */
export function packed({ dur }: Board, ops: Int32Array, head: number, i: number): number {
  let sum = 0
  for (let j = head; j < i; j++) sum += dur[ops[j]!]!
  return sum
}

/** Position of the latest op between `least` and `i` with an idle gap of `need` before it, -1 for none. */
export function latestGap(gap: Int32Array, ops: Int32Array, least: number, i: number, need: number): number {
  for (let j = i - 1; j >= least; j--) if (gap[ops[j]!]! >= need) return j
  return -1
}
