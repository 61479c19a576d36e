/** What is to be said before a pot goes into a bucket: too thick, too thin, runs, glazes that quarrel; one line of it is loud. */

import { condensation, warmedC } from '../../engine/air/dew.ts'
import type { ZoneForecast } from '../../engine/contract.ts'
import { footRoom, type RunVerdict } from '../../engine/melt/melt.ts'
import { lowestEdge } from '../../engine/melt/remedy.ts'
import { fillS } from '../../engine/shape/neck.ts'
import { forecastPot } from '../../engine/wait/forecast.ts'
import { gradeZone, worstZone } from '../../engine/wait/grade.ts'
import { nextCoat } from '../../engine/wait/seconds.ts'
import { type Foot, footOf } from '../fired/foot.ts'
import { pairOf } from '../fired/pairs.ts'
import { airAt, airOf } from '../forecast/air-inputs.ts'
import { filledAt, isWet, TOGETHER_MS } from '../forecast/forecast.ts'
import { dipNow, limitsOf, repairNow, zonesWith } from '../forecast/hypothetical-dip.ts'
import { lessonFor } from '../forecast/learning.ts'
import { engineDip, MIN_MS, standingWith } from '../forecast/pot-history.ts'
import { coverOn, profileOf } from '../forecast/shape-inputs.ts'
import { heldUntil } from '../forecast/wall-forecast.ts'
import { bodyOf } from '../forecast/wall-inputs.ts'
import { acrossFrom, dipsOnHalf, halfAt, hasOverlap } from '../model/halves.ts'
import { coatsOn } from '../model/plan.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { fitNow } from './fill.ts'
import { mostSeconds } from './most-seconds.ts'
import { crawledWarning, ranWarning } from './ran.ts'
import { edgeThatDoes } from './remedies.ts'
import { gravity, isLoud, type Warning } from './warning.ts'

/** A coat that is at most this part of the same on a dry wall is worth a word. Our choice. */
const THIN_PART = 0.6
/** A wall that is told this full or fuller is called full. Our choice. */
const FULL_PART = 0.95
/** Forecasts of a card that stays up are renewed this often. */
const RENEW_MS = 20_000

/** What is known before a dip. */
export interface Advice {
  /** Everything to be said of this coat, worst first. */
  readonly warnings: readonly Warning[]
  /** The one that the card itself says; the others are read behind its key. */
  readonly line: Warning | undefined
  /** How the foot stands with this coat on, said or not. */
  readonly foot: RunVerdict
}

interface Kept extends Advice {
  readonly table: Table
  readonly bucketId: string
  readonly slot: number
}

const kept = new WeakMap<PotState, Kept>()
const NOTHING: Advice = { warnings: [], line: undefined, foot: 'clear' }

/** What is to be said before this pot goes into this bucket at table time `now`, ms. */
export function adviceFor(table: Table, pot: PotState, bucketId: string, now: number): Advice {
  const slot = Math.floor(now / RENEW_MS)
  const before = kept.get(pot)
  if (before?.table === table && before.bucketId === bucketId && before.slot === slot) return before
  const advice = { table, bucketId, slot, ...computed(table, pot, bucketId, now) }
  kept.set(pot, advice)
  return advice
}

/** The warnings of {@link adviceFor} alone. */
export const warningsFor = (table: Table, pot: PotState, bucketId: string, now: number): readonly Warning[] =>
  adviceFor(table, pot, bucketId, now).warnings

