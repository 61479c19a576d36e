import type { Coat, Odds, Pot, PrepStep } from '../../planner/types.ts'
import { type BandMs, forecastOf, waxSetMs } from '../forecast/forecast.ts'
import { lowerS } from '../forecast/shape-inputs.ts'
import { type WaitMin, waitsAhead } from '../forecast/waits-ahead.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { FOOT_S } from '../steps/pot-in-hand.ts'
import { type Step, WIPE_DRIES_MS } from '../steps/steps.ts'
import type { AtStep } from '../steps/work.ts'
import type { Pace } from './pace.ts'

/** A coat left longer than a day turns powdery. Common practice, no source. */
const LONGEST_WAIT_S = 24 * 3600
/** Beyond this a coat belongs to another sitting: no order of work holds so long. */
const SITTING_MIN = 12 * 60
/** The planner's own longest time. */
export const LONGEST_S = 7 * 86_400
/** Pots left half done and a bucket left open count as no longer ago than this, ms: older is no different. */
export const LONG_AGO_MS = 30 * 86_400_000

/** Whole seconds of table time, none of it left out. */
export const upS = (ms: number): number => Math.ceil(ms / 1000)
/** Whole seconds of table time that have passed. */
export const downS = (ms: number): number => Math.floor(ms / 1000)

/** A pot as the planner is given it, and how late its waits may end. */
export interface PotJob {
  readonly job: Pot
  readonly odds: Odds['pots'][string]
}

/**
 * What is left to do on a pot; undefined where hands have nothing to do on it in this sitting. `waxedAt`: when its foot
 * is waxed, of one that is waxed in the block before all else, table time, ms.
 */
export function potJob(
  table: Table,
  { pot, step }: AtStep,
  now: number,
  waxedAt: number | undefined,
  pace: Pace,
): PotJob | undefined {
  if (pot.later || step.is === 'stuck' || step.is === 'kiln' || step.is === 'foot-check') return undefined
  const ahead = waitsAhead(table, pot, now)
  const coats = coatJobs(table, pot, ahead.next, Math.round(pace.laterS))
  const last = nextCoat(pot) + coats.length - 1
  if (coats.length === 0) return undefined
  const ready = readyAt(table, pot, step, now, waxedAt, ahead.next)
  if (ready.likely - now > SITTING_MIN * 60_000) return undefined
  const dry = (table.settings.candle ? ahead.next : ahead.kiln)[last] ?? NO_WAIT
  const before = 'dip' in step ? step.dip : undefined
  const kilnS = (min: number) => Math.min(LONGEST_S, Math.ceil(min * 60))
  return {
    job: {
      id: pot.facts.potId,
      prep: prepJobs(table, pot, step, waxedAt !== undefined, pace),
      coats,
      readyAtS: ready.likely > now ? upS(ready.likely) : downS(now),
      ...(before ? { overLongAtS: downS(Math.max(before.outAt, now - LONG_AGO_MS)) + LONGEST_WAIT_S } : {}),
      kilnDryS: kilnS(dry.likely),
      heightMm: pot.facts.shape.heightMm,
    },
    odds: {
      readyLateS: Math.max(0, upS(Math.min(ready.upper - now, SITTING_MIN * 60_000))),
      waitsLateS: coats.map((_, k) => waitS((ahead.next[nextCoat(pot) + k] ?? NO_WAIT).upper)),
      kilnLateS: kilnS(dry.upper),
    },
  }
}

const NO_WAIT: WaitMin = { likely: 0, upper: 0 }

const waitS = (min: number): number => Math.ceil(Math.min(min, SITTING_MIN) * 60)

function coatJobs(table: Table, pot: PotState, waits: readonly WaitMin[], paceS: number): Coat[] {
  const coats: Coat[] = []
  for (const [i, coat] of planOf(table, pot).entries()) {
    if (i < nextCoat(pot)) continue
    if (!table.buckets[coat.bucketId]) break
    const waitMin = (waits[i] ?? NO_WAIT).likely
    const bareS = Math.round(outAfterS(table, pot, coat))
    coats.push({
      bucketId: coat.bucketId,
      dipS: Math.ceil(bareS + table.settings.dripS + FOOT_S) + paceS,
      // Hands that are quicker are so at the foot, which comes after OUT.
      outAtS: bareS + Math.max(0, paceS),
      waitAfterS: waitS(waitMin),
      collar: coat.cover.kind === 'collar',
      longestWaitS: LONGEST_WAIT_S,
    })
    if (waitMin > SITTING_MIN) break
  }
  return coats
}

const outAfterS = (table: Table, pot: PotState, coat: ReturnType<typeof planOf>[number]): number =>
  table.settings.leadInS + lowerS(table, pot.facts, coat.cover) + coat.holdS

/** When a pot can go on as likely sooner as later, and its upper bound, table time ms. */
type Ready = Pick<BandMs, 'likely' | 'upper'>

const exactly = (at: number): Ready => ({ likely: at, upper: at })

/** A band's moments, none before `least`. */
const notBefore = (least: number, { likely, upper }: BandMs): Ready => ({
  likely: Math.max(least, likely),
  upper: Math.max(least, upper),
})

function readyAt(
  table: Table,
  pot: PotState,
  step: Step,
  now: number,
  waxedAt: number | undefined,
  waits: readonly WaitMin[],
): Ready {
  switch (step.is) {
    case 'wax':
      return exactly(waxedAt === undefined ? now : waxedAt + waxSetMs(table, pot))
    case 'wax-sets':
    case 'wipe-dries':
    case 'damp-dries':
      return exactly(step.until)
    // A forecast is not made while a count runs: what was expected of the coat stands in.
    case 'count': {
      const wait = waits[step.dip.coat] ?? NO_WAIT
      const after = (min: number) => step.dip.outAt + min * 60_000
      return { likely: after(wait.likely), upper: after(wait.upper) }
    }
    case 'drip':
    case 'foot': {
      const ready = forecastOf(table, pot)?.ready
      return ready ? notBefore(now, ready) : exactly(now)
    }
    case 'wait':
    case 'touch':
      return notBefore(step.askAt, step.dry)
    default:
      return exactly(now)
  }
}

function prepJobs(table: Table, pot: PotState, step: Step, inBlock: boolean, { takesS }: Pace): PrepStep[] {
  // In saturated air water-based wax never sets: a sitting is as long as it can be waited for.
  const waxS = Math.ceil(Math.min(waxSetMs(table, pot), SITTING_MIN * 60_000) / 1000)
  const wax: PrepStep = { kind: 'wax', activeS: Math.round(takesS.wax), waitAfterS: waxS }
  const wipe: PrepStep = { kind: 'wipe', activeS: Math.round(takesS.wipe), waitAfterS: WIPE_DRIES_MS / 1000 }
  const { waxFirst } = table.settings
  switch (step.is) {
    case 'wax':
      return inBlock ? (pot.wipedAt === undefined ? [wipe] : []) : waxFirst ? [wax, wipe] : [wax]
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
