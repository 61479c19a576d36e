import type { Bucket, Coat, Hands, Plan, PlanInput, Pot, PrepStep } from '../../planner/types.ts'
import { lowerS } from '../forecast/engine-inputs.ts'
import { forecastOf, waxSetMs } from '../forecast/forecast.ts'
import { upperWaitsOf } from '../forecast/upper-waits.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import { otherView, potterOf } from '../model/potters.ts'
import type { PotState, Table } from '../model/state.ts'
import { dipStepMs, FOOT_S, potInHand } from '../steps/pot-in-hand.ts'
import { nextBucket, type Step, WIPE_DRIES_MS } from '../steps/steps.ts'
import { type AtStep, stepsOf } from '../steps/work.ts'
import type { Schedule } from './schedule.ts'

/** Hands' time of the steps around a dip, seconds. Common practice, no source; all [s]. */
const OPEN_S = 180
const RESTIR_S = 60
const DECANT_S = 60
const WAX_S = 60
const WIPE_S = 60
/** A coat left longer than a day turns powdery. Common practice, no source. */
const LONGEST_WAIT_S = 24 * 3600
/** Beyond this a coat belongs to another sitting: no order of work holds so long. */
const SITTING_MIN = 12 * 60
/** The planner's own longest time. */
const LONGEST_S = 7 * 86_400
/** An hour of the kiln that passed so long ago is forgotten. */
const DEADLINE_KEPT_MS = 12 * 3_600_000

/** Pots left half done and a bucket left open count as no longer ago than this, ms: older is no different. */
const LONG_AGO_MS = 30 * 86_400_000

/** Whole seconds of table time. */
const upS = (ms: number): number => Math.ceil(ms / 1000)
const downS = (ms: number): number => Math.floor(ms / 1000)

/** What the planner is asked, and what its answer has to be read with. */
export interface Jobs {
  readonly input: PlanInput
  /** Index in its own plan of the first coat each pot was given to the planner with. */
  readonly firstCoat: Readonly<Record<string, number>>
  readonly awayMs: readonly number[]
}

/** An answer as the table reads it. */
export const scheduleFrom = ({ input, firstCoat, awayMs }: Jobs, plan: Plan, askedAt: number): Schedule => ({
  plan,
  askedAt,
  firstCoat,
  awayMs,
  kilnDryS: Object.fromEntries(input.pots.map((pot) => [pot.id, pot.kilnDryS])),
})

/**
 * The table as the planner's question at table time `now`, ms: every wait on its late edge unless a touch said dry.
 * Waxing goes first as a block, since nobody walks away from a hot pan; it is taken off the hands' time.
 * `awayMs`: how much longer each pair of hands is away.
 */
export function jobsOf(table: Table, now: number, awayMs: readonly number[] = []): Jobs {
  const steps = stepsOf(table, now)
  const waxing = table.settings.waxFirst ? steps.filter(({ step }) => step.is === 'wax') : []
  const firstCoat: Record<string, number> = {}
  const pots = steps.flatMap((at): Pot[] => {
    const job = potJob(table, at, now, waxing.indexOf(at))
    if (!job) return []
    firstCoat[job.id] = nextCoat(at.pot)
    return [job]
  })
  const used = new Set(pots.flatMap((pot) => pot.coats.map((coat) => coat.bucketId)))
  const { potters } = table.settings
  const waxS = Math.ceil(waxing.length / potters) * WAX_S
  const handsIn = (seen: Table): Hands => {
    const awayS = Math.ceil((awayMs[potterOf(seen)] ?? 0) / 1000)
    const hands = handsOf(seen, steps, used, now, waxS + awayS)
    return awayS > 0 ? { ...hands, away: true } : hands
  }
  const input: PlanInput = {
    nowS: downS(now),
    hands: potters === 2 ? [handsIn(table), handsIn(otherView(table))] : [handsIn(table)],
    buckets: Object.keys(table.buckets)
      .filter((id) => used.has(id))
      .map((id): Bucket => bucketJob(table, id)),
    pots,
    deadline: deadlineOf(table, steps, now),
    seed: 1,
  }
  return { input, firstCoat, awayMs }
}

const bucketJob = (table: Table, id: string): Bucket => ({
  id,
  openS: OPEN_S,
  restirS: RESTIR_S,
  freshS: Math.round(table.settings.staleMin * 60),
  decantS: DECANT_S,
})

function potJob(table: Table, { pot, step }: AtStep, now: number, waxPlace: number): Pot | undefined {
  if (pot.later || step.is === 'stuck' || step.is === 'kiln' || step.is === 'foot-check') return undefined
  const ahead = upperWaitsOf(table, pot)
  const coats = coatJobs(table, pot, ahead.waitsMin)
  const last = nextCoat(pot) + coats.length - 1
  if (coats.length === 0) return undefined
  const readyMs = readyAt(table, pot, step, now, waxPlace, ahead.waitsMin)
  if (readyMs - now > SITTING_MIN * 60_000) return undefined
  const dryMin = table.settings.candle ? ahead.waitsMin[last] : ahead.kilnMin[last]
  const before = 'dip' in step ? step.dip : undefined
  return {
    id: pot.facts.potId,
    prep: prepJobs(table, pot, step, waxPlace),
    coats,
    readyAtS: readyMs > now ? upS(readyMs) : downS(now),
    ...(before ? { overLongAtS: downS(Math.max(before.outAt, now - LONG_AGO_MS)) + LONGEST_WAIT_S } : {}),
    kilnDryS: Math.min(LONGEST_S, Math.ceil((dryMin ?? 0) * 60)),
    heightMm: pot.facts.shape.heightMm,
  }
}

