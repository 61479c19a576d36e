import type { Caution } from '../../shared/nouns.ts'
import { fitOf } from '../engine/bucket.ts'
import type { Face, PotForecast, ZoneName } from '../engine/contract.ts'
import { fillS } from '../engine/index.ts'
import { footRoom } from '../engine/melt.ts'
import { type GlazePair, coatsOf as meltCoats } from '../engine/melt-coats.ts'
import { coverOn, immersedMm, profileOf, SEA_LEVEL_PA } from './clay.ts'
import { engineDip, forecastWith } from './forecast.ts'
import { coatsOn, lastDip } from './plan.ts'
import type { DipState, PotState, Table } from './state.ts'
import { coatFrom } from './work.ts'

/** What is said before a dip, worst first. Lengths mm. */
export type Warning =
  | {
      readonly kind: 'build'
      readonly grade: 'close' | 'over'
      readonly zone: ZoneName
      readonly face: Face
      readonly likelyMm: number
      readonly upperMm: number
      readonly limitMm: number
      /** Seconds that would stay inside the limit; 0: skip this coat. */
      readonly remedyS: number
    }
  | {
      readonly kind: 'run'
      readonly grade: 'near' | 'over' | 'unknown'
      readonly roomMm: number
      readonly runMm: number
      /** Lower edge that would clear the foot, where one does. */
      readonly edgeUpMm?: number
    }
  | { readonly kind: 'thin'; readonly likelyMm: number; readonly dryMm: number }
  | { readonly kind: 'neck'; readonly fillS: number }
  | { readonly kind: 'level'; readonly levelMm: number; readonly needsMm: number }
  | { readonly kind: 'density'; readonly gramsPerMl: number; readonly targetGramsPerMl: number }
  | { readonly kind: 'pair'; readonly over: string; readonly under: string }
  | { readonly kind: 'caution'; readonly what: Caution }

/** A coat this much thinner than on a dry wall is worth a word. Our choice. */
const THIN_PART = 0.6
/** Forecasts of a card that stays up are renewed this often. */
const RENEW_MS = 20_000
/** The worst drip goes this much farther than the mean front; factor of the melt. */
const MARGIN = 2
/** Fraction of an inch of a raised edge worth telling. Our choice. */
const EDGE_STEP_MM = 5

interface Kept {
  readonly table: Table
  readonly bucketId: string
  readonly slot: number
  readonly warnings: readonly Warning[]
}

const kept = new WeakMap<PotState, Kept>()

/** Everything to be said before this pot goes into this bucket now. */
export function warningsFor(table: Table, pot: PotState, bucketId: string, now: number): readonly Warning[] {
  const slot = Math.floor(now / RENEW_MS)
  const before = kept.get(pot)
  if (before?.table === table && before.bucketId === bucketId && before.slot === slot) return before.warnings
  const warnings = computed(table, pot, bucketId, now)
  kept.set(pot, { table, bucketId, slot, warnings })
  return warnings
}

function computed(table: Table, pot: PotState, bucketId: string, now: number): readonly Warning[] {
  const dip = asDip(table, pot, bucketId, now)
  if (!dip) return []
  const after = afterDip(table, pot, dip)
  if (!after) return []
  const said: (Warning | undefined)[] = [
    runWarning(table, pot, dip, after),
    ...buildWarnings(table, pot, dip, after),
    levelWarning(table, pot, dip),
    thinWarning(table, pot, dip, after),
    neckWarning(pot, dip),
    densityWarning(table, bucketId),
    pairWarning(pot, dip),
    ...(table.buckets[bucketId]?.facts.cautions ?? []).map((what): Warning => ({ kind: 'caution', what })),
  ]
  return said.filter((w): w is Warning => w !== undefined).sort((a, b) => gravity(a) - gravity(b))
}

function gravity(warning: Warning): number {
  if ('grade' in warning) {
    if (warning.grade === 'over') return 0
    if (warning.grade === 'unknown') return 6
    return 1
  }
  return { level: 2, thin: 3, neck: 2, density: 4, pair: 7, caution: 5 }[warning.kind]
}

