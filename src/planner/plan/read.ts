import { lowerBound } from '../bound/bound.ts'
import { NONE, OPEN, type Order, type Timer } from '../problem/order.ts'
import { NEVER_S, type Problem } from '../problem/problem.ts'
import { overLong } from '../timing/timing.ts'
import type { Plan, PlanAction } from '../types.ts'
import { dipReason, prepReason, setUpReason } from './reasons.ts'

/** Writes out the plan of `order`. `provenByExact`: an exhaustive search found nothing better. */
export function readPlan(problem: Problem, timer: Timer, order: Order, provenByExact: boolean): Plan {
  timer.run(order, Number.POSITIVE_INFINITY)
  const { nowS, deadline } = problem.input
  const actions: PlanAction[] = []
  for (const [position, o] of order.ops.entries()) {
    const potter = order.potter[o]!
    const startS = nowS + timer.start[o]!
    if (timer.setUp[o] !== NONE) {
      const bucket = timer.setUpBucket[o]!
      let dips = 0
      for (let j = position; j < problem.n; j++) {
        const e = order.ops[j]!
        if (order.potter[e] !== potter) continue
        if (e !== o && timer.setUp[e] !== NONE) break
        if (problem.bucket[e] === bucket) dips++
      }
      const kind = timer.setUp[o] === OPEN ? 'open' : 'restir'
      actions.push({
        kind,
        potter,
        startS: startS - timer.setUpS[o]!,
        endS: startS,
        bucketId: problem.buckets[bucket]!.id,
        decant: timer.setUpDecant[o] === 1,
        dips,
        reason: setUpReason(problem, timer, order, position),
      })
    }
    const pot = problem.pots[problem.pot[o]!]!
    const step = problem.step[o]!
    const endS = startS + problem.dur[o]!
    if (problem.bucket[o]! < 0)
      actions.push({
        kind: pot.prep[step]!.kind,
        potter,
        startS,
        endS,
        potId: pot.id,
        step,
        reason: prepReason(problem, timer, order, position),
      })
    else {
      const { reason, heldS } = dipReason(problem, timer, order, position)
      actions.push({
        kind: 'dip',
        potter,
        startS,
        endS,
        potId: pot.id,
        bucketId: problem.buckets[problem.bucket[o]!]!.id,
        coat: step,
        outS: startS + problem.out[o]!,
        heldS,
        reason,
      })
    }
  }
  actions.sort((a, b) => a.startS - b.startS || a.endS - b.endS || a.potter - b.potter)
  const finishS = problem.n === 0 ? nowS : nowS + timer.finishS
  let dryS = Number.NEGATIVE_INFINITY
  for (let o = 0; o < problem.n; o++)
    if (problem.dry[o]! >= 0) dryS = Math.max(dryS, timer.start[o]! + problem.dry[o]!)
  const dryAtS = Math.max(dryS + nowS, deadline?.doneDryAtS ?? Number.NEGATIVE_INFINITY)
  const known = Number.isFinite(dryAtS)
  const bound = lowerBound(problem)
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
    slackS: known && problem.deadlineS !== NEVER_S ? problem.deadlineS + nowS - dryAtS : null,
    openings: timer.openings,
    restirs: timer.restirs,
    overLongS: overLong(problem, timer.start),
    bound: { finishS: nowS + bound.finishS, latenessS: bound.lateS, openings: bound.openings },
    proven: provenByExact || met || problem.n === 0,
  }
}
