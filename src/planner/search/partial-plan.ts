import type { Board } from '../problem/problem.ts'

/**
 * A partial plan of one pair of hands. All times are the earliest for the stir's end `stirS`; should the stretch
 * be held back so that the stir ends at `x`, they become the later of themselves and `x` plus their packed part.
 */
export interface Label {
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
  readonly before: Label | null
  readonly op: number
  /** A set-up stands right before `op`. */
  readonly stirred: boolean
}

const FAR_BELOW = -1_000_000_000

/** Where a search begins: nothing done yet, the hands as the board has them. */
export function firstLabel(board: Board): Label {
  return {
    key: '',
    next: Int32Array.from(board.firstOp),
    at: board.at[0]!,
    poured: board.decanted[0] === 1,
    due: '',
    freeS: board.freeS[0]!,
    stirS: board.at[0]! >= 0 ? board.stirS[0]! : 0,
    movable: false,
    packedS: 0,
    readyS: Int32Array.from(board.firstOp, (o) => Math.max(board.release[o]!, board.freeS[0]!)),
    packedReadyS: new Int32Array(board.pots.length),
    lateS: board.doneLateS,
    packedDryS: FAR_BELOW,
    openings: 0,
    restirs: 0,
    workLeftS: board.workS,
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
  readonly due: Label['due']
}

/** Do `o` next, right after `setUp` or with none. Null when the glaze would be stale. */
function step(board: Board, from: Label, p: number, setUp: SetUp | null): Label | null {
  const o = from.next[p]!
  const dip = board.bucket[o]! >= 0
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
    const freshS = dip ? board.freshS[board.bucket[o]!]! : 0
    if (dip && startS - stirS > freshS) {
      if (!from.movable || packedStart > freshS) return null
      stirS = startS - freshS
      freeS = Math.max(freeS, stirS + packedS)
      for (let q = 0; q < readyS.length; q++) readyS[q] = Math.max(readyS[q]!, stirS + packedReadyS[q]!)
      lateS = Math.max(lateS, stirS + packedDryS - board.deadlineS)
    }
  }
  packedS = packedStart + board.dur[o]!
  freeS = startS + board.dur[o]!
  const next = from.next.slice()
  next[p] = board.next[o]!
  if (next[p]! >= 0) {
    readyS[p] = startS + board.after[o]!
    packedReadyS[p] = packedStart + board.after[o]!
  } else {
    readyS[p] = packedReadyS[p] = 0
    lateS = Math.max(lateS, startS + board.dry[o]! - board.deadlineS)
    packedDryS = Math.max(packedDryS, packedStart + board.dry[o]!)
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
    for (let e = next[q]!; e >= 0 && !used; e = board.next[e]!) used = board.bucket[e] === at
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
    workLeftS: from.workLeftS - board.dur[o]!,
    before: from,
    op: o,
    stirred: setUp !== null,
  }
}

function setUpFor(board: Board, from: Label, b: number, collar: boolean, due: Label['due']): SetUp {
  const open = from.at !== b
  const pour = collar && (open || !from.poured)
  const needS = (open ? board.openS[b]! : board.restirS[b]!) + (pour ? board.decantS[b]! : 0)
  return { bucket: b, open, needS, poured: collar || (!open && from.poured), due }
}

/** Set-ups that may stand before a preparation step: any bucket still wanted, for its first dip. */
function earlySetUps(board: Board, from: Label): SetUp[] {
  if (from.due !== '') return []
  const wanted = new Map<string, SetUp>()
  for (const first of from.next)
    for (let e = first; e >= 0; e = board.next[e]!) {
      const b = board.bucket[e]!
      if (b < 0) continue
      const collar = board.collar[e] === 1
      const settled = from.at === b && from.poured
      const due = settled ? 'any' : collar ? 'collar' : 'plain'
      wanted.set(`${b}${due}`, setUpFor(board, from, b, collar, due))
    }
  return [...wanted.values()]
}

/** All ways to do one more op. Of alike pots equally far only the one ready first is taken. */
export function* extend(board: Board, from: Label): Generator<Label> {
  for (let p = 0; p < from.next.length; p++) {
    const o = from.next[p]!
    if (o < 0 || alikeIsSooner(board, from, p)) continue
    const b = board.bucket[o]!
    const plain = b < 0 ? step(board, from, p, null) : null
    if (plain) yield plain
    if (b < 0) {
      for (const setUp of earlySetUps(board, from)) yield step(board, from, p, setUp)!
      continue
    }
    const collar = board.collar[o] === 1
    const unfit = from.due === (collar ? 'plain' : 'collar')
    if (from.at === b && !unfit && !(collar && !from.poured)) {
      const on = step(board, from, p, null)
      if (on) yield on
    }
    if (from.due === '') yield step(board, from, p, setUpFor(board, from, b, collar, ''))!
  }
}

function alikeIsSooner(board: Board, from: Label, p: number): boolean {
  const depth = from.next[p]! - board.firstOp[p]!
  for (let q = 0; q < from.next.length; q++) {
    if (q === p || board.kin[q] !== board.kin[p] || from.next[q]! < 0) continue
    if (from.next[q]! - board.firstOp[q]! !== depth) continue
    const a = from.readyS[q]! - from.readyS[p]! || from.packedReadyS[q]! - from.packedReadyS[p]!
    if (a < 0 || (a === 0 && q < p)) return true
  }
  return false
}
