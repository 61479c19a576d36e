import type { PlanInput, Pot } from '../../src/planner/index.ts'
import { layProblem, type Problem } from '../../src/planner/problem/problem.ts'
import { FULL, longestChainS } from './figures.ts'
import { plan } from './plan.ts'

/**
 * Lower bounds on the finish of one pair of hands that take longer than the planner can wait for. Each holds for
 * every plan, whatever order it has.
 */

const dipsOn = (problem: Problem): number[] =>
  Array.from({ length: problem.n }, (_, o) => o).filter((o) => problem.bucket[o]! >= 0)

/** Dips that one stir of bucket `b` covers: those that start within its age, none shorter than the shortest. */
function coveredBy(problem: Problem, b: number): number {
  const lengths = dipsOn(problem).flatMap((o) => (problem.bucket[o] === b ? [problem.dur[o]!] : []))
  return Math.floor(problem.freshS[b]! / Math.min(...lengths)) + 1
}

const stirS = (problem: Problem, b: number) => Math.min(problem.restirS[b]!, problem.openS[b]!)

/**
 * Leaving pots out of a plan leaves a plan of the others: the proven best finish of the pots with the longest
 * chains bounds the finish of all.
 */
export function fewPotsBound(input: PlanInput, most: number): number {
  const chain = (pot: Pot) => pot.readyAtS + longestChainS({ pots: [pot] })
  const sorted = [...input.pots].sort((a, b) => chain(b) - chain(a))
  for (let count = Math.min(most, sorted.length); count > 0; count--) {
    const found = plan({ ...input, deadline: null, pots: sorted.slice(0, count) })
    if (found.proven) return found.finishS - input.nowS
  }
  return 0
}

/** Earliest start of every op by its own pot and the opening of its bucket. */
function heads(problem: Problem): Int32Array {
  const head = new Int32Array(problem.n)
  const free = problem.freeS[0]!
  for (let o = 0; o < problem.n; o++) {
    const b = problem.bucket[o]!
    if (problem.release[o]! >= 0) head[o] = Math.max(free, problem.release[o]!)
    if (b >= 0 && b !== problem.at[0]) head[o] = Math.max(head[o]!, free + problem.openS[b]!)
    if (problem.next[o]! >= 0) head[problem.next[o]!] = head[o]! + problem.after[o]!
  }
  return head
}

/**
 * What openings must cost beyond re-stirs in a plan that ends by `endS`. Cut the time into pieces: of the buckets
 * whose dips have to start inside a piece all but one are opened inside it. Dynamic programming over the cuts.
 */
function openingsExtra(problem: Problem, head: Int32Array, endS: number): number {
  const extra = problem.buckets.map((_, b) => problem.openS[b]! - stirS(problem, b))
  const begin = problem.freeS[0]!
  const due = dipsOn(problem)
    .map((o) => ({ o, beforeS: endS - problem.tail[o]! + 1 }))
    .sort((a, b) => a.beforeS - b.beforeS)
  const cuts = [...new Set([begin, ...due.flatMap(({ o, beforeS }) => [head[o]!, beforeS])])]
    .filter((cut) => cut >= begin)
    .sort((a, b) => a - b)
  const least = cuts.map(() => 0)
  for (let i = 0; i < cuts.length; i++) {
    if (i > 0) least[i] = Math.max(least[i]!, least[i - 1]!)
    const seen = new Set<number>()
    let [sum, dearest, k] = [0, 0, 0]
    for (let j = i + 1; j < cuts.length; j++) {
      for (; k < due.length && due[k]!.beforeS <= cuts[j]!; k++) {
        const b = problem.bucket[due[k]!.o]!
        if (head[due[k]!.o]! < cuts[i]! || seen.has(b) || (i === 0 && b === problem.at[0])) continue
        seen.add(b)
        sum += extra[b]!
        dearest = Math.max(dearest, extra[b]!)
      }
      // At the very beginning it is known what is open.
      least[j] = Math.max(least[j]!, least[i]! + sum - (i === 0 ? 0 : dearest))
    }
  }
  return least.at(-1)!
}

/** All work, the stirs that the number of dips asks for, and the openings that the pots' windows force. */
export function windowsBound(input: PlanInput, leastS: number): number {
  const problem = layProblem({ ...input, deadline: null })
  const head = heads(problem)
  let load = problem.freeS[0]! + problem.workS
  problem.buckets.forEach((_, b) => {
    const dips = dipsOn(problem).filter((o) => problem.bucket[o] === b).length
    const stirs = Math.ceil(dips / coveredBy(problem, b)) - Number(problem.at[0] === b)
    load += stirs * stirS(problem, b)
  })
  let low = leastS - 1
  let high = Math.max(leastS, load + problem.dips * Math.max(...problem.openS))
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (load + openingsExtra(problem, head, middle) > middle) low = middle
    else high = middle
  }
  return high
}

