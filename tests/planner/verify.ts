import type { Plan, PlanInput } from '../../src/planner/index.ts'

/**
 * Reads a plan as a stern bystander would: walks through its actions and lists every broken rule. Shares no
 * code with the planner; knows only the input and the action list.
 */
export function faults(input: PlanInput, plan: Plan): string[] {
  const found: string[] = []
  const say = (text: string) => found.push(text)
  const potOf = new Map(input.pots.map((pot) => [pot.id, pot]))
  const bucketOf = new Map(input.buckets.map((bucket) => [bucket.id, bucket]))
  const state = new Map(
    input.pots.map((pot) => [
      pot.id,
      { prep: 0, coats: 0, readyS: pot.readyAtS, lastOutS: null as number | null },
    ]),
  )
  const potters = input.hands.map((hands) => ({
    freeS: hands.freeAtS,
    open: hands.open?.bucketId ?? null,
    stirS: hands.open?.stirEndS ?? 0,
    decanted: hands.open?.decanted ?? false,
  }))
  const inBucket: { bucketId: string; startS: number; endS: number; potter: number }[] = []
  const counts: { startS: number; outS: number }[] = []
  let finishS = input.nowS
  let dryAtS = input.deadline?.doneDryAtS ?? Number.NEGATIVE_INFINITY
  let openings = 0
  let restirs = 0
  let overLongS = 0
  let last = Number.NEGATIVE_INFINITY
  for (const action of plan.actions) {
    const { kind, potter, startS, endS } = action
    const hands = potters[potter]
    if (!hands) {
      say(`no hands ${potter}`)
      continue
    }
    if (startS < last) say(`actions out of order at ${startS}`)
    last = startS
    if (!Number.isInteger(startS) || !Number.isInteger(endS)) say(`${kind} not in whole seconds`)
    if (startS < hands.freeS) say(`${kind} at ${startS} while hands ${potter} are busy until ${hands.freeS}`)
    hands.freeS = endS
    if (kind === 'open' || kind === 'restir') {
      const bucket = bucketOf.get(action.bucketId)!
      const least = (kind === 'open' ? bucket.openS : bucket.restirS) + (action.decant ? bucket.decantS : 0)
      if (endS - startS !== least) say(`${kind} ${bucket.id} takes ${endS - startS}, not ${least}`)
      if (kind === 'open') {
        openings++
        for (const other of potters) if (other !== hands && other.open === bucket.id) other.open = null
        hands.open = bucket.id
        hands.decanted = action.decant
      } else {
        restirs++
        if (hands.open !== bucket.id) say(`re-stir of ${bucket.id} that is not open`)
        hands.decanted ||= action.decant
      }
      hands.stirS = endS
      inBucket.push({ bucketId: bucket.id, startS, endS, potter })
      continue
    }
    if (!('potId' in action)) continue
    const pot = potOf.get(action.potId)!
    const of = state.get(action.potId)!
    if (startS < of.readyS) say(`${kind} ${pot.id} at ${startS}, ready only at ${of.readyS}`)
    if ('step' in action) {
      const step = pot.prep[action.step]
      if (action.step !== of.prep || step?.kind !== kind) say(`${pot.id}: ${kind} out of turn`)
      else if (endS - startS !== step.activeS) say(`${pot.id}: ${kind} takes ${endS - startS}`)
      of.prep++
      of.readyS = endS + (step?.waitAfterS ?? 0)
      continue
    }
    const coat = pot.coats[action.coat]
    if (of.prep < pot.prep.length) say(`${pot.id} dipped before its preparation`)
    if (!coat || action.coat !== of.coats || coat.bucketId !== action.bucketId) {
      say(`${pot.id}: coat ${action.coat} out of turn`)
      continue
    }
    const bucket = bucketOf.get(coat.bucketId)!
    if (endS - startS !== coat.dipS || action.outS !== startS + coat.outAtS)
      say(`${pot.id}: dip of wrong length`)
    if (hands.open !== bucket.id) say(`${pot.id} into ${bucket.id} that is not open`)
    if (startS - hands.stirS > bucket.freshS) say(`${pot.id} into stale ${bucket.id}`)
    if (coat.collar && !hands.decanted) say(`${pot.id}: collar without glaze poured off`)
    const latest =
      of.coats === 0
        ? pot.overLongAtS
        : coat.longestWaitS === undefined
          ? undefined
          : of.lastOutS! + coat.longestWaitS
    if (latest !== undefined) overLongS += Math.max(0, startS - latest)
    of.coats++
    of.lastOutS = action.outS
    of.readyS = Math.max(endS, action.outS + coat.waitAfterS)
    finishS = Math.max(finishS, endS)
    if (of.coats === pot.coats.length) dryAtS = Math.max(dryAtS, action.outS + pot.kilnDryS)
    inBucket.push({ bucketId: bucket.id, startS, endS, potter })
    counts.push({ startS, outS: action.outS })
  }
  for (const pot of input.pots) {
    const of = state.get(pot.id)!
    if (of.prep !== pot.prep.length || of.coats !== pot.coats.length)
      say(`${pot.id} has ${of.coats} of ${pot.coats.length} coats`)
  }
  for (const [k, a] of inBucket.entries())
    for (const b of inBucket.slice(k + 1))
      if (a.potter !== b.potter && a.bucketId === b.bucketId && a.startS < b.endS && b.startS < a.endS)
        say(`two pairs of hands in ${a.bucketId} at ${Math.max(a.startS, b.startS)}`)
  for (const [k, a] of counts.entries())
    for (const b of counts.slice(k + 1))
      if (a.startS < b.outS && b.startS < a.outS) say(`two counts at ${b.startS}`)
  const slackS = input.deadline && Number.isFinite(dryAtS) ? input.deadline.loadStartS - dryAtS : null
  const told: [string, unknown, unknown][] = [
    ['finishS', plan.finishS, finishS],
    ['openings', plan.openings, openings],
    ['restirs', plan.restirs, restirs],
    ['overLongS', plan.overLongS, overLongS],
    ['dryAtS', plan.dryAtS, Number.isFinite(dryAtS) ? dryAtS : null],
    ['slackS', plan.slackS, slackS],
    ['latenessS', plan.latenessS, slackS === null ? 0 : Math.max(0, -slackS)],
  ]
  for (const [name, said, seen] of told) if (said !== seen) say(`${name} said ${said}, seen ${seen}`)
  if (plan.finishS < plan.bound.finishS) say(`finish ${plan.finishS} below the bound ${plan.bound.finishS}`)
  if (plan.latenessS < plan.bound.latenessS) say(`lateness below the bound`)
  if (plan.openings < plan.bound.openings) say(`openings below the bound`)
  return found
}
