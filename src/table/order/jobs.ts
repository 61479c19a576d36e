/** The table as the planner is asked about it: pots with their coats to come and waits, buckets, hands and their pace. */

import type { Bucket, Foresight, Hands, Odds, Plan, PlanInput } from '../../planner/types.ts'
import { forecastOf } from '../forecast/forecast.ts'
import { lastDip, nextCoat } from '../model/plan.ts'
import { otherView, potterOf } from '../model/potters.ts'
import type { Table } from '../model/state.ts'
import { panWarmsMs } from '../steps/pan-warm.ts'
import { dipStepMs, FOOT_S, potInHand } from '../steps/pot-in-hand.ts'
import { nextBucket } from '../steps/steps.ts'
import { type AtStep, stepsOf } from '../steps/work.ts'
import { loadAt } from './load-at.ts'
import { type Pace, paceOf } from './pace.ts'
import { downS, LONG_AGO_MS, LONGEST_S, potJob, upS } from './pot-jobs.ts'
import type { Schedule } from './schedule.ts'

/** Hands' time of pouring off for collars, seconds. Common practice, no source. */
const DECANT_S = 60
/** Room that stirs to come are given beside what hands need to reach their dips, s; punctual hands need less. */
const MOST_SLACK_S = 30

/** What the planner is asked, and what its answer has to be read with. */
export interface Jobs {
  readonly input: PlanInput
  readonly odds: Odds
  /** Index in its own plan of the first coat each pot was given to the planner with. */
  readonly firstCoat: Readonly<Record<string, number>>
  readonly awayMs: readonly number[]
}

/** An answer as the table reads it. */
export const scheduleFrom = (
  { input, firstCoat, awayMs }: Jobs,
  plan: Plan,
  askedAt: number,
  foresight: Foresight | null = null,
): Schedule => ({
  plan,
  ...(foresight ? { foresight } : {}),
  askedAt,
  firstCoat,
  awayMs,
  kilnDryS: Object.fromEntries(input.pots.map((pot) => [pot.id, pot.kilnDryS])),
})

/**
 * The table as the planner's question at table time `now`, ms: waits as they are likely to end, a touch will tell;
 * steps as long as they take these hands today. Waxing goes first as a block, once the pan is warm, since nobody walks
 * away from a hot one; both are taken off the hands' time. `awayMs`: how much longer each pair of hands is away.
 */
export function jobsOf(table: Table, now: number, awayMs: readonly number[] = []): Jobs {
  const steps = stepsOf(table, now)
  const waxing = table.settings.waxFirst ? steps.filter(({ step }) => step.is === 'wax') : []
  const warmsMs = waxing.length > 0 ? panWarmsMs(table, now) : 0
  const pace = paceOf(table)
  const firstCoat: Record<string, number> = {}
  const jobs = steps.flatMap((at) => {
    const place = waxing.indexOf(at)
    const waxedAt = place < 0 ? undefined : now + warmsMs + (place + 1) * pace.takesS.wax * 1000
    const job = potJob(table, at, now, waxedAt, pace)
    if (!job) return []
    firstCoat[job.job.id] = nextCoat(at.pot)
    return [job]
  })
  const pots = jobs.map(({ job }) => job)
  const used = new Set(pots.flatMap((pot) => pot.coats.map((coat) => coat.bucketId)))
  const { potters } = table.settings
  const waxS = upS(warmsMs) + Math.ceil(Math.ceil(waxing.length / potters) * pace.takesS.wax)
  const handsIn = (seen: Table): Hands => {
    const awayS = Math.ceil((awayMs[potterOf(seen)] ?? 0) / 1000)
    const hands = handsOf(seen, steps, used, now, waxS + awayS, pace)
    return awayS > 0 ? { ...hands, away: true } : hands
  }
  const input: PlanInput = {
    nowS: downS(now),
    hands: potters === 2 ? [handsIn(table), handsIn(otherView(table))] : [handsIn(table)],
    buckets: Object.keys(table.buckets)
      .filter((id) => used.has(id))
      .map((id): Bucket => bucketJob(table, id, pace)),
    pots,
    deadline: deadlineOf(table, steps, now),
    seed: 1,
  }
  const odds: Odds = {
    betweenS: pace.seenS,
    meanBetweenS: FOOT_S + Math.round(pace.laterS),
    unseen: pace.unseen,
    slackS: slackS(pace),
    pauses: pace.pauses,
    pots: Object.fromEntries(jobs.map(({ job, odds }) => [job.id, odds])),
    done: doneOf(table, steps, now),
  }
  return { input, odds, firstCoat, awayMs }
}