function coatJobs(table: Table, pot: PotState, waitsMin: readonly number[]): Coat[] {
  const coats: Coat[] = []
  for (const [i, coat] of planOf(table, pot).entries()) {
    if (i < nextCoat(pot)) continue
    if (!table.buckets[coat.bucketId]) break
    const waitMin = waitsMin[i] ?? 0
    const outAtS = Math.round(outAfterS(table, pot, coat))
    coats.push({
      bucketId: coat.bucketId,
      dipS: Math.ceil(outAtS + table.settings.dripS + FOOT_S),
      outAtS,
      waitAfterS: Math.ceil(Math.min(waitMin, SITTING_MIN) * 60),
      collar: coat.cover.kind === 'collar',
      longestWaitS: LONGEST_WAIT_S,
    })
    if (waitMin > SITTING_MIN) break
  }
  return coats
}

const outAfterS = (table: Table, pot: PotState, coat: ReturnType<typeof planOf>[number]): number =>
  table.settings.leadInS + lowerS(table, pot.facts, coat.cover) + coat.holdS

function readyAt(
  table: Table,
  pot: PotState,
  step: Step,
  now: number,
  waxPlace: number,
  waitsMin: readonly number[],
): number {
  switch (step.is) {
    case 'wax':
      return waxPlace < 0 ? now : now + (waxPlace + 1) * WAX_S * 1000 + waxSetMs(table, pot)
    case 'wax-sets':
    case 'wipe-dries':
    case 'damp-dries':
      return step.until
    // A forecast is not made while a count runs: what was expected of the coat stands in.
    case 'count':
      return step.dip.outAt + (waitsMin[step.dip.coat] ?? 0) * 60_000
    case 'drip':
    case 'foot':
      return forecastOf(table, pot)?.ready.late ?? now
    case 'wait':
    case 'touch':
      return Math.max(step.dry.late, step.askAt)
    default:
      return now
  }
}

function prepJobs(table: Table, pot: PotState, step: Step, waxPlace: number): PrepStep[] {
  // In saturated air water-based wax never sets: a sitting is as long as it can be waited for.
  const waxS = Math.ceil(Math.min(waxSetMs(table, pot), SITTING_MIN * 60_000) / 1000)
  const wax: PrepStep = { kind: 'wax', activeS: WAX_S, waitAfterS: waxS }
  const wipe: PrepStep = { kind: 'wipe', activeS: WIPE_S, waitAfterS: WIPE_DRIES_MS / 1000 }
  const { waxFirst } = table.settings
  switch (step.is) {
    case 'wax':
      return waxPlace >= 0 ? (pot.wipedAt === undefined ? [wipe] : []) : waxFirst ? [wax, wipe] : [wax]
    case 'wax-sets':
      return waxFirst && pot.wipedAt === undefined ? [wipe] : []
    case 'wipe':
      return waxFirst ? [wipe] : [wipe, wax]
    case 'wipe-dries':
      return !waxFirst && pot.waxedAt === undefined ? [wax] : []
    case 'damp-dries':
      return pot.washedAt !== undefined ? [] : waxFirst ? [wax, wipe] : [wipe, wax]
    default:
      return []
  }
}

/** A pair of hands: busy until the pot in them is set down and `otherwiseS` more, with their open bucket. */
function handsOf(
  table: Table,
  steps: readonly AtStep[],
  used: ReadonlySet<string>,
  now: number,
  otherwiseS: number,
): Hands {
  const counting = steps.find(
    ({ step }) => step.is === 'count' && (step.dip.hands ?? 0) === (table.potter ?? 0),
  )?.step
  const dip = counting?.is === 'count' ? counting.dip : potInHand(table, steps)?.dip
  const busyMs = dip ? dip.tappedAt + dipStepMs(table, dip) : now
  const freeAtS = (busyMs > now ? upS(busyMs) : downS(now)) + otherwiseS
  const { openBucket, collar } = table
  const stirredAt = openBucket === undefined ? undefined : table.buckets[openBucket]?.stirredAt
  return {
    freeAtS,
    open:
      openBucket === undefined || stirredAt === undefined || !used.has(openBucket)
        ? null
        : {
            bucketId: openBucket,
            // Told no younger than it is, or a dip would be planned that the table calls stale.
            stirEndS: downS(now) - upS(Math.min(now - stirredAt, LONG_AGO_MS)),
            decanted: collar?.bucketId === openBucket,
          },
  }
}

/** When loading begins, table time ms; undefined without an hour of the kiln, or long after it. */
export function loadAt(table: Table, now: number): number | undefined {
  const { kilnOnAt, loadMin } = table.settings
  if (kilnOnAt === null) return undefined
  const onAt = kilnOnAt - table.skewMs
  return now - onAt > DEADLINE_KEPT_MS ? undefined : onAt - loadMin * 60_000
}

function deadlineOf(table: Table, steps: readonly AtStep[], now: number): PlanInput['deadline'] {
  const at = loadAt(table, now)
  if (at === undefined) return null
  const done = steps.flatMap(({ pot, step }) => {
    if (pot.later || nextBucket(table, pot) !== undefined || step.is === 'count') return []
    const forecast = forecastOf(table, pot)
    if (!forecast) return []
    return Math.min((table.settings.candle ? forecast.ready : forecast.kiln).late, now + LONGEST_S * 1000)
  })
  return {
    loadStartS: downS(at),
    ...(done.length > 0 ? { doneDryAtS: upS(Math.max(now - LONG_AGO_MS, ...done)) } : {}),
  }
}