/**
 * The least sum over dips of when they end (`front`), or of the time from their start to the end of all (not
 * `front`), with so many of each bucket, every bucket opened and stirred as needed: by dynamic programming over how
 * many of each are done. In front nothing but the hands' own bucket is open; at the back any stir may be fresh.
 */
function leastSum(
  problem: Problem,
  counts: readonly number[],
  dipS: readonly number[],
  front: boolean,
): number {
  const kinds = counts.flatMap((count, b) =>
    count > 0 ? [{ b, count, covered: coveredBy(problem, b) }] : [],
  )
  const total = counts.reduce((sum, count) => sum + count, 0)
  const strides = kinds.map((_, k) => kinds.slice(0, k).reduce((size, { count }) => size * (count + 1), 1))
  const size = kinds.reduce((product, { count }) => product * (count + 1), 1)
  const width = Math.max(...kinds.map(({ covered }) => covered)) + 1
  /** Cost to come by state, bucket at hand and dips its stir still covers. */
  const value = new Float64Array(size * kinds.length * width)
  const at = (state: number, k: number, covers: number) => (state * kinds.length + k) * width + covers
  const dipCost = (state: number, k: number, covers: number, done: number): number => {
    const { b, count } = kinds[k]!
    if (Math.floor(state / strides[k]!) % (count + 1) === count) return Number.POSITIVE_INFINITY
    const weight = front ? total - done : done + 1
    return dipS[b]! * weight + value[at(state + strides[k]!, k, covers - 1)]!
  }
  for (let state = size - 2; state >= 0; state--) {
    const done = kinds.reduce((sum, { count }, k) => sum + (Math.floor(state / strides[k]!) % (count + 1)), 0)
    const weight = front ? total - done : done
    const full = kinds.map(({ covered }, k) => dipCost(state, k, covered, done))
    const opened = Math.min(...kinds.map(({ b }, k) => problem.openS[b]! * weight + full[k]!))
    kinds.forEach(({ b, covered }, k) => {
      const stirred = Math.min(opened, problem.restirS[b]! * weight + full[k]!)
      for (let covers = 0; covers <= covered; covers++) {
        const next = covers > 0 ? dipCost(state, k, covers, done) : Number.POSITIVE_INFINITY
        value[at(state, k, covers)] = Math.min(stirred, next)
      }
    })
  }
  return Math.min(
    ...kinds.map(({ b, covered }, k) => {
      const free = !front || b === problem.at[0]
      return (free ? 0 : problem.openS[b]! * total) + dipCost(0, k, covered, 0)
    }),
  )
}

/** Larger tables of counts aren't worth their time. */
const MOST_STATES = 30_000

/**
 * No pot ends sooner than its first coat's end, its chain and what comes after its last coat's start. The mean of
 * that over the pots with the longest chains: their first coats stand in each other's way at the front, their last
 * ones at the back, and both sums can be no less than the least of all orders.
 */
export function meanBound(input: PlanInput): number {
  const problem = layProblem({ ...input, deadline: null })
  const dipS = problem.buckets.map((_, b) =>
    Math.min(...dipsOn(problem).flatMap((o) => (problem.bucket[o] === b ? [problem.dur[o]!] : []))),
  )
  const chains = problem.pots.flatMap((pot, p) => {
    const first = problem.firstOp[p]! + pot.prep.length
    const last = first + pot.coats.length - 1
    if (first === last) return []
    const betweenS = problem.tail[first]! - problem.dur[first]! - problem.dur[last]!
    return [{ first: problem.bucket[first]!, last: problem.bucket[last]!, betweenS }]
  })
  chains.sort((a, b) => b.betweenS - a.betweenS)
  const front = problem.buckets.map(() => 0)
  const back = problem.buckets.map(() => 0)
  const states = (counts: readonly number[]) => counts.reduce((size, count) => size * (count + 1), 1)
  let betweenS = 0
  let best = 0
  for (const [k, chain] of chains.entries()) {
    front[chain.first]!++
    back[chain.last]!++
    betweenS += chain.betweenS
    if (states(front) > MOST_STATES || states(back) > MOST_STATES) break
    const sum = betweenS + leastSum(problem, front, dipS, true) + leastSum(problem, back, dipS, false)
    best = Math.max(best, problem.freeS[0]! + Math.ceil(sum / (k + 1)))
  }
  return best
}

/** Pots of the few that are solved outright: more than six are seldom proven. */
const FEW = FULL ? 6 : 4

/** The best of all bounds known, seconds from now; `leastS` is the planner's own. */
export const bestBound = (input: PlanInput, leastS: number): number =>
  Math.max(windowsBound(input, leastS), meanBound(input), fewPotsBound(input, FEW))
