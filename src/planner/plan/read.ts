import { lowerBound } from '../bound/bound.ts'
import { NONE, OPEN, type Order, type Timer } from '../problem/order.ts'
import { type Board, NEVER_S } from '../problem/problem.ts'
import { overLong } from '../timing/timing.ts'
import type { Action, Plan } from '../types.ts'
import { dipReason, prepReason, setUpReason } from './reasons.ts'

/** Writes out the plan of `order`. `provenByExact`: an exhaustive search found nothing better. */
export function readPlan(board: Board, timer: Timer, order: Order, provenByExact: boolean): Plan {
  timer.run(order, Number.POSITIVE_INFINITY)
  const { nowS, deadline } = board.input
  const actions: Action[] = []
  for (const [position, o] of order.ops.entries()) {
    const lane = order.lane[o]!
    const startS = nowS + timer.start[o]!
    if (timer.setUp[o] !== NONE) {
      const bucket = timer.setUpBucket[o]!
      let dips = 0
      for (let j = position; j < board.n; j++) {
        const e = order.ops[j]!
        if (order.lane[e] !== lane) continue
        if (e !== o && timer.setUp[e] !== NONE) break
        if (board.bucket[e] === bucket) dips++
      }
      const kind = timer.setUp[o] === OPEN ? 'open' : 'restir'
      actions.push({
        kind,
        lane,
        startS: startS - timer.setUpS[o]!,
        endS: startS,
        bucketId: board.buckets[bucket]!.id,
        decant: timer.setUpDecant[o] === 1,
        dips,
        reason: setUpReason(board, timer, order, position),
      })
    }
    const pot = board.pots[board.pot[o]!]!
    const step = board.step[o]!
    const endS = startS + board.dur[o]!
    if (board.bucket[o]! < 0)
      actions.push({
        kind: pot.prep[step]!.kind,
        lane,
        startS,
        endS,
        potId: pot.id,
        step,
        reason: prepReason(board, timer, order, position),
      })
    else {
      const { reason, heldS } = dipReason(board, timer, order, position)
      actions.push({
        kind: 'dip',
        lane,
        startS,
        endS,
        potId: pot.id,
        bucketId: board.buckets[board.bucket[o]!]!.id,
        coat: step,
        outS: startS + board.out[o]!,
        heldS,
        reason,
      })
    }
  }
  actions.sort((a, b) => a.startS - b.startS || a.endS - b.endS || a.lane - b.lane)
  const finishS = board.n === 0 ? nowS : nowS + timer.finishS
  let dryS = Number.NEGATIVE_INFINITY
  for (let o = 0; o < board.n; o++)
    if (board.dry[o]! >= 0) dryS = Math.max(dryS, timer.start[o]! + board.dry[o]!)
  const dryAtS = Math.max(dryS + nowS, deadline?.doneDryAtS ?? Number.NEGATIVE_INFINITY)
  const known = Number.isFinite(dryAtS)
  const bound = lowerBound(board)
  const met =
    timer.lateS === bound.lateS &&
    timer.finishS === bound.finishS &&
    timer.openings === bound.openings &&
    timer.restirs === Math.max(0, bound.stirs - timer.openings)
  return {
    actions,
    finishS,
    dryAtS: known ? dryAtS : null,
    latenessS: timer.lateS,
    slackS: known && board.deadlineS !== NEVER_S ? board.deadlineS + nowS - dryAtS : null,
    openings: timer.openings,
    restirs: timer.restirs,
    overLongS: overLong(board, timer.start),
    bound: { finishS: nowS + bound.finishS, latenessS: bound.lateS, openings: bound.openings },
    proven: provenByExact || met || board.n === 0,
  }
}
