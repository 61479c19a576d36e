import { supersequence } from '../bound/supersequence.ts'
import type { Problem } from '../problem/problem.ts'
import type { PartialPlan } from './partial-plan.ts'

/** What a partial plan can still lead to at best. */
export interface Least {
  readonly lateS: number
  readonly finishS: number
  readonly openings: number
  readonly restirs: number
}

interface Needs {
  /** Openings that the stacks' orders of buckets ask for. */
  readonly visits: number
  /** Openings and re-stirs that the number of dips asks for, and their time. */
  readonly stirs: number
  readonly setUpS: number
}

/** Bounds of what a partial plan can still lead to. What hangs on the steps left alone is kept by the label's key. */
export function leastAhead(problem: Problem): (partial: PartialPlan) => Least {
  const dipS = problem.buckets.map((_, b) => {
    let least = Number.POSITIVE_INFINITY
    for (let o = 0; o < problem.n; o++) if (problem.bucket[o] === b) least = Math.min(least, problem.dur[o]!)
    return least
  })
  const kept = new Map<string, Needs>()
  const needsOf = (partial: PartialPlan): Needs => {
    const known = kept.get(partial.key)
    if (known) return known
    const left = problem.buckets.map(() => 0)
    const stacks = [...partial.next].map((first) => {
      const stack: number[] = []
      for (let e = first; e >= 0; e = problem.next[e]!)
        if (problem.bucket[e]! >= 0) stack.push(problem.bucket[e]!)
      for (const b of stack) left[b]!++
      return stack
    })
    const visits = supersequence(stacks, partial.at).visits.length
    let stirs = 0
    let setUpS = 0
    let buckets = 0
    let extraS = Number.POSITIVE_INFINITY
    left.forEach((dips, b) => {
      if (dips === 0) return
      const openS = problem.openS[b]!
      const restirS = Math.min(openS, problem.restirS[b]!)
      // One stir covers the dips that start within its age; of the open bucket the last stir may be fresh yet.
      const covered = Math.floor(problem.freshS[b]! / dipS[b]!) + 1
      const all = Math.ceil(dips / covered) - Number(b === partial.at)
      stirs += all
      setUpS += all * restirS
      extraS = Math.min(extraS, openS - restirS)
      if (b === partial.at) return
      buckets++
      setUpS += openS - restirS
    })
    if (visits > buckets) setUpS += (visits - buckets) * extraS
    const needs = { visits, stirs, setUpS }
    kept.set(partial.key, needs)
    return needs
  }
  return (partial) => {
    const { visits, stirs, setUpS } = needsOf(partial)
    let { lateS } = partial
    let finishS = partial.freeS + partial.workLeftS + setUpS
    for (let p = 0; p < partial.next.length; p++) {
      const o = partial.next[p]!
      if (o < 0) continue
      const b = problem.bucket[o]!
      const change = b >= 0 && b !== partial.at ? problem.openS[b]! : 0
      const startS = Math.max(partial.readyS[p]!, partial.freeS + change)
      finishS = Math.max(finishS, startS + problem.tail[o]!)
      lateS = Math.max(lateS, startS + problem.dryTail[o]! - problem.deadlineS)
    }
    const restirs = partial.restirs + Math.max(0, stirs - visits)
    return { lateS, finishS, openings: partial.openings + visits, restirs }
  }
}
