import type { Bucket, PlanInput, Pot } from '../types.ts'
import { checkInput } from './check.ts'

/** "No deadline" and "never" in whole seconds; sums of a few still fit 31 bits. */
export const NEVER_S = 400_000_000

/**
 * The input as flat arrays, times relative to now. An *op* is one step that takes hands (preparation or dip);
 * a pot's ops are neighbours in index and follow each other. Buckets and pots are put into an order that
 * depends on what they are and not on their names, so that renaming or re-listing changes nothing but ties.
 */
export interface Problem {
  readonly input: PlanInput
  readonly n: number
  readonly pots: readonly Pot[]
  readonly buckets: readonly Bucket[]
  readonly potterCount: number
  // per op
  readonly pot: Int32Array
  /** -1 for preparation. */
  readonly bucket: Int32Array
  readonly dur: Int32Array
  readonly out: Int32Array
  /** From start to the earliest start of the pot's next op. */
  readonly after: Int32Array
  readonly next: Int32Array
  readonly collar: Uint8Array
  /** Release of a pot's first op, -1 for the others. */
  readonly release: Int32Array
  /** From start to kiln-dry for a pot's last op, -1 for the others. */
  readonly dry: Int32Array
  /** From start to the end of the pot's last dip at the earliest. */
  readonly tail: Int32Array
  /** From start to kiln-dry at the earliest. */
  readonly dryTail: Int32Array
  /** Index into `prep` or `coats`. */
  readonly step: Int32Array
  readonly firstOp: Int32Array
  /** Pots with equal numbers are alike in all but name and ready time. */
  readonly kin: Int32Array
  // per bucket
  readonly openS: Int32Array
  readonly restirS: Int32Array
  readonly freshS: Int32Array
  readonly decantS: Int32Array
  // per potter
  readonly freeS: Int32Array
  /** -1 for none. */
  readonly at: Int32Array
  readonly stirS: Int32Array
  readonly decanted: Uint8Array
  /** Relative to now; NEVER_S without a deadline. */
  readonly deadlineS: number
  /** Lateness that no order can mend. */
  readonly doneLateS: number
  readonly workS: number
  readonly dips: number
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

function sortedBuckets(input: PlanInput): Bucket[] {
  const key = (bucket: Bucket) => {
    const uses = input.pots
      .flatMap((pot) => pot.coats.map((coat, k) => ({ pot, coat, k })))
      .filter((use) => use.coat.bucketId === bucket.id)
      .map(({ pot, coat, k }) =>
        [k, pot.coats.length, pot.readyAtS - input.nowS, coat.dipS, coat.waitAfterS].join(':'),
      )
      .sort()
    const open = input.hands.map((hands) => hands.open?.bucketId === bucket.id)
    const { openS, restirS, freshS, decantS, darkness } = bucket
    return JSON.stringify([open, openS, restirS, freshS, decantS, darkness ?? 0, uses])
  }
  return input.buckets
    .filter((bucket) => input.pots.some((pot) => pot.coats.some((coat) => coat.bucketId === bucket.id)))
    .map((bucket) => ({ bucket, key: key(bucket) }))
    .sort((a, b) => compare(a.key, b.key))
    .map(({ bucket }) => bucket)
}

/** Runny and tall first, so that ties fall their way; then by what is left to do. */
function potKey(pot: Pot, bucketIndex: ReadonlyMap<string, number>): string {
  const coats = pot.coats.map((coat) => [
    bucketIndex.get(coat.bucketId),
    coat.dipS,
    coat.outAtS,
    coat.waitAfterS,
    coat.collar,
    coat.longestWaitS ?? -1,
  ])
  const prep = pot.prep.map((step) => [step.kind, step.activeS, step.waitAfterS])
  return JSON.stringify([prep, coats, pot.kilnDryS, pot.overLongAtS ?? -1])
}

function sortedPots(input: PlanInput, bucketIndex: ReadonlyMap<string, number>) {
  return input.pots
    .map((pot) => ({ pot, key: potKey(pot, bucketIndex) }))
    .sort(
      (a, b) =>
        Number(b.pot.runny ?? false) - Number(a.pot.runny ?? false) ||
        (b.pot.heightMm ?? 0) - (a.pot.heightMm ?? 0) ||
        compare(a.key, b.key) ||
        a.pot.readyAtS - b.pot.readyAtS,
    )
}

/** @throws RangeError as `checkInput`. */
export function layProblem(input: PlanInput): Problem {
  checkInput(input)
  const buckets = sortedBuckets(input)
  const bucketIndex = new Map(buckets.map((bucket, index) => [bucket.id, index]))
  const rows = sortedPots(input, bucketIndex)
  const n = rows.reduce((sum, { pot }) => sum + pot.prep.length + pot.coats.length, 0)
  const ints = () => new Int32Array(n)
  const op = {
    pot: ints(),
    bucket: ints().fill(-1),
    dur: ints(),
    out: ints(),
    after: ints(),
    next: ints().fill(-1),
    collar: new Uint8Array(n),
    release: ints().fill(-1),
    dry: ints().fill(-1),
    tail: ints(),
    dryTail: ints(),
    step: ints(),
  }
  const kinOf = new Map<string, number>()
  const firstOp = new Int32Array(rows.length)
  const kin = new Int32Array(rows.length)
  let o = 0
  rows.forEach(({ pot, key }, p) => {
    firstOp[p] = o
    kin[p] = kinOf.get(key) ?? kinOf.set(key, kinOf.size).size - 1
    op.release[o] = Math.max(0, pot.readyAtS - input.nowS)
    for (const [k, step] of pot.prep.entries()) {
      op.dur[o] = op.out[o] = step.activeS
      op.after[o] = step.activeS + step.waitAfterS
      op.step[o] = k
      op.pot[o++] = p
    }
    for (const [k, coat] of pot.coats.entries()) {
      op.bucket[o] = bucketIndex.get(coat.bucketId)!
      op.dur[o] = coat.dipS
      op.out[o] = coat.outAtS
      // A wait shorter than the rest of the dip step can't bring the pot back before it is set down.
      op.after[o] = Math.max(coat.dipS, coat.outAtS + coat.waitAfterS)
      op.collar[o] = Number(coat.collar)
      op.step[o] = k
      op.pot[o++] = p
    }
    for (let k = o - 1; k >= firstOp[p]!; k--) {
      const last = k === o - 1
      op.next[k] = last ? -1 : k + 1
      if (last) op.dry[k] = op.out[k]! + pot.kilnDryS
      op.tail[k] = last ? op.dur[k]! : op.after[k]! + op.tail[k + 1]!
      op.dryTail[k] = last ? op.dry[k]! : op.after[k]! + op.dryTail[k + 1]!
    }
  })
  const perBucket = (of: (bucket: Bucket) => number) => Int32Array.from(buckets, of)
  const { hands, deadline, nowS } = input
  return {
    ...op,
    input,
    n,
    pots: rows.map(({ pot }) => pot),
    buckets,
    potterCount: hands.length,
    firstOp,
    kin,
    openS: perBucket((bucket) => bucket.openS),
    restirS: perBucket((bucket) => bucket.restirS),
    freshS: perBucket((bucket) => bucket.freshS),
    decantS: perBucket((bucket) => bucket.decantS),
    freeS: Int32Array.from(hands, (each) => each.freeAtS - nowS),
    at: Int32Array.from(hands, (each) => (each.open && bucketIndex.get(each.open.bucketId)) ?? -1),
    stirS: Int32Array.from(hands, (each) => (each.open ? each.open.stirEndS - nowS : 0)),
    decanted: Uint8Array.from(hands, (each) => Number(each.open?.decanted ?? false)),
    deadlineS: deadline ? deadline.loadStartS - nowS : NEVER_S,
    doneLateS:
      deadline?.doneDryAtS === undefined ? 0 : Math.max(0, deadline.doneDryAtS - deadline.loadStartS),
    workS: op.dur.reduce((sum, each) => sum + each, 0),
    dips: rows.reduce((sum, { pot }) => sum + pot.coats.length, 0),
  }
}
