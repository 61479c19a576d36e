import type { Problem } from '../problem/problem.ts'

/**
 * A partial plan of one pair of hands. All times are the earliest for the stir's end `stirS`; should the stretch
 * be held back so that the stir ends at `x`, they become the later of themselves and `x` plus their packed part.
 */
export interface PartialPlan {
  readonly key: string
  /** Next op per pot, -1 when done. */
  readonly next: Int32Array
  readonly at: number
  readonly poured: boolean
  /** A stir waits for its first dip: any, one that is no collar, or a collar. */
  readonly due: '' | 'any' | 'plain' | 'collar'
  readonly freeS: number
  readonly stirS: number
  /** The stir's end may still be moved. */
  readonly movable: boolean
  readonly packedS: number
  readonly readyS: Int32Array
  readonly packedReadyS: Int32Array
  readonly lateS: number
  readonly packedDryS: number
  readonly openings: number
  readonly restirs: number
  readonly workLeftS: number
  readonly before: PartialPlan | null
  readonly op: number
  /** A set-up stands right before `op`. */
  readonly stirred: boolean
}

const FAR_BELOW = -1_000_000_000

/** Where a search begins: nothing done yet, the hands as the problem has them. */
export function firstPartialPlan(problem: Problem): PartialPlan {
  return {
    key: '',
    next: Int32Array.from(problem.firstOp),
    at: problem.at[0]!,
    poured: problem.decanted[0] === 1,
    due: '',
    freeS: problem.freeS[0]!,
    stirS: problem.at[0]! >= 0 ? problem.stirS[0]! : 0,
    movable: false,
    packedS: 0,
    readyS: Int32Array.from(problem.firstOp, (o) => Math.max(problem.release[o]!, problem.freeS[0]!)),
    packedReadyS: new Int32Array(problem.pots.length),
    lateS: problem.doneLateS,
    packedDryS: FAR_BELOW,
    openings: 0,
    restirs: 0,
    workLeftS: problem.workS,
    before: null,
    op: -1,
    stirred: false,
  }
}

interface SetUp {
  readonly bucket: number
  readonly open: boolean
  readonly needS: number
  readonly poured: boolean
  readonly due: PartialPlan['due']
}

/** Do `o` next, right after `setUp` or with none. Null when the glaze would be stale. */
function step(problem: Problem, from: PartialPlan, p: number, setUp: SetUp | null): PartialPlan | null {
  const o = from.next[p]!
  const dip = problem.bucket[o]! >= 0
  let { stirS, packedS, freeS, lateS, packedDryS } = from
  const readyS = from.readyS.slice()
  const packedReadyS = from.packedReadyS.slice()
  let startS: number
  let packedStart: number
  if (setUp) {
    startS = stirS = Math.max(readyS[p]!, freeS + setUp.needS)
    packedStart = 0
    packedReadyS.fill(0)
    packedDryS = FAR_BELOW
  } else {
    packedStart = Math.max(packedS, packedReadyS[p]!)
    startS = Math.max(readyS[p]!, freeS)
    const freshS = dip ? problem.freshS[problem.bucket[o]!]! : 0
    if (dip && startS - stirS > freshS) {
      if (!from.movable || packedStart > freshS) return null
      stirS = startS - freshS
      freeS = Math.max(freeS, stirS + packedS)
      for (let q = 0; q < readyS.length; q++) readyS[q] = Math.max(readyS[q]!, stirS + packedReadyS[q]!)
      lateS = Math.max(lateS, stirS + packedDryS - problem.deadlineS)
    }
  }
  packedS = packedStart + problem.dur[o]!
  freeS = startS + problem.dur[o]!
  const next = from.next.slice()
  next[p] = problem.next[o]!
  if (next[p]! >= 0) {
    readyS[p] = startS + problem.after[o]!
    packedReadyS[p] = packedStart + problem.after[o]!
  } else {
    readyS[p] = packedReadyS[p] = 0
    lateS = Math.max(lateS, startS + problem.dry[o]! - problem.deadlineS)
    packedDryS = Math.max(packedDryS, packedStart + problem.dry[o]!)
  }
  let at = setUp?.bucket ?? from.at
  let poured = setUp?.poured ?? from.poured
  let movable = setUp !== null || from.movable
  const due = dip ? '' : (setUp?.due ?? from.due)
  let used = false
  for (let q = 0; q < next.length; q++) {
    // Nothing starts before hands are free.
    if (next[q]! < 0) continue
    readyS[q] = Math.max(readyS[q]!, freeS)
    packedReadyS[q] = Math.max(packedReadyS[q]!, packedS)
    for (let e = next[q]!; e >= 0 && !used; e = problem.next[e]!) used = problem.bucket[e] === at
  }
  if (!used) {
    // The open bucket is of no more use: its stir can't tell two labels apart.
    at = -1
    poured = movable = false
    stirS = packedS = 0
    packedDryS = FAR_BELOW
    packedReadyS.fill(0)
  }
  return {
    key: `${next.join()}/${at}/${Number(poured)}${Number(movable)}${due}`,
    next,
    at,
    poured,
    due,
    freeS,
    stirS,
    movable,
    packedS,
    readyS,
    packedReadyS,
    lateS,
    packedDryS,
    openings: from.openings + Number(setUp?.open === true),
    restirs: from.restirs + Number(setUp !== null && !setUp.open),
    workLeftS: from.workLeftS - problem.dur[o]!,
    before: from,
    op: o,
    stirred: setUp !== null,
  }
}

