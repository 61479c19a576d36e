import { CONE_STANDS, type ConeStand } from '../../../shared/load.ts'
import type { FiringFacts } from '../../../shared/nouns.ts'
import { coneFallsMin, type Offset, offsetOf, WITHIN_C } from '../../engine/melt/cone-watch.ts'
import { coneTemp, RATE_C_PER_H, USUAL_CONES } from '../../engine/melt/cones.ts'
import { endOf } from '../firing/firing.ts'
import type { BandMs } from '../forecast/forecast.ts'
import type { HeatReading, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { after, logOf } from './heat-log.ts'
import { bendOf, fallOf, loadsOf, seriesOf } from './loads.ts'

const MIN_MS = 60_000
/** A cone that was seen so long after the last reading is tied to none. Our choice. */
const BESIDE_MS = 15 * MIN_MS
/** From its first bend until a cone lies. A supplier of cones says 15 to 25 min; from memory. */
const BENDS_MS = { least: 15 * MIN_MS, most: 25 * MIN_MS }
/** The rise at a fall is that of the last 100 K before it. */
const RISE_K = 100
/** A cone so far from where its chart and this kiln have it is asked about, K: three sds of both. Assumption. */
const ODD_K = 24

/** How much hotter this kiln is than it shows, as the person took it; undefined where nobody did. */
const takenOffset = (table: Table, kilnId: string): Offset | undefined => {
  const taken = table.offsets?.[kilnId]
  return taken && { mean: taken.offsetC, sd: offsetOf(Array.from({ length: taken.of }, () => 0)).sd }
}

/**
 * When the cone of a load falls, table time, ms; undefined while that cannot be told. Once it is seen to bend, that tells
 * it and no reading does.
 */
export function coneAhead(table: Table, load: LoadState): BandMs | undefined {
  const { firing, readings, offAt } = load
  const bend = bendOf(load)
  if (bend) {
    const upper = bend.at + BENDS_MS.most
    const lower = Math.max(bend.at, (bend.stoodAt ?? bend.at - BENDS_MS.most) + BENDS_MS.least)
    return { lower, likely: (lower + upper) / 2, upper }
  }
  const rising = readings.filter(({ at }) => offAt === undefined || at <= offAt)
  const end = endOf(firing)
  const last = rising.at(-1)
  if (!last || !end || firing.make !== 'american') return undefined
  const falls = coneFallsMin(logOf(rising), firing.cone, end.tempC, takenOffset(table, load.kiln.kilnId))
  return falls ? after(last.at, falls) : undefined
}

/** A fallen cone against what the thermometer showed, K: positive where the kiln is hotter than it shows. */
export interface ConeTaught {
  readonly loadId: string
  readonly cone: string
  readonly at: number
  /** By which it was said. */
  readonly hit: string
  readonly shownC: number
  readonly chartC: number
  readonly overK: number
}

function shownAt(readings: readonly HeatReading[], at: number): number | undefined {
  const before = readings.findLast((reading) => reading.at <= at)
  const next = readings.find((reading) => reading.at >= at)
  if (before && next)
    return next.at === before.at
      ? before.tempC
      : before.tempC + ((next.tempC - before.tempC) * (at - before.at)) / (next.at - before.at)
  const [only, further] = before ? [before, readings.at(-2)] : [next, undefined]
  if (!only || Math.abs(only.at - at) > BESIDE_MS) return undefined
  const perMs = further && only.at > further.at ? (only.tempC - further.tempC) / (only.at - further.at) : 0
  return only.tempC + Math.max(0, perMs) * (at - only.at)
}

function riseAt(load: LoadState, at: number, shownC: number): number {
  const before = load.readings.filter((reading) => reading.at < at && reading.tempC < shownC)
  const from = before.find(({ tempC }) => tempC >= shownC - RISE_K) ?? before.at(-1)
  return from ? ((shownC - from.tempC) / (at - from.at)) * 60 * MIN_MS : load.firing.riseCPerH
}

/** What the cones of a load say of its kiln's thermometer. */
export function conesTaught(load: LoadState): readonly ConeTaught[] {
  if (load.firing.make !== 'american') return []
  const seen = [...new Set(load.cones.map(({ cone }) => cone))]
  return seen.flatMap((cone): ConeTaught[] => {
    const fall = fallOf(load, cone)
    if (fall?.is !== 'down') return []
    const { at, hit } = fall
    // First seen to lie in a kiln that cools: nobody saw at what heat it fell.
    if (load.offAt !== undefined && at > load.offAt) return []
    const shownC = shownAt(
      load.readings.filter((reading) => load.offAt === undefined || reading.at <= load.offAt),
      at,
    )
    const perH = shownC === undefined ? 0 : riseAt(load, at, shownC)
    // A rise that no kiln has is a slip in one of its readings.
    const isRise = perH > RATE_C_PER_H.above && perH < RATE_C_PER_H.below
    const chartC = isRise ? coneTemp(cone, USUAL_CONES, perH)?.tempC : undefined
    if (shownC === undefined || chartC === undefined) return []
    return [{ loadId: load.loadId, cone, at, hit, shownC, chartC, overK: chartC - shownC }]
  })
}

/** What all fallen cones of a kiln come to, whether taken or not. */
export function offsetLearned(table: Table, kilnId: string): (Offset & { readonly of: number }) | undefined {
  const taught = loadsOf(table)
    .filter(({ kiln }) => kiln.kilnId === kilnId)
    .flatMap(conesTaught)
    .filter((cone) => !isOdd(table, kilnId, cone))
  if (taught.length === 0) return undefined
  return { ...offsetOf(taught.map(({ overK }) => overK)), of: taught.length }
}

/** Whether cone and thermometer disagree by more than this kiln does: it is asked which is wrong. */
export const isOdd = (table: Table, kilnId: string, { overK }: ConeTaught): boolean =>
  Math.abs(overK - (table.offsets?.[kilnId]?.offsetC ?? 0)) > ODD_K

export { CONE_STANDS, type ConeStand, WITHIN_C }

/** The cones of a set: the guide before the wanted one, it, and the guard after it, where the series has them. */
export function besideCones(firing: FiringFacts): readonly string[] {
  const all = seriesOf(firing)
  const at = all.indexOf(firing.cone)
  return at < 0 ? [firing.cone] : all.slice(Math.max(0, at - 1), at + 2)
}