function computed(table: Table, pot: PotState, bucketId: string, now: number): Advice {
  const dip = dipNow(table, pot, bucketId, now)
  const zones = dip && zonesWith(table, pot, dip)
  if (!dip || !zones) return NOTHING
  const foot = footOf(table, pot, zones)
  const repair = repairNow(table, pot, now)
  const build = buildWarning(table, pot, dip, zones)
  const said: (Warning | undefined)[] = [
    runWarning(table, pot, dip, foot),
    // Two figures for one coat would be one too many: after a slip its own holds.
    repair && build?.kind === 'build' ? { ...build, remedyS: repair.holdS ?? 0 } : build,
    fitWarning(table, pot, dip),
    repair && { kind: 'repair', holdS: repair.holdS },
    thinWarning(table, pot, dip, now),
    neckWarning(pot, dip),
    dewWarning(table, pot, now),
    heldWarning(table, pot, now),
    densityWarning(table, bucketId),
    pairWarning(table, pot, dip, zones),
    ranWarning(table, pot, bucketId),
    crawledWarning(table, bucketId, zones),
  ]
  const warnings = said
    .filter((warning): warning is Warning => warning !== undefined)
    .sort((a, b) => gravity(a) - gravity(b))
  return { warnings, line: warnings.find(isLoud), foot: foot.room.verdict }
}

/** The worst stretch that this dip reaches: over where it is over as told, in tenths of a mm. */
function buildWarning(
  table: Table,
  pot: PotState,
  dip: DipState,
  zones: readonly ZoneForecast[],
): Warning | undefined {
  const limits = limitsOf(table)
  const reached = reachedBy(dip, zones)
  if (reached.length === 0) return undefined
  const { zone, grade, likelyMm, upperMm, limitMm } = worstZone(reached, limits)
  if (grade === 'fine') return undefined
  const overlap = hasOverlap(table, pot, [...coatsOn(pot), dip])
  const said = {
    kind: 'build',
    zone: overlap ? 'overlap' : zone.name,
    face: zone.face,
    likelyMm,
    upperMm,
    limitMm,
  } as const
  if (grade === 'close' || inTenths(likelyMm) <= inTenths(limitMm))
    return { ...said, grade: 'close', remedyS: dip.holdS }
  const fits = (holdS: number) => {
    const after = reachedBy(dip, zonesWith(table, pot, { ...dip, holdS }) ?? [])
    return after.length > 0 && worstZone(after, limits).grade !== 'over'
  }
  const before = gradeZone(without(dip, zone), limits).grade === 'over' ? ({ before: true } as const) : {}
  return { ...said, ...before, grade: 'over', remedyS: mostSeconds(dip.holdS, fits) }
}

/** A stretch as it was before a dip. */
function without(dip: DipState, zone: ZoneForecast): ZoneForecast {
  const coats = zone.coats.filter(({ dipId }) => dipId !== dip.dipId)
  const sum = (of: 'likelyMm' | 'upperMm') => coats.reduce((all, coat) => all + coat[of], 0)
  return { ...zone, coats, likelyMm: sum('likelyMm'), upperMm: sum('upperMm') }
}

const inTenths = (mm: number): number => Math.round(mm * 10)

const reachedBy = (dip: DipState, zones: readonly ZoneForecast[]): readonly ZoneForecast[] =>
  zones.filter(({ coats }) => coats.some(({ dipId }) => dipId === dip.dipId))

/** Less than this that a coat adds to the run of the pot is not this coat's run, mm. Our choice. */
const ADDS_MM = 0.1

/**
 * How far the melt runs, if this coat can get there: a coat that adds nothing to the run is not warned of, nor a collar
 * that ends above the reach of its own melt.
 */
function runWarning(table: Table, pot: PotState, dip: DipState, foot: Foot): Warning | undefined {
  const { verdict, doubts, roomMm, marginRunMm: runMm, untestedGlazes } = foot.room
  if (verdict === 'clear' || doubts.includes('flat')) return undefined
  const overlap = hasOverlap(table, pot, [...coatsOn(pot), dip]) ? ({ overlap: true } as const) : {}
  const base = { kind: 'run', roomMm, runMm, carried: foot.carried, ...overlap } as const
  if (verdict === 'unknown')
    return untestedGlazes.includes(dip.bucketId) ? { ...base, grade: 'unknown' } : undefined
  const mine = foot.input.coats.filter((coat) => coat.dipId === dip.dipId)
  if (dip.cover.kind === 'collar' && footRoom({ ...foot.input, coats: mine }).verdict === 'clear')
    return undefined
  const bare = footRoom({
    ...foot.input,
    coats: foot.input.coats.filter((coat) => coat.dipId !== dip.dipId),
  })
  const adds = bare.roomMm - roomMm > ADDS_MM || runMm - bare.marginRunMm > ADDS_MM
  if (!adds) return undefined
  // On its slab it may run: no more is asked of it than to say so.
  if (pot.slab) return { ...base, grade: 'near', slab: true }
  const before = bare.verdict === 'near' && verdict === 'near' ? ({ before: true } as const) : {}
  const lowest = mine.some(({ face }) => face === 'outside') ? lowestEdge(foot.input, dip.dipId) : null
  const edge = lowest && edgeThatDoes(table, pot, dip, lowest.edgeUpMm, lowest.reaches)
  return { ...base, ...before, grade: verdict, ...(edge ? { edgeUpMm: edge.edgeUpMm } : {}) }
}

