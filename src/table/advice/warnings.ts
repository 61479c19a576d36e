import { condensation, warmedC } from '../../engine/air/dew.ts'
import type { Face, ZoneForecast, ZoneName } from '../../engine/contract.ts'
import { lowestEdge } from '../../engine/melt/remedy.ts'
import { fillS } from '../../engine/shape/neck.ts'
import { worstZone } from '../../engine/wait/grade.ts'
import { nextCoat } from '../../engine/wait/seconds.ts'
import { footOf } from '../firing/foot.ts'
import { pairOf } from '../firing/pairs.ts'
import { airAt, airOf, bodyOf, coverOn, profileOf } from '../forecast/engine-inputs.ts'
import { dipNow, limitsOf, repairNow, zonesWith } from '../forecast/hypothetical-dip.ts'
import { engineDip, historyWith } from '../forecast/pot-history.ts'
import { acrossFrom, dipsOnHalf, halfAt, hasOverlap } from '../model/halves.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { fitNow } from './fill.ts'
import { edgeThatDoes } from './remedies.ts'

/** What is said before a dip, worst first. Lengths mm. */
export type Warning =
  | {
      readonly kind: 'build'
      readonly grade: 'close' | 'over'
      readonly zone: ZoneName | 'overlap'
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
      /** Where two halves overlap. */
      readonly overlap?: true
      readonly runMm: number
      /** The flow was tested in another firing. */
      readonly carried: boolean
      /** Lower edge that clears the foot, or at least keeps it off the shelf, where one does. */
      readonly edgeUpMm?: number
      /** It is to stand on a catch slab. */
      readonly slab?: true
    }
  /** The wall is full: `makeUpS` seconds would give the coat of a dry wall, undefined if none can. */
  | {
      readonly kind: 'thin'
      readonly likelyMm: number
      readonly dryMm: number
      readonly makeUpS: number | undefined
    }
  /** After a slip: seconds for this coat that come nearest to the plan; undefined: skip it. */
  | { readonly kind: 'repair'; readonly holdS: number | undefined }
  | { readonly kind: 'neck'; readonly fillS: number }
  /** Bisque from the cold: dew settles on it in this room's air. */
  | { readonly kind: 'dew'; readonly potC: number; readonly dewC: number }
  | { readonly kind: 'level'; readonly levelMm: number; readonly needsMm: number }
  | { readonly kind: 'density'; readonly gramsPerMl: number; readonly targetGramsPerMl: number }
  /** It does not go into the bucket as it is, or the bucket runs over. */
  | { readonly kind: 'fit'; readonly misfit: 'mouth' | 'tongs' | 'overflow' }
  /** This glaze comes to lie on one that it was never fired over, or went wrong on. */
  | {
      readonly kind: 'pair'
      readonly is: 'untried' | 'went-wrong'
      readonly over: string
      readonly under: string
      readonly zone: ZoneName | 'overlap'
    }

/** A coat this much thinner than on a dry wall is worth a word. Our choice. */
const THIN_PART = 0.6
/** Forecasts of a card that stays up are renewed this often. */
const RENEW_MS = 20_000

interface Kept {
  readonly table: Table
  readonly bucketId: string
  readonly slot: number
  readonly warnings: readonly Warning[]
}

const kept = new WeakMap<PotState, Kept>()

/** Everything to be said before this pot goes into this bucket now, worst first. */
export function warningsFor(table: Table, pot: PotState, bucketId: string, now: number): readonly Warning[] {
  const slot = Math.floor(now / RENEW_MS)
  const before = kept.get(pot)
  if (before?.table === table && before.bucketId === bucketId && before.slot === slot) return before.warnings
  const warnings = computed(table, pot, bucketId, now)
  kept.set(pot, { table, bucketId, slot, warnings })
  return warnings
}

