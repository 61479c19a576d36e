import type { LoadState } from '../model/load-state.ts'
import type { PotState, Table } from '../model/state.ts'
import { wetAt } from './before-fire.ts'
import { CANDLED_C, candled, isCandled } from './loads.ts'

/** Steam bursts pots while water is left in them; by this heat none is, degC. Assumption. */
const STEAMED_C = 350

/** Pots whose water has to leave in a kiln that is on and nobody candles: they were not dry as it went on. */
export const litWet = (table: Table, load: LoadState): readonly PotState[] =>
  load.litAt === undefined ? [] : wetAt(table, load, load.litAt)

/** What steams, and how that is known. Times are table time, ms. */
export interface Steams {
  /** The last reading, where it is above boiling. */
  readonly tempC?: number
  readonly foggedAt?: number
  /** It fogged while the kiln was read above boiling. */
  readonly atHeat: boolean
  /** Lit wet though nobody candles it. */
  readonly wet: readonly PotState[]
}

/**
 * Water is left in a load whose kiln is on: it is candled and read above boiling, or was lit wet, and its glass was not
 * clear twice. Undefined where nothing speaks for it, or the kiln is read beyond where any is left.
 */
export function steamsAt(table: Table, load: LoadState): Steams | undefined {
  const { glass, litAt, offAt, readings } = load
  if (litAt === undefined || offAt !== undefined || isCandled(load)) return undefined
  const last = readings.at(-1)
  if (last && last.tempC >= STEAMED_C) return undefined
  const boils = last !== undefined && last.tempC >= CANDLED_C
  const fog = glass.findLast(({ fogged }) => fogged)
  const wet = litWet(table, load)
  if (wet.length === 0 && !(boils && (fog || candled(table, load)))) return undefined
  const tempC = fog && readings.findLast(({ at }) => at <= fog.at)?.tempC
  return {
    ...(boils ? { tempC: last.tempC } : {}),
    ...(fog ? { foggedAt: fog.at } : {}),
    atHeat: boils && tempC !== undefined && tempC >= CANDLED_C,
    wet,
  }
}
