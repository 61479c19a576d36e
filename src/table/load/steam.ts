import type { LoadState } from '../model/load-state.ts'
import type { PotState, Table } from '../model/state.ts'
import { wetAt } from './before-fire.ts'
import { CANDLED_C, CLIMBED_MS, candled, clearSince, glassTellsFrom, isCandled, lastLook } from './loads.ts'

/** Steam bursts pots while water is left in them; by this heat none is, degC. Assumption. */
export const STEAMED_C = 350

/** Pots whose water has to leave in a kiln that is on and nobody candles: they were not dry as it went on. */
export const litWet = (table: Table, load: LoadState): readonly PotState[] =>
  load.litAt === undefined ? [] : wetAt(table, load, load.litAt)

/** What steams, and how that is known. Times are table time, ms. */
export interface Steams {
  /** The last reading, where it is above boiling. */
  readonly tempC?: number
  readonly foggedAt?: number
  /** The glass was clear since then, but not twice. */
  readonly clearAt?: number
  /** It was clear when pots are too cold to steam, which they are until `from`. */
  readonly early?: { readonly at: number; readonly from: number }
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
  const clearAt = clearSince(load)
  const [look, from] = [glass.at(-1), glassTellsFrom(load)]
  const early =
    look && !look.fogged && from !== undefined && look.at < from ? { at: look.at, from } : undefined
  const tempC = fog && readings.findLast(({ at }) => at <= fog.at)?.tempC
  return {
    ...(boils ? { tempC: last.tempC } : {}),
    ...(fog ? { foggedAt: fog.at } : {}),
    ...(clearAt === undefined ? {} : { clearAt }),
    ...(early ? { early } : {}),
    atHeat: boils && tempC !== undefined && tempC >= CANDLED_C,
    wet,
  }
}

/** Whether a glass may still be seen to fog, however often it was clear: until the kiln is beyond steam, or nobody looked for long. */
export function mayFog(table: Table, load: LoadState, now: number): boolean {
  const { glass, litAt, offAt, readings } = load
  const last = readings.at(-1)
  if (litAt === undefined || offAt !== undefined || (last && last.tempC >= STEAMED_C)) return false
  if (!candled(table, load) && glass.length === 0) return false
  return !isCandled(load) || now - Math.max(lastLook(load), last?.at ?? 0) <= CLIMBED_MS
}