/** From hands free until START: a stir has to last so much longer than until a dip's step begins. */
const reachS = (pace: Pace): number => Math.max(0, Math.round(pace.laterS))
const slackS = (pace: Pace): number => Math.min(MOST_SLACK_S, reachS(pace))

const bucketJob = (table: Table, id: string, pace: Pace): Bucket => ({
  id,
  openS: Math.round(pace.takesS.open),
  restirS: Math.round(pace.takesS.restir),
  freshS: Math.max(0, Math.round(table.settings.staleMin * 60) - reachS(pace) - slackS(pace)),
  decantS: DECANT_S,
})

/** A pair of hands: busy until the pot in them is set down and `otherwiseS` more, with their open bucket. */
function handsOf(
  table: Table,
  steps: readonly AtStep[],
  used: ReadonlySet<string>,
  now: number,
  otherwiseS: number,
  pace: Pace,
): Hands {
  const counting = steps.find(
    ({ step }) => step.is === 'count' && (step.dip.hands ?? 0) === (table.potter ?? 0),
  )?.step
  const dip = counting?.is === 'count' ? counting.dip : potInHand(table, steps)?.dip
  const busyMs = dip ? dip.tappedAt + dipStepMs(table, dip) + Math.min(0, pace.laterS) * 1000 : now
  // A record may say OUT of any day to come.
  const freeAtS = Math.min((busyMs > now ? upS(busyMs) : downS(now)) + otherwiseS, downS(now) + LONGEST_S)
  const { openBucket, collar } = table
  const stirredAt = openBucket === undefined ? undefined : table.buckets[openBucket]?.stirredAt
  // Hands that have been free for a while are on their way to a dip, or wait for a pot: their card stays until the
  // table itself calls the stir stale. Those with a pot in them have all of their way before them.
  const sinceMs = Math.max(dip ? busyMs : 0, table.hits.at(-1)?.at ?? 0)
  const goes = steps.some(({ pot, step }) => step.is === 'dip' && nextBucket(table, pot) === openBucket)
  const isBusy = dip !== undefined && busyMs > now
  const thereS = isBusy || (goes && now - sinceMs < 1000) ? 0 : reachS(pace) + slackS(pace)
  return {
    freeAtS,
    open:
      openBucket === undefined || stirredAt === undefined || !used.has(openBucket)
        ? null
        : {
            bucketId: openBucket,
            // Told no younger than it is, or a dip would be planned that the table calls stale.
            stirEndS: Math.min(freeAtS, downS(now) - upS(Math.min(now - stirredAt, LONG_AGO_MS)) + thereS),
            decanted: collar?.bucketId === openBucket,
          },
  }
}

/** Pots that have all their coats, with when they are dry enough to load. */
function doneOf(table: Table, steps: readonly AtStep[], now: number): NonNullable<Odds['done']> {
  return Object.fromEntries(
    steps.flatMap(({ pot }) => {
      const dip = lastDip(pot)
      if (!dip || pot.later || nextBucket(table, pot) !== undefined) return []
      const forecast = forecastOf(table, pot)
      if (!forecast) return []
      const dry = table.settings.candle ? forecast.ready : forecast.kiln
      const afterS = (at: number) => Math.min(LONGEST_S, Math.max(0, upS(at - dip.outAt)))
      const outAtS = downS(Math.min(now, Math.max(dip.outAt, now - LONG_AGO_MS)))
      const done = { outAtS, dryS: afterS(dry.likely), dryLateS: afterS(dry.upper) }
      return [[pot.facts.potId, done]]
    }),
  )
}

function deadlineOf(table: Table, steps: readonly AtStep[], now: number): PlanInput['deadline'] {
  const at = loadAt(table, now)
  if (at === undefined) return null
  const done = Object.values(doneOf(table, steps, now)).map(({ outAtS, dryS }) => outAtS + dryS)
  return {
    // An hour of any later day says no more to an order.
    loadStartS: Math.min(downS(at), downS(now) + 4 * LONGEST_S),
    ...(done.length > 0 ? { doneDryAtS: Math.max(downS(now - LONG_AGO_MS), ...done) } : {}),
  }
}
