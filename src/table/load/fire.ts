import { CONE_STANDS, type ConeStand } from '../../../shared/load.ts'
import type { FiringFacts } from '../../../shared/nouns.ts'
import type { Band } from '../../engine/contract.ts'
import { coneFallsMin, type Offset, offsetOf } from '../../engine/melt/cone-watch.ts'
import { conesOf, coneTemp, USUAL_CONES } from '../../engine/melt/cones.ts'
import { cooledMin, coolingReadings, lnRateOf, nextReadingC } from '../../engine/melt/cooling.ts'
import type { LogPoint } from '../../engine/melt/firing.ts'
import { endOf } from '../firing/firing.ts'
import type { BandMs } from '../forecast/forecast.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import type { HeatReading, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { LID_C, loadsOf, UNLOAD_C } from './loads.ts'

const MIN_MS = 60_000
/** A cone that was seen so long after the last reading is tied to none. Our choice. */
const BESIDE_MS = 15 * MIN_MS
/** The rise at a fall is that of the last 100 K before it. */
const RISE_K = 100
/** A cone so far from where its chart and this kiln have it is asked about, K: three sds of both. Assumption. */
const ODD_K = 24

/** Readings in minutes after the first. */
const logOf = (readings: readonly HeatReading[]): readonly LogPoint[] =>
  readings.map(({ at, tempC }) => ({ atMin: (at - (readings[0]?.at ?? 0)) / MIN_MS, tempC }))

const after = (at: number, { lower, likely, upper }: Band): BandMs => ({
  lower: at + lower * MIN_MS,
  likely: at + likely * MIN_MS,
  upper: at + upper * MIN_MS,
})

/** How much hotter this kiln is than it shows, as the person took it; undefined where nobody did. */
const takenOffset = (table: Table, kilnId: string): Offset | undefined => {
  const taken = table.offsets?.[kilnId]
  return taken && { mean: taken.offsetC, sd: offsetOf(Array.from({ length: taken.of }, () => 0)).sd }
}

/** When the cone of a load falls, table time, ms; undefined while that cannot be told. */
export function coneAhead(table: Table, load: LoadState): BandMs | undefined {
  const { firing, readings, offAt } = load
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
  const first = new Map<string, number>()
  for (const { cone, is, at } of load.cones) if (is === 'down' && !first.has(cone)) first.set(cone, at)
  return [...first].flatMap(([cone, at]): ConeTaught[] => {
    const shownC = shownAt(
      load.readings.filter((reading) => load.offAt === undefined || reading.at <= load.offAt),
      at,
    )
    const perH = shownC === undefined ? 0 : riseAt(load, at, shownC)
    const chartC = perH > 0 ? coneTemp(cone, USUAL_CONES, perH)?.tempC : undefined
    if (shownC === undefined || chartC === undefined) return []
    return [{ loadId: load.loadId, cone, at, shownC, chartC, overK: chartC - shownC }]
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

/** How a load cools. Times are table time, ms. */
export interface LoadCooling {
  readonly last: HeatReading
  /** Until the lid may be lifted, and until pots come out; null while readings cannot tell. */
  readonly lid: BandMs | null
  readonly unload: BandMs | null
  /** The next reading tells most at this temperature, and about then. */
  readonly again?: { readonly tempC: number; readonly at?: number }
}

const MOST_TARGET_C = 400

/** Readings of the cooling, anew from when a bung was pulled or the lid lifted. */
export function cooling(load: LoadState): readonly HeatReading[] {
  const { offAt, bungAt, openedAt, readings } = load
  const sinceAt = Math.max(offAt ?? 0, bungAt ?? 0, openedAt ?? 0)
  return readings.filter(({ at }) => at >= sinceAt)
}

/** Undefined until the kiln is off and something was read since. */
export function loadCooling(table: Table, load: LoadState): LoadCooling | undefined {
  const readings = cooling(load)
  const last = readings.at(-1)
  if (load.offAt === undefined || !last) return undefined
  const log = logOf(readings)
  const used = coolingReadings(log)
  const roomC = (table.air.at(-1)?.air ?? DEFAULT_AIR).tempC
  const lnRate = earlierRate(table, load, roomC)
  const band = (targetC: number): Band | null => cooledMin(log, roomC, targetC, lnRate)
  const told = (targetC: number): BandMs | null => {
    const left = band(targetC)
    return left && after(last.at, left)
  }
  const next = last.tempC > LID_C ? LID_C : UNLOAD_C
  if (used.length === 0 || last.tempC <= next || roomC >= next)
    return { last, lid: told(LID_C), unload: told(UNLOAD_C) }
  const tempC = nextReadingC(last.tempC, roomC, next)
  const likely = tempC <= MOST_TARGET_C ? band(tempC)?.likely : undefined
  const at = likely === undefined || !Number.isFinite(likely) ? {} : { at: last.at + likely * MIN_MS }
  return { last, lid: told(LID_C), unload: told(UNLOAD_C), again: { tempC, ...at } }
}

/** What the earlier coolings of the same kiln came to, logarithm of a rate; undefined where there are none. */
function earlierRate(table: Table, load: LoadState, roomC: number): number | undefined {
  const rates = loadsOf(table).flatMap((other) => {
    const same = other.kiln.kilnId === load.kiln.kilnId && other.begunAt < load.begunAt
    const rate = same && other.offAt !== undefined ? lnRateOf(logOf(cooling(other)), roomC) : null
    return rate === null ? [] : [rate]
  })
  return rates.length === 0 ? undefined : rates.reduce((sum, rate) => sum + rate, 0) / rates.length
}

/** What is to come of a load that somebody would want to be called for. Table time, ms. */
export interface LoadCall {
  readonly loadId: string
  readonly what: 'cone' | 'lid' | 'unload' | 'read'
  readonly at: number
}

/** Calls of every load whose kiln is on or cools, soonest first: of a cone the earliest, of lid and pots the likely moment. */
export function loadCalls(table: Table): readonly LoadCall[] {
  return loadsOf(table)
    .flatMap((load): LoadCall[] => {
      const { loadId, litAt, offAt, openedAt } = load
      if (litAt === undefined) return []
      if (offAt === undefined) {
        const ahead = coneAhead(table, load)
        return ahead ? [{ loadId, what: 'cone', at: ahead.lower }] : []
      }
      const cools = loadCooling(table, load)
      const calls: LoadCall[] = []
      const add = (what: LoadCall['what'], at: number | undefined) => {
        if (at !== undefined && Number.isFinite(at)) calls.push({ loadId, what, at })
      }
      if (cools && openedAt === undefined && cools.last.tempC > LID_C) add('lid', cools.lid?.likely)
      if (cools && cools.last.tempC > UNLOAD_C) {
        add('unload', cools.unload?.likely)
        add('read', cools.again?.at)
      }
      return calls
    })
    .sort((a, b) => a.at - b.at)
}

export { CONE_STANDS, type ConeStand }

/** The cones of a set: the guide before the wanted one, it, and the guard after it, where the series has them. */
export function besideCones({ cone, make }: FiringFacts): readonly string[] {
  const all = conesOf(make, make === 'american' ? USUAL_CONES.mounting : 'unstated')
  const at = all.indexOf(cone)
  return at < 0 ? [cone] : all.slice(Math.max(0, at - 1), at + 2)
}
