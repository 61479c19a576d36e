import { supersequence } from '../bound/supersequence.ts'
import type { Board } from '../problem/problem.ts'
import type { Label } from './partial-plan.ts'

/** What a label can still lead to at best. */
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

/** Bounds of what a label can still lead to. What hangs on the steps left alone is kept by the label's key. */
export function leastAhead(board: Board): (label: Label) => Least {
  const dipS = board.buckets.map((_, b) => {
    let least = Number.POSITIVE_INFINITY
    for (let o = 0; o < board.n; o++) if (board.bucket[o] === b) least = Math.min(least, board.dur[o]!)
    return least
  })
  const kept = new Map<string, Needs>()
  const needsOf = (label: Label): Needs => {
    const known = kept.get(label.key)
    if (known) return known
    const left = board.buckets.map(() => 0)
    const stacks = [...label.next].map((first) => {
      const stack: number[] = []
      for (let e = first; e >= 0; e = board.next[e]!) if (board.bucket[e]! >= 0) stack.push(board.bucket[e]!)
      for (const b of stack) left[b]!++
      return stack
    })
    const visits = supersequence(stacks, label.at).visits.length
    let stirs = 0
    let setUpS = 0
    let buckets = 0
    let extraS = Number.POSITIVE_INFINITY
    left.forEach((dips, b) => {
      if (dips === 0) return
      const openS = board.openS[b]!
      const restirS = Math.min(openS, board.restirS[b]!)
      // One stir covers the dips that start within its age; of the open bucket the last stir may be fresh yet.
      const covered = Math.floor(board.freshS[b]! / dipS[b]!) + 1
      const all = Math.ceil(dips / covered) - Number(b === label.at)
      stirs += all
      setUpS += all * restirS
      extraS = Math.min(extraS, openS - restirS)
      if (b === label.at) return
      buckets++
      setUpS += openS - restirS
    })
    if (visits > buckets) setUpS += (visits - buckets) * extraS
    const needs = { visits, stirs, setUpS }
    kept.set(label.key, needs)
    return needs
  }
  return (label) => {
    const { visits, stirs, setUpS } = needsOf(label)
    let { lateS } = label
    let finishS = label.freeS + label.workLeftS + setUpS
    for (let p = 0; p < label.next.length; p++) {
      const o = label.next[p]!
      if (o < 0) continue
      const b = board.bucket[o]!
      const change = b >= 0 && b !== label.at ? board.openS[b]! : 0
      const startS = Math.max(label.readyS[p]!, label.freeS + change)
      finishS = Math.max(finishS, startS + board.tail[o]!)
      lateS = Math.max(lateS, startS + board.dryTail[o]! - board.deadlineS)
    }
    const restirs = label.restirs + Math.max(0, stirs - visits)
    return { lateS, finishS, openings: label.openings + visits, restirs }
  }
}
