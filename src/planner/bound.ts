import type { Board } from './board.ts'
import { supersequence } from './supersequence.ts'

/** Relative to now. `stirs`: openings and re-stirs together. */
export interface Bound {
  readonly finishS: number
  readonly lateS: number
  readonly openings: number
  readonly stirs: number
}

interface Job {
  readonly headS: number
  readonly workS: number
  /** From the job's end to the end of what must follow. */
  readonly tailS: number
  readonly dryTailS: number
}

/**
 * Jackson's pre-emptive schedule: of the released jobs the one with the longest tail goes first. Its length is
 * the optimum when jobs may be interrupted, so no plan with one pair of hands is shorter.
 * J. Carlier, "The one-machine sequencing problem", European J. Operational Research 11 (1982) 42-47.
 */
function preemptive(jobs: readonly Job[], tail: (job: Job) => number): number {
  const byHead = [...jobs].sort((a, b) => a.headS - b.headS)
  const waiting: { readonly tailS: number; leftS: number }[] = []
  let time = 0
  let longest = Number.NEGATIVE_INFINITY
  let k = 0
  while (k < byHead.length || waiting.length > 0) {
    if (waiting.length === 0) time = Math.max(time, byHead[k]!.headS)
    for (; k < byHead.length && byHead[k]!.headS <= time; k++) {
      const entry = { tailS: tail(byHead[k]!), leftS: byHead[k]!.workS }
      let low = waiting.length
      while (low > 0 && waiting[low - 1]!.tailS > entry.tailS) low--
      waiting.splice(low, 0, entry)
    }
    const top = waiting.at(-1)!
    const until = k < byHead.length ? byHead[k]!.headS : Number.POSITIVE_INFINITY
    const spent = Math.min(top.leftS, until - time)
    time += spent
    top.leftS -= spent
    if (top.leftS === 0) {
      waiting.pop()
      longest = Math.max(longest, time + top.tailS)
    }
  }
  return longest
}

/** Fewest stirs of each bucket beyond those done already: a stir covers the dips that start within V of it. */
function stirsOf(board: Board, b: number): number {
  let count = 0
  let shortest = Number.POSITIVE_INFINITY
  for (let o = 0; o < board.n; o++)
    if (board.bucket[o] === b) {
      count++
      shortest = Math.min(shortest, board.dur[o]!)
    }
  const fresh = board.freshS[b]!
  for (let l = 0; l < board.laneCount; l++) {
    const left = board.stirS[l]! + fresh - board.freeS[l]!
    if (board.at[l] === b && left >= 0) count -= Math.floor(left / shortest) + 1
  }
  return Math.ceil(Math.max(0, count) / (Math.floor(fresh / shortest) + 1))
}

function makeBound(board: Board): Bound {
  const { n, bucket, dur, after, release, tail, dryTail, next, laneCount } = board
  const free = Math.min(...board.freeS)
  const open = new Set(board.at)
  const head = new Int32Array(n)
  const least = board.buckets.map(() => ({
    tailS: Number.POSITIVE_INFINITY,
    dryTailS: Number.POSITIVE_INFINITY,
    collars: true,
  }))
  for (let o = 0; o < n; o++) {
    const b = bucket[o]!
    if (release[o]! >= 0) head[o] = Math.max(free, release[o]!)
    if (b >= 0) {
      if (!open.has(b)) head[o] = Math.max(head[o]!, free + board.openS[b]!)
      const each = least[b]!
      each.tailS = Math.min(each.tailS, tail[o]!)
      each.dryTailS = Math.min(each.dryTailS, dryTail[o]!)
      if (!board.collar[o]) each.collars = false
    }
    if (next[o]! >= 0) head[next[o]!] = head[o]! + after[o]!
  }
  const sequences = board.pots.map((_, p) => {
    const line: number[] = []
    for (let o = board.firstOp[p]!; o >= 0; o = next[o]!) if (bucket[o]! >= 0) line.push(bucket[o]!)
    return line
  })
  // With two pairs of hands two buckets are open at once and crossed stacks may share their visits.
  const needed = board.buckets.flatMap((_, b) => (open.has(b) ? [] : [b]))
  const openings = laneCount === 1 ? supersequence(sequences, board.at[0]!).visits.length : needed.length
  const stirs = board.buckets.map((_, b) => stirsOf(board, b))
  const jobs: Job[] = []
  for (let o = 0; o < n; o++)
    jobs.push({ headS: head[o]!, workS: dur[o]!, tailS: tail[o]! - dur[o]!, dryTailS: dryTail[o]! - dur[o]! })
  for (const b of needed) {
    const { tailS, dryTailS, collars } = least[b]!
    jobs.push({ headS: free, workS: board.openS[b]! + (collars ? board.decantS[b]! : 0), tailS, dryTailS })
  }
  const more = openings - needed.length
  const shortestOpen = Math.min(...board.openS)
  const anyTail = Math.min(...least.map((each) => each.tailS))
  const anyDry = Math.min(...least.map((each) => each.dryTailS))
  for (let k = 0; k < more; k++)
    jobs.push({ headS: free, workS: shortestOpen, tailS: anyTail, dryTailS: anyDry })
  const restirs = board.buckets
    .flatMap((_, b) =>
      Array.from({ length: Math.max(0, stirs[b]! - (open.has(b) ? 0 : 1)) }, () => ({
        headS: free,
        workS: Math.min(board.restirS[b]!, board.openS[b]!),
        tailS: least[b]!.tailS,
        dryTailS: least[b]!.dryTailS,
      })),
    )
    .sort((x, y) => x.workS - y.workS)
  if (more === 0) jobs.push(...restirs)
  // Every further opening may stand for one re-stir, nobody knows which: the shortest are left, with any tail.
  else
    for (const job of restirs.slice(0, Math.max(0, restirs.length - more)))
      jobs.push({ ...job, tailS: anyTail, dryTailS: anyDry })
  let finishS = 0
  let dryS = Number.NEGATIVE_INFINITY
  for (const job of jobs) {
    finishS = Math.max(finishS, job.headS + job.workS + job.tailS)
    dryS = Math.max(dryS, job.headS + job.workS + job.dryTailS)
  }
  if (laneCount === 1 && n > 0) {
    finishS = Math.max(
      finishS,
      preemptive(jobs, (job) => job.tailS),
    )
    dryS = Math.max(
      dryS,
      preemptive(jobs, (job) => job.dryTailS),
    )
  } else if (n > 0) {
    const work = jobs.reduce((sum, job) => sum + job.workS, 0)
    finishS = Math.max(finishS, Math.ceil((work + board.freeS[0]! + board.freeS[1]!) / 2))
  }
  return {
    finishS,
    lateS: Math.max(board.doneLateS, dryS - board.deadlineS),
    openings,
    stirs: stirs.reduce((sum, each) => sum + each, 0),
  }
}

const known = new WeakMap<Board, Bound>()

/** What no plan of this board can beat; worked out once a board. */
export function lowerBound(board: Board): Bound {
  const bound = known.get(board) ?? makeBound(board)
  known.set(board, bound)
  return bound
}