function computed(table: Table, pot: PotState, bucketId: string, now: number): readonly Warning[] {
  const dip = dipNow(table, pot, bucketId, now)
  const zones = dip && zonesWith(table, pot, dip)
  if (!dip || !zones) return []
  const repair = repairNow(table, pot, now)
  const said: (Warning | undefined)[] = [
    runWarning(table, pot, dip, zones),
    buildWarning(table, pot, dip, zones),
    fitWarning(table, pot, dip),
    repair && { kind: 'repair', holdS: repair.holdS },
    thinWarning(table, pot, dip),
    neckWarning(pot, dip),
    dewWarning(table, pot, now),
    densityWarning(table, bucketId),
    pairWarning(table, pot, dip, zones),
  ]
  return said.filter((w): w is Warning => w !== undefined).sort((a, b) => gravity(a) - gravity(b))
}

function gravity(warning: Warning): number {
  if ('grade' in warning) return { over: 0, close: 2, near: 2, unknown: 7 }[warning.grade]
  if (warning.kind === 'pair') return warning.is === 'went-wrong' ? 2 : 8
  return { repair: 1, level: 1, fit: 1, dew: 3, neck: 3, thin: 4, density: 5 }[warning.kind]
}

function buildWarning(
  table: Table,
  pot: PotState,
  dip: DipState,
  zones: readonly ZoneForecast[],
): Warning | undefined {
  const worst = worstZone(zones, limitsOf(table))
  if (worst.grade === 'fine') return undefined
  const { grade, likelyMm, upperMm, limitMm } = worst
  const { name, face } = worst.zone
  const zone = hasOverlap(table, pot, [...coatsOn(pot), dip]) ? 'overlap' : name
  const remedyS = grade === 'over' ? secondsThatFit(table, pot, dip) : dip.holdS
  return { kind: 'build', grade, zone, face, likelyMm, upperMm, limitMm, remedyS }
}

/** Most seconds, to the half, with which no zone's likely build passes a limit; 0 when none do. */
function secondsThatFit(table: Table, pot: PotState, dip: DipState): number {
  const fits = (holdS: number) => {
    const after = zonesWith(table, pot, { ...dip, holdS })
    return after !== undefined && worstZone(after, limitsOf(table)).grade !== 'over'
  }
  let least = 0
  let most = Math.ceil(dip.holdS * 2)
  while (most - least > 1) {
    const middle = Math.floor((least + most) / 2)
    if (fits(middle / 2)) least = middle
    else most = middle
  }
  return least / 2
}

function runWarning(
  table: Table,
  pot: PotState,
  dip: DipState,
  zones: readonly ZoneForecast[],
): Warning | undefined {
  const foot = footOf(table, pot, zones)
  const { verdict, doubts, roomMm, marginRunMm: runMm } = foot.room
  if (verdict === 'clear' || doubts.includes('flat')) return undefined
  const overlap = hasOverlap(table, pot, [...coatsOn(pot), dip]) ? ({ overlap: true } as const) : {}
  const base = { kind: 'run', roomMm, runMm, carried: foot.carried, ...overlap } as const
  if (verdict === 'unknown') return doubts.includes('noTest') ? { ...base, grade: 'unknown' } : undefined
  // On its slab it may run: no more is asked of it than to say so.
  if (pot.slab) return { ...base, grade: 'near', slab: true }
  const outside = foot.input.coats.some((coat) => coat.dipId === dip.dipId && coat.face === 'outside')
  const lowest = outside ? lowestEdge(foot.input, dip.dipId) : null
  const edge = lowest && edgeThatDoes(table, pot, dip, lowest.edgeUpMm, lowest.reaches)
  return { ...base, grade: verdict, ...(edge ? { edgeUpMm: edge.edgeUpMm } : {}) }
}

