import type { CoatFacts, PotFacts } from '../../shared/nouns.ts'
import type { Face, ZoneName } from '../engine/contract.ts'
import { type Grade, gradeZone } from '../engine/index.ts'
import { type Forecast, forecastOf } from './forecast.ts'
import { coatsOn, nextCoat, planOf } from './plan.ts'
import type { DipState, PotState, Table } from './state.ts'
import { type Warning, warningsFor } from './warnings.ts'

const MIN_MS = 60_000
/** A coat that never dries in this air is followed as if a day had passed. Our choice. */
const GIVE_UP_MS = 24 * 60 * MIN_MS

/** One coat of a plan as it would go on, each at the touch-dry moment of the one below. */
export interface CoatOutlook {
  readonly coat: CoatFacts
  /** What the bench would say before this dip. */
  readonly warnings: readonly Warning[]
  /** Minutes from OUT until it takes a touch; `Infinity` is never in this air. */
  readonly waitMin: { readonly early: number; readonly likely: number; readonly late: number }
}

/** A stretch of one face with all coats on it, against the limit it passes or comes nearest to. */
export interface ZoneOutlook {
  readonly zone: ZoneName
  readonly face: Face
  readonly fromMm: number
  readonly toMm: number
  readonly likelyMm: number
  readonly upperMm: number
  readonly limitMm: number
  readonly grade: Grade
}

export interface PlanOutlook {
  readonly coats: readonly CoatOutlook[]
  readonly zones: readonly ZoneOutlook[]
  /** Minutes from the last OUT until the pot may go into the kiln. */
  readonly kilnMin: number
  /** All of it from the first dip to the last touch, minutes. */
  readonly totalMin: number
}

const DRAFT = 'draft'

/** The table with these coats as the stack of a pot that is bare, and that pot. */
export function drafted(table: Table, facts: PotFacts, coats: readonly CoatFacts[]): [Table, PotState] {
  const stack = { stackId: DRAFT, name: DRAFT, coats }
  const pot: PotState = {
    facts: { ...facts, stackId: DRAFT },
    dips: [],
    touches: [],
    uncounted: false,
    gone: false,
  }
  return [{ ...table, stacks: { ...table.stacks, [DRAFT]: stack } }, pot]
}

/** What a whole plan comes to on one bare pot, begun at table time `nowMs`. */
export function outlookOf(
  table: Table,
  facts: PotFacts,
  coats: readonly CoatFacts[],
  nowMs: number,
): PlanOutlook {
  const [draft, bare] = drafted(table, facts, coats)
  const done: CoatOutlook[] = []
  let pot = bare
  let at = nowMs
  let forecast: Forecast | undefined
  for (const coat of planOf(draft, bare)) {
    const bucket = draft.buckets[coat.bucketId]
    if (!bucket) continue
    const warnings = warningsFor(draft, pot, coat.bucketId, at)
    const dip: DipState = {
      dipId: `${DRAFT}.${done.length}`,
      hit: DRAFT,
      coat: nextCoat(pot),
      bucketId: coat.bucketId,
      cover: coat.cover,
      gramsPerMl: bucket.gramsPerMl,
      tappedAt: at,
      underAt: at,
      outAt: at,
      holdS: coat.holdS,
      lowerS: 0,
      plannedHoldS: coat.holdS,
      how: 'planned',
      unstirred: false,
      unsure: false,
    }
    pot = { ...pot, dips: [...coatsOn(pot), dip] }
    forecast = forecastOf(draft, pot)
    if (!forecast) break
    const since = (ms: number) => (ms - dip.outAt) / MIN_MS
    const { early, likely, late } = forecast.touch
    done.push({
      coat,
      warnings,
      waitMin: { early: since(early), likely: since(likely), late: since(late) },
    })
    at = Number.isFinite(likely) ? likely : at + GIVE_UP_MS
  }
  return {
    coats: done,
    zones: forecast ? zonesOf(draft, forecast) : [],
    kilnMin: forecast ? (forecast.kiln.likely - (pot.dips.at(-1)?.outAt ?? nowMs)) / MIN_MS : 0,
    totalMin: (at - nowMs) / MIN_MS,
  }
}

function zonesOf(table: Table, forecast: Forecast): ZoneOutlook[] {
  const glazeMm: Record<string, number> = {}
  for (const { facts } of Object.values(table.buckets)) glazeMm[facts.bucketId] = facts.limitMm
  const limits = { stackMm: table.settings.stackLimitMm, glazeMm }
  return forecast.pot.zones
    .filter((zone) => zone.coats.length > 0)
    .map((zone) => {
      const { grade, likelyMm, upperMm, limitMm } = gradeZone(zone, limits)
      const { name, face, fromMm, toMm } = zone
      return { zone: name, face, fromMm, toMm, likelyMm, upperMm, limitMm, grade }
    })
}