/**
 * A coat whose likely figure is thin against the likely one of the same dip on the same pot when dry; by how full the
 * card tells the wall, that is why.
 */
function thinWarning(table: Table, pot: PotState, dip: DipState, now: number): Warning | undefined {
  const more = engineDip(table, pot, dip)
  if (!more || !isWet(pot)) return undefined
  // The half across is not in its way: on a bare half a side dip meets a dry wall.
  const standing = standingWith(
    table,
    pot,
    dipsOnHalf(table, pot, halfAt(table, pot, dip.coat, dip.cover) ?? 0),
  )
  const { likelyMm, lowerMm, upperMm, thirstyMm } = nextCoat(standing, more)
  if (likelyMm >= thirstyMm * THIN_PART) return undefined
  const full = filledAt(table, pot, now) >= FULL_PART
  const lesson = lessonFor(table, coatsOn(pot).at(-1)?.bucketId ?? dip.bucketId)
  const atMin = forecastPot(standing.pot, standing.events, standing.air0, lesson).thirsty.likely
  const then =
    Number.isFinite(atMin) && atMin > more.atMin ? nextCoat(standing, { ...more, atMin }) : undefined
  return {
    kind: 'thin',
    grade: full ? 'full' : 'likely',
    likelyMm,
    lowerMm,
    upperMm,
    ...(then && then.likelyMm > (full ? upperMm : likelyMm)
      ? { again: { at: atMin * MIN_MS, likelyMm: then.likelyMm } }
      : {}),
  }
}

/** A full dip shorter than the neck needs to fill leaves the inside bare in part. */
function neckWarning(pot: PotState, dip: DipState): Warning | undefined {
  if (coverOn(pot.facts, dip.cover).kind !== 'full') return undefined
  const seconds = fillS(profileOf(pot.facts), dip.gramsPerMl)
  if (seconds <= dip.holdS) return undefined
  return { kind: 'neck', fillS: seconds, ...(coatsOn(pot).some(isFull) ? { before: true } : {}) }
}

const isFull = ({ cover }: DipState): boolean => cover.kind === 'full'

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

/** A hand takes a pot that is made again sooner than the coat before it stood then. */
function heldWarning(table: Table, pot: PotState, now: number): Warning | undefined {
  const until = heldUntil(table, pot)
  return until > now + TOGETHER_MS ? { kind: 'held', until } : undefined
}

function fitWarning(table: Table, pot: PotState, { bucketId, cover, holdS }: DipState): Warning | undefined {
  const fit = fitNow(table, pot.facts, { bucketId, cover, holdS })
  if (!fit || fit.misfit === 'none') return undefined
  const again = coatsOn(pot).some((dip) => dip.bucketId === bucketId && dip.cover.kind === cover.kind)
  const before = again ? ({ before: true } as const) : {}
  if (fit.misfit !== 'shallow') return { kind: 'fit', misfit: fit.misfit, ...before }
  const { levelAtMm: levelMm, neededMm: needsMm } = fit
  // Met as told, in whole mm, is met.
  return Math.round(levelMm) >= Math.round(needsMm)
    ? undefined
    : { kind: 'level', levelMm, needsMm, ...before }
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