/** The wall is full: the coat comes out thinner than the same dip on the same pot when dry. */
function thinWarning(table: Table, pot: PotState, dip: DipState): Warning | undefined {
  const more = engineDip(table, pot, dip)
  if (!more || coatsOn(pot).length === 0) return undefined
  // The half across is not in its way: on a bare half a side dip meets a dry wall.
  const { likelyMm, thirstyMm, makeUpS } = nextCoat(
    historyWith(table, pot, dipsOnHalf(table, pot, halfAt(table, pot, dip.coat, dip.cover) ?? 0)),
    more,
  )
  return likelyMm < thirstyMm * THIN_PART ? { kind: 'thin', likelyMm, dryMm: thirstyMm, makeUpS } : undefined
}

/** A full dip shorter than the neck needs to fill leaves the inside bare in part. */
function neckWarning(pot: PotState, dip: DipState): Warning | undefined {
  if (coverOn(pot.facts, dip.cover).kind !== 'full') return undefined
  const seconds = fillS(profileOf(pot.facts), dip.gramsPerMl)
  return seconds > dip.holdS ? { kind: 'neck', fillS: seconds } : undefined
}

/** A bare pot that still is colder than the dew point of the air it was brought into. */
function dewWarning(table: Table, pot: PotState, now: number): Warning | undefined {
  const facts = airAt(table.air, now)
  if (!facts.cold || coatsOn(pot).length > 0) return undefined
  const air = airOf(facts)
  const { rimMm, wallMm } = pot.facts.shape
  const minutes = Math.max(0, (now - facts.cold.at) / 60_000)
  const potC = warmedC(facts.cold.potC, air, rimMm, bodyOf(table).bulkGramsPerMl * wallMm, minutes)
  const { condenses, dewPointC } = condensation(air, potC, rimMm)
  return condenses ? { kind: 'dew', potC, dewC: dewPointC } : undefined
}

function fitWarning(table: Table, pot: PotState, { bucketId, cover, holdS }: DipState): Warning | undefined {
  const fit = fitNow(table, pot.facts, { bucketId, cover, holdS })
  if (!fit || fit.misfit === 'none') return undefined
  return fit.misfit === 'shallow'
    ? { kind: 'level', levelMm: fit.levelAtMm, needsMm: fit.neededMm }
    : { kind: 'fit', misfit: fit.misfit }
}

function densityWarning(table: Table, bucketId: string): Warning | undefined {
  const bucket = table.buckets[bucketId]
  if (!bucket) return undefined
  const { targetGramsPerMl, toleranceGramsPerMl } = bucket.facts
  return Math.abs(bucket.gramsPerMl - targetGramsPerMl) > toleranceGramsPerMl + 1e-9
    ? { kind: 'density', gramsPerMl: bucket.gramsPerMl, targetGramsPerMl }
    : undefined
}

/** What this dip comes to lie on, zone by zone: of the pairs that are not proved, one that went wrong first. */
function pairWarning(
  table: Table,
  pot: PotState,
  dip: DipState,
  zones: readonly ZoneForecast[],
): Warning | undefined {
  const across = new Set(acrossFrom(table, pot, dip).map(({ dipId }) => dipId))
  const found = zones.flatMap(({ name, coats }): Extract<Warning, { kind: 'pair' }>[] => {
    const below = coats[coats.findIndex(({ dipId }) => dipId === dip.dipId) - 1]
    if (below === undefined || below.glazeId === dip.bucketId) return []
    const { is } = pairOf(table, dip.bucketId, below.glazeId)
    const zone = across.has(below.dipId) ? 'overlap' : name
    return is === 'proved' ? [] : [{ kind: 'pair', is, over: dip.bucketId, under: below.glazeId, zone }]
  })
  return found.find(({ is }) => is === 'went-wrong') ?? found[0]
}

/** Seconds that a warning proposes for this coat instead; 0: leave it out. Undefined: nothing is proposed. */
export function remedyS(warnings: readonly Warning[]): number | undefined {
  for (const warning of warnings) {
    if (warning.kind === 'repair') return warning.holdS ?? 0
    if (warning.kind === 'build' && warning.grade === 'over') return warning.remedyS
    if (warning.kind === 'thin' && warning.makeUpS !== undefined) return Math.round(warning.makeUpS * 2) / 2
  }
  return undefined
}
