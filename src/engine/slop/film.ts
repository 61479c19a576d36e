/** The film a face carries out of the bucket: drag-out, drainage, and what gravity cannot move. */

import type { Slop } from '../contract.ts'
import {
  DRAIN_FULL_S,
  DRAIN_THIRSTY_S,
  GRAVITY_M_PER_S2,
  SLOP_TENSION_N_PER_M,
  SLOP_VISCOSITY_PA_S,
  SLOP_VISCOSITY_SLOPE,
  SLOP_VISCOSITY_SOLIDS,
  SLOP_YIELD_PA,
} from '../parameters.ts'
import { solidsFraction } from './slop.ts'

/** Coefficient of Landau, Levich & Derjaguin's law; 0.944 in the original papers, 0.94581 solved to more digits. */
const DRAG_OUT = 0.94581

/** Film dragged out at `speedMPerS`, mm: Landau & Levich 1942, Derjaguin 1943. `kgPerM3`, Pa s, N/m. */
export function dragOutMm(viscosity: number, speedMPerS: number, kgPerM3: number, tension: number): number {
  const capillary = (viscosity * speedMPerS) / tension
  return 1000 * DRAG_OUT * Math.sqrt(tension / (kgPerM3 * GRAVITY_M_PER_S2)) * Math.cbrt(capillary) ** 2
}

/** Film left `belowM` metres under its upper end after draining `drainS`, mm: Jeffreys 1930. */
export const drainedMm = (viscosity: number, kgPerM3: number, belowM: number, drainS: number): number =>
  1000 * Math.sqrt((viscosity * belowM) / (kgPerM3 * GRAVITY_M_PER_S2 * drainS))

/** Mean of Jeffreys' film over a face against its value at the lower end. */
const FACE_MEAN = 2 / 3

export interface Film {
  /** Dry coat in the film while a thirsty wall sets it, mm. */
  readonly thirstyMm: number
  /** Dry coat in the film that a full wall leaves to drain, mm. */
  readonly fullMm: number
}

/** Dry coat in the film of a coat that is `lengthMm` long along the wall and leaves at `liftMmPerS`. */
export function filmOf(slop: Slop, lengthMm: number, liftMmPerS: number): Film {
  const solids = solidsFraction(slop)
  const kgPerM3 = 1000 * slop.gramsPerMl
  const viscosity = SLOP_VISCOSITY_PA_S * Math.exp(SLOP_VISCOSITY_SLOPE * (solids - SLOP_VISCOSITY_SOLIDS))
  const carried = dragOutMm(viscosity, liftMmPerS / 1000, kgPerM3, SLOP_TENSION_N_PER_M)
  const stands = (1000 * SLOP_YIELD_PA) / (kgPerM3 * GRAVITY_M_PER_S2)
  const after = (drainS: number): number => {
    const mean = FACE_MEAN * drainedMm(viscosity, kgPerM3, lengthMm / 1000, drainS)
    return (Math.min(carried, Math.max(stands, mean)) * solids) / slop.cakeSolids
  }
  return { thirstyMm: after(DRAIN_THIRSTY_S), fullMm: after(DRAIN_FULL_S) }
}
