import type { Problem } from '../problem/problem.ts'
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

/**
 * The stirs a bucket needs beyond those done already, in the order of time: a stir covers the dips that start
 * within V of it. After stir j at least the dips are left that j - 1 stirs can't have covered, and with them at
 * least the longest of as many shortest tails.
 */
function stirsOf(problem: Problem, b: number): { readonly tailS: number; readonly dryTailS: number }[] {
  const ops: number[] = []
  let shortest = Number.POSITIVE_INFINITY
  for (let o = 0; o < problem.n; o++)
    if (problem.bucket[o] === b) {
      ops.push(o)
      shortest = Math.min(shortest, problem.dur[o]!)
    }
  const fresh = problem.freshS[b]!
  let left = ops.length
  for (let l = 0; l < problem.potterCount; l++) {
    const freshFor = problem.stirS[l]! + fresh - problem.freeS[l]!
    if (problem.at[l] === b && freshFor >= 0) left -= Math.floor(freshFor / shortest) + 1
  }
  const sorted = (chain: Int32Array) => Int32Array.from(ops, (o) => chain[o]!).sort()
  const tails = sorted(problem.tail)
  const dryTails = sorted(problem.dryTail)
  const stirs: { tailS: number; dryTailS: number }[] = []
  for (; left > 0; left -= Math.floor(fresh / shortest) + 1)
    stirs.push({ tailS: tails[left - 1]!, dryTailS: dryTails[left - 1]! })
  return stirs
}

function makeBound(problem: Problem): Bound {
  const { n, bucket, dur, after, release, tail, dryTail, next, potterCount } = problem
  const free = Math.min(...problem.freeS)
  const open = new Set(problem.at)
  const head = new Int32Array(n)
  let anyTail = Number.POSITIVE_INFINITY
  let anyDry = Number.POSITIVE_INFINITY
  const plain = new Set<number>()
  for (let o = 0; o < n; o++) {
    const b = bucket[o]!
    if (release[o]! >= 0) head[o] = Math.max(free, release[o]!)
    if (b >= 0) {
      if (!open.has(b)) head[o] = Math.max(head[o]!, free + problem.openS[b]!)
      anyTail = Math.min(anyTail, tail[o]!)
      anyDry = Math.min(anyDry, dryTail[o]!)
      if (!problem.collar[o]) plain.add(b)
    }
    if (next[o]! >= 0) head[next[o]!] = head[o]! + after[o]!
  }
  const sequences = problem.pots.map((_, p) => {
    const line: number[] = []
    for (let o = problem.firstOp[p]!; o >= 0; o = next[o]!) if (bucket[o]! >= 0) line.push(bucket[o]!)
    return line
  })
  // With two pairs of hands two buckets are open at once and crossed stacks may share their visits.
  const needed = problem.buckets.flatMap((_, b) => (open.has(b) ? [] : [b]))
  const openings = potterCount === 1 ? supersequence(sequences, problem.at[0]!).visits.length : needed.length
  const stirs = problem.buckets.map((_, b) => stirsOf(problem, b))
  const jobs: Job[] = []
  for (let o = 0; o < n; o++)
    jobs.push({ headS: head[o]!, workS: dur[o]!, tailS: tail[o]! - dur[o]!, dryTailS: dryTail[o]! - dur[o]! })
  // Every stir takes at least as long as a re-stir, the first of a bucket that isn't open as long as an opening.
  const restirS = (b: number) => Math.min(problem.restirS[b]!, problem.openS[b]!)
  stirs.forEach((each, b) => {
    each.forEach((stir, j) => {
      const opens = j === 0 && !open.has(b)
      const pourS = plain.has(b) ? 0 : problem.decantS[b]!
      jobs.push({ headS: free, workS: opens ? problem.openS[b]! + pourS : restirS(b), ...stir })
    })
  })
  // Nobody knows which stirs the further openings are: what they take more than a re-stir comes on top.
  const extraS = Math.min(...problem.buckets.map((_, b) => problem.openS[b]! - restirS(b)))
  for (let k = needed.length; k < openings; k++)
    jobs.push({ headS: free, workS: extraS, tailS: anyTail, dryTailS: anyDry })
  let finishS = 0
  let dryS = Number.NEGATIVE_INFINITY
  for (const job of jobs) {
    finishS = Math.max(finishS, job.headS + job.workS + job.tailS)
    dryS = Math.max(dryS, job.headS + job.workS + job.dryTailS)
  }
  if (potterCount === 1 && n > 0) {
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
    finishS = Math.max(finishS, Math.ceil((work + problem.freeS[0]! + problem.freeS[1]!) / 2))
  }
  return {
    finishS,
    lateS: Math.max(problem.doneLateS, dryS - problem.deadlineS),
    openings,
    stirs: stirs.reduce((sum, each) => sum + each.length, 0),
  }
}

const known = new WeakMap<Problem, Bound>()

/** What no plan of this problem can beat; worked out once a problem. */
export function lowerBound(problem: Problem): Bound {
  const bound = known.get(problem) ?? makeBound(problem)
  known.set(problem, bound)
  return bound
}
