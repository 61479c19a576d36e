import type { CoatFacts, PotFacts } from '../../../shared/nouns.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import { type Grade, gradeZone, worstZone } from '../../engine/wait/grade.ts'
import { outerOf } from '../entry/offer.ts'
import { type Drawing, drawingOf } from '../forecast/drawing.ts'
import { type Forecast, forecastOf } from '../forecast/forecast.ts'
import { limitsOf, plannedDip } from '../forecast/hypothetical-dip.ts'
import { type ZoneLabel, zoneReports } from '../forecast/zone-report.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import { LIMITS } from '../model/limits.ts'
import { planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import type { Warning } from './warning.ts'
import { warningsFor } from './warnings.ts'

const MIN_MS = 60_000
/** A coat that never dries in this air is followed as if a day had passed. Our choice. */
const GIVE_UP_MS = 24 * 60 * MIN_MS

/** One coat of a plan as it would go on, each at the touch-dry moment of the one below. */
export interface CoatOutlook {
  readonly coat: CoatFacts
  /** The pot right before this dip, and the moment of it, table time ms. */
  readonly before: PotState
  readonly atMs: number
  /** Minutes from OUT until it takes a touch; `Infinity` is never in this air. */
  readonly waitMin: { readonly lower: number; readonly likely: number; readonly upper: number }
}

/** A stretch of one face, or a sector, with all coats on it, against the limit it passes or comes nearest to. */
export interface ZoneOutlook {
  readonly label: ZoneLabel
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

/** What is supposed besides the plan: added to every bucket's density, to the wall, to the humidity. */
export interface Suppose {
  readonly gramsPerMl: number
  readonly wallMm: number
  readonly rh: number
}

export const AS_IS: Suppose = { gramsPerMl: 0, wallMm: 0, rh: 0 }

const within = (field: 'gramsPerMl' | 'wallMm' | 'rh', value: number): number =>
  Math.min(LIMITS[field].most, Math.max(LIMITS[field].least, value))

/** The table and a pot as they would be, each number kept inside its own range. */
export function supposing(table: Table, facts: PotFacts, by: Suppose): [Table, PotFacts] {
  if (by === AS_IS) return [table, facts]
  const buckets = Object.fromEntries(
    Object.entries(table.buckets).map(([bucketId, bucket]) => [
      bucketId,
      { ...bucket, gramsPerMl: within('gramsPerMl', bucket.gramsPerMl + by.gramsPerMl) },
    ]),
  )
  const air = table.air.at(-1)?.air ?? DEFAULT_AIR
  const shape = { ...facts.shape, wallMm: within('wallMm', facts.shape.wallMm + by.wallMm) }
  return [
    { ...table, buckets, air: [{ at: 0, air: { ...air, rh: within('rh', air.rh + by.rh) } }] },
    // A wall that would leave no opening is not supposed.
    outerOf(shape) ? { ...facts, shape } : facts,
  ]
}

const DRAFT = 'draft'

/** The table with these coats as the stack of a pot that is bare, and that pot. */
export function drafted(table: Table, facts: PotFacts, coats: readonly CoatFacts[]): [Table, PotState] {
  const stack = { stackId: DRAFT, name: DRAFT, coats }
  const pot: PotState = {
    facts: { ...facts, stackId: DRAFT },
    dips: [],
    touches: [],
    weighings: [],
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
  for (const [index, coat] of planOf(draft, bare).entries()) {
    const bucket = draft.buckets[coat.bucketId]
    if (!bucket) continue
    const before = pot
    const dip = plannedDip(index, coat, bucket.gramsPerMl, at)
    pot = { ...pot, dips: [...pot.dips, dip] }
    forecast = forecastOf(draft, pot)
    if (!forecast) break
    const since = (ms: number) => (ms - dip.outAt) / MIN_MS
    const { lower, likely, upper } = forecast.touch
    done.push({
      coat,
      before,
      atMs: dip.outAt,
      waitMin: { lower: since(lower), likely: since(likely), upper: since(upper) },
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

/** What the bench would say before each dip of an outlook. Dearer than the outlook itself: remedies are searched. */
export function warningsOf(
  table: Table,
  facts: PotFacts,
  coats: readonly CoatFacts[],
  outlook: PlanOutlook,
): readonly (readonly Warning[])[] {
  const [draft] = drafted(table, facts, coats)
  return outlook.coats.map(({ before, coat, atMs }) => warningsFor(draft, before, coat.bucketId, atMs))
}

/** A pot to scale with every coat of a plan on it. */
export function planDrawing(table: Table, facts: PotFacts, coats: readonly CoatFacts[]): Drawing {
  const [draft, bare] = drafted(table, facts, coats)
  const dips = planOf(draft, bare).map((coat, index) => plannedDip(index, coat, 1, index))
  return drawingOf(draft, { ...bare, dips }, 'as-is')
}

function zonesOf(table: Table, forecast: Forecast): ZoneOutlook[] {
  const limits = limitsOf(table)
  const worst = (zones: readonly ZoneForecast[]) =>
    zones.length > 0 ? worstZone(zones, limits).zone : undefined
  return zoneReports(forecast, worst).map(({ label, zone }): ZoneOutlook => {
    const { grade, likelyMm, upperMm, limitMm } = gradeZone(zone, limits)
    return { label, likelyMm, upperMm, limitMm, grade }
  })
}