/** The dip that START would make now, as the table would keep it. */
export function asDip(table: Table, pot: PotState, bucketId: string, now: number): DipState | undefined {
  const from = coatFrom(table, pot, bucketId)
  const bucket = table.buckets[bucketId]
  if (!from || !bucket) return undefined
  const { holdS, cover } = from.plan
  return {
    dipId: 'planned',
    hit: 'planned',
    coat: from.coat,
    bucketId,
    cover,
    gramsPerMl: bucket.gramsPerMl,
    tappedAt: now,
    underAt: now,
    outAt: now,
    holdS,
    lowerS: 0,
    plannedHoldS: holdS,
    how: 'planned',
    unstirred: false,
    unsure: false,
  }
}

/** The pot as it would be right after the dip. */
export function afterDip(table: Table, pot: PotState, dip: DipState): PotForecast | undefined {
  const more = engineDip(table, pot, dip)
  return more && forecastWith(table, pot, [more])
}

function buildWarnings(table: Table, pot: PotState, dip: DipState, after: PotForecast): Warning[] {
  return overs(table, after)
    .slice(0, 1)
    .map((over) => ({ ...over, remedyS: secondsThatFit(table, pot, dip) }))
}

type Over = Omit<Extract<Warning, { kind: 'build' }>, 'remedyS'>

/** Zones at or past a limit of the whole stack or of one glaze on it, worst first. */
function overs(table: Table, forecast: PotForecast): Over[] {
  const found: Over[] = []
  for (const zone of forecast.zones) {
    const check = (likelyMm: number, upperMm: number, limitMm: number) => {
      const grade = likelyMm > limitMm ? 'over' : upperMm > limitMm ? 'close' : undefined
      if (grade)
        found.push({ kind: 'build', grade, zone: zone.name, face: zone.face, likelyMm, upperMm, limitMm })
    }
    check(zone.likelyMm, zone.upperMm, table.settings.stackLimitMm)
    for (const glazeId of new Set(zone.coats.map((coat) => coat.glazeId))) {
      const own = zone.coats.filter((coat) => coat.glazeId === glazeId)
      const limitMm = table.buckets[glazeId]?.facts.limitMm
      if (limitMm === undefined || own.length === 0) continue
      check(
        own.reduce((sum, coat) => sum + coat.likelyMm, 0),
        own.reduce((sum, coat) => sum + coat.upperMm, 0),
        limitMm,
      )
    }
  }
  const past = (over: Over) => (over.grade === 'over' ? over.likelyMm : over.upperMm) / over.limitMm
  return found.sort((a, b) => (a.grade === b.grade ? past(b) - past(a) : a.grade === 'over' ? -1 : 1))
}

/** Most seconds, to the half, that no zone's likely build passes a limit with; 0 when none do. */
function secondsThatFit(table: Table, pot: PotState, dip: DipState): number {
  const fits = (holdS: number) => {
    const after = afterDip(table, pot, { ...dip, holdS })
    return after !== undefined && !overs(table, after).some((over) => over.grade === 'over')
  }
  let least = 0
  let most = Math.round(dip.holdS * 2)
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2)
    if (fits(middle / 2)) least = middle
    else most = middle
  }
  return least / 2
}

function runWarning(table: Table, pot: PotState, dip: DipState, after: PotForecast): Warning | undefined {
  const room = roomOf(table, pot, after)
  if (room.verdict === 'clear' || room.doubts.includes('flat')) return undefined
  const base = { kind: 'run', grade: room.verdict, roomMm: room.roomMm, runMm: room.runMm } as const
  if (room.verdict === 'unknown') return room.doubts.includes('noTest') ? base : undefined
  return { ...base, edgeUpMm: edgeThatClears(table, pot, dip) }
}

function roomOf(table: Table, pot: PotState, forecast: PotForecast) {
  const coats = meltCoats(forecast.zones, (glazeId) => {
    const dose = table.buckets[glazeId]?.facts.dosePerMm
    return dose ? { likelyPerMm: dose.likely, highPerMm: dose.high } : null
  })
  return footRoom({
    profile: profileOf(pot.facts),
    coats,
    footLineMm: pot.facts.shape.footLineMm,
    marginFactor: MARGIN,
    provedPairs: NONE_PROVED,
  })
}

const NONE_PROVED: readonly GlazePair[] = []