function setUpFor(
  problem: Problem,
  from: PartialPlan,
  b: number,
  collar: boolean,
  due: PartialPlan['due'],
): SetUp {
  const open = from.at !== b
  const pour = collar && (open || !from.poured)
  const needS = (open ? problem.openS[b]! : problem.restirS[b]!) + (pour ? problem.decantS[b]! : 0)
  return { bucket: b, open, needS, poured: collar || (!open && from.poured), due }
}

/** Set-ups that may stand before a preparation step: any bucket still wanted, for its first dip. */
function earlySetUps(problem: Problem, from: PartialPlan): SetUp[] {
  if (from.due !== '') return []
  const wanted = new Map<string, SetUp>()
  for (const first of from.next)
    for (let e = first; e >= 0; e = problem.next[e]!) {
      const b = problem.bucket[e]!
      if (b < 0) continue
      const collar = problem.collar[e] === 1
      const settled = from.at === b && from.poured
      const due = settled ? 'any' : collar ? 'collar' : 'plain'
      wanted.set(`${b}${due}`, setUpFor(problem, from, b, collar, due))
    }
  return [...wanted.values()]
}

/** All ways to do one more op. Of alike pots equally far only the one ready first is taken. */
export function* extend(problem: Problem, from: PartialPlan): Generator<PartialPlan> {
  for (let p = 0; p < from.next.length; p++) {
    const o = from.next[p]!
    if (o < 0 || alikeIsSooner(problem, from, p)) continue
    const b = problem.bucket[o]!
    const plain = b < 0 ? step(problem, from, p, null) : null
    if (plain) yield plain
    if (b < 0) {
      for (const setUp of earlySetUps(problem, from)) yield step(problem, from, p, setUp)!
      continue
    }
    const collar = problem.collar[o] === 1
    const unfit = from.due === (collar ? 'plain' : 'collar')
    if (from.at === b && !unfit && !(collar && !from.poured)) {
      const on = step(problem, from, p, null)
      if (on) yield on
    }
    if (from.due === '') yield step(problem, from, p, setUpFor(problem, from, b, collar, ''))!
  }
}

function alikeIsSooner(problem: Problem, from: PartialPlan, p: number): boolean {
  const depth = from.next[p]! - problem.firstOp[p]!
  for (let q = 0; q < from.next.length; q++) {
    if (q === p || problem.kin[q] !== problem.kin[p] || from.next[q]! < 0) continue
    if (from.next[q]! - problem.firstOp[q]! !== depth) continue
    const a = from.readyS[q]! - from.readyS[p]! || from.packedReadyS[q]! - from.packedReadyS[p]!
    if (a < 0 || (a === 0 && q < p)) return true
  }
  return false
}
