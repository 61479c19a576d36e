import type { Band } from '../../engine/contract.ts'
import { cooledMin, coolingReadings, nextReadingC } from '../../engine/melt/cooling.ts'
import { DEFAULT_AIR } from '../model/defaults.ts'
import type { Table } from '../model/state.ts'

export type { Band }

/** The lid stays shut above the one, pots come out below the other, degC. Common practice, no source. */
export const LID_C = 120
export const UNLOAD_C = 60

/** How the kiln of the kept readings cools, minutes after the last of them. */
export interface Cooling {
  /** Until the lid may be lifted, and until the pots may be taken out; null while the readings cannot tell. */
  readonly lid: Band | null
  readonly unload: Band | null
  /** The temperature at which the next reading tells most, degC; left out below the last of both. */
  readonly readAgainC?: number
}

/** Undefined until a reading lies below 600 degC after the hottest one. */
export function coolingOf({ log = [], air }: Table): Cooling | undefined {
  const last = coolingReadings(log).at(-1)
  if (!last) return undefined
  const roomC = (air.at(-1)?.air ?? DEFAULT_AIR).tempC
  const [lid, unload] = [cooledMin(log, roomC, LID_C), cooledMin(log, roomC, UNLOAD_C)]
  const next = last.tempC > LID_C ? LID_C : UNLOAD_C
  const again = last.tempC > next && roomC < next ? { readAgainC: nextReadingC(last.tempC, roomC, next) } : {}
  return { lid, unload, ...again }
}