/** Lowest edge of this coat, in steps, with which nothing comes near the foot line. */
function edgeThatClears(table: Table, pot: PotState, dip: DipState): number | undefined {
  const cover = coverOn(pot.facts, dip.cover)
  if (cover.kind !== 'full' && cover.kind !== 'downTo') return undefined
  const { footLineMm, heightMm } = pot.facts.shape
  const from = cover.kind === 'downTo' ? cover.edgeUpMm : footLineMm
  for (let edgeUpMm = from + EDGE_STEP_MM; edgeUpMm < heightMm * 0.8; edgeUpMm += EDGE_STEP_MM) {
    const after = afterDip(table, pot, { ...dip, cover: { kind: 'downTo', edgeUpMm } })
    if (after && !['near', 'over'].includes(roomOf(table, pot, after).verdict)) return Math.round(edgeUpMm)
  }
  return undefined
}

/** The wall is full: the coat comes out thinner than the same dip on the same pot when dry. */
function thinWarning(table: Table, pot: PotState, dip: DipState, after: PotForecast): Warning | undefined {
  if (coatsOn(pot).length === 0) return undefined
  const dry = afterDip(table, { ...pot, dips: [], wipedAt: undefined, washedAt: undefined }, dip)
  const thinnest = (forecast: PotForecast | undefined) =>
    Math.min(
      ...(forecast?.zones ?? []).flatMap((zone) =>
        zone.face === 'outside'
          ? zone.coats.filter((coat) => coat.dipId === dip.dipId).map((coat) => coat.likelyMm)
          : [],
      ),
    )
  const likelyMm = thinnest(after)
  const dryMm = thinnest(dry)
  if (!Number.isFinite(likelyMm) || !Number.isFinite(dryMm) || likelyMm >= dryMm * THIN_PART) return undefined
  return { kind: 'thin', likelyMm, dryMm }
}

/** A full dip shorter than the neck needs to fill leaves the inside bare in part. */
function neckWarning(pot: PotState, dip: DipState): Warning | undefined {
  if (coverOn(pot.facts, dip.cover).kind !== 'full') return undefined
  const seconds = fillS(profileOf(pot.facts), dip.gramsPerMl)
  return seconds > dip.holdS ? { kind: 'neck', fillS: seconds } : undefined
}

function levelWarning(table: Table, pot: PotState, dip: DipState): Warning | undefined {
  const facts = table.buckets[dip.bucketId]?.facts
  const cover = coverOn(pot.facts, dip.cover)
  if (!facts || cover.kind === 'inside' || cover.kind === 'collar') return undefined
  const depthMm = immersedMm(pot.facts, dip.cover)
  const bucket = { heightMm: facts.heightMm, floorWideMm: facts.insideMm, mouthWideMm: facts.insideMm }
  const most = (Math.PI * (facts.insideMm / 2) ** 2 * facts.heightMm) / 1e6
  const how =
    cover.kind === 'downTo'
      ? ({ way: 'rimFirst', depthMm, gramsPerMl: dip.gramsPerMl, pressurePa: SEA_LEVEL_PA } as const)
      : ({ way: 'filled', depthMm } as const)
  const fit = fitOf(bucket, Math.min(facts.litres, most), profileOf(pot.facts), how)
  return fit.misfit === 'shallow'
    ? { kind: 'level', levelMm: fit.levelAtMm, needsMm: fit.neededMm }
    : undefined
}

function densityWarning(table: Table, bucketId: string): Warning | undefined {
  const bucket = table.buckets[bucketId]
  if (!bucket) return undefined
  const { targetGramsPerMl, toleranceGramsPerMl } = bucket.facts
  return Math.abs(bucket.gramsPerMl - targetGramsPerMl) > toleranceGramsPerMl + 1e-9
    ? { kind: 'density', gramsPerMl: bucket.gramsPerMl, targetGramsPerMl }
    : undefined
}

/** One glaze straight over another that was never fired together here. */
function pairWarning(pot: PotState, dip: DipState): Warning | undefined {
  const under = lastDip(pot)?.bucketId
  return under === undefined || under === dip.bucketId
    ? undefined
    : { kind: 'pair', over: dip.bucketId, under }
}
