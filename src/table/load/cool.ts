import type { Band } from '../../engine/contract.ts'
import {
  cooledMin,
  coolingReadings,
  lnRateOf,
  nextReadingC,
  USED_BELOW_C,
} from '../../engine/melt/cooling.ts'
import type { BandMs } from '../forecast/forecast.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import type { HeatReading, LoadState } from '../model/load-state.ts'
import type { Table } from '../model/state.ts'
import { after, logOf } from './heat-log.ts'
import { LID_C, loadsOf, UNLOAD_C } from './loads.ts'

const MIN_MS = 60_000

export { USED_BELOW_C }

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

/** Readings of the cooling with lid and bung in: what comes after tells nothing of another load that is shut. */
const shutCooling = ({ offAt = 0, bungAt, openedAt, readings }: LoadState): readonly HeatReading[] =>
  readings.filter(({ at }) => at >= offAt && at <= Math.min(bungAt ?? at, openedAt ?? at))

/** Undefined until the kiln is off and something was read since. */
export function loadCooling(table: Table, load: LoadState): LoadCooling | undefined {
  const readings = cooling(load)
  const last = readings.at(-1)
  if (load.offAt === undefined || !last) return undefined
  const log = logOf(readings)
  const used = coolingReadings(log)
  const roomC = roomOf(table)
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

/** What a kiln cools down to, degC. */
export const roomOf = (table: Table): number => (table.air.at(-1)?.air ?? DEFAULT_AIR).tempC

/** What the earlier coolings of the same kiln came to, logarithm of a rate an hour; undefined where there are none. */
export function earlierRate(table: Table, load: LoadState, roomC: number): number | undefined {
  const rates = loadsOf(table).flatMap((other) => {
    const same = other.kiln.kilnId === load.kiln.kilnId && other.begunAt < load.begunAt
    const rate = same && other.offAt !== undefined ? lnRateOf(logOf(shutCooling(other)), roomC) : null
    return rate === null ? [] : [rate]
  })
  return rates.length === 0 ? undefined : rates.reduce((sum, rate) => sum + rate, 0) / rates.length
}
