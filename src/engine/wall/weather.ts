/** What one air does to one pot: the constants that a wait needs, settled once. */

import {
  checkedAir,
  diffusivityM2PerS,
  evaporation,
  KELVIN,
  latentHeatJPerKg,
  vapourDensityKgPerM3,
  wetSurface,
} from '../air/air.ts'
import type { Air, Form } from '../contract.ts'
import { VAPOUR_RESISTANCE } from '../parameters.ts'
import { suctionFactor } from './body.ts'

export interface Weather {
  readonly tempC: number
  readonly rh: number
  /** Vapour in the air, kg/m3. */
  readonly aroundKgPerM3: number
  /** Scales the quick vapour law to the full one at air temperature. */
  readonly vapourScale: number
  readonly heatWPerM2K: number
  /** Resistance of the air at the outside to vapour, s/m. */
  readonly boundarySPerM: number
  readonly radiationWPerM2K: number
  readonly latentJPerKg: number
  /** Resistance of a mm of dry coat or body to vapour, s/m per mm. */
  readonly dryLayerSPerMPerMm: number
  readonly suction: number
}

/**
 * Saturated vapour, kg/m3, by the short law of the WMO guide (No. 8, annex 4.B): 0.3 % from the full law, which the
 * scale takes out.
 */
export const quickVapour = (tempC: number): number =>
  (611.2 * Math.exp((17.62 * tempC) / (243.12 + tempC))) / (461.52 * (tempC + KELVIN))

/** Its slope over its value, 1/K. */
export const quickVapourSlope = (tempC: number): number =>
  (17.62 * 243.12) / (243.12 + tempC) ** 2 - 1 / (tempC + KELVIN)

/** Pots are this wide at least and at most for the law of evaporation, mm. */
const SIZES_MM = [20, 1000] as const

/** The weather for a pot of a width. RangeError for an air that makes no sense. */
export function weatherOf(air: Air, widthMm: number): Weather {
  checkedAir(air)
  const sizeMm = Math.min(SIZES_MM[1], Math.max(SIZES_MM[0], widthMm))
  const surfaceC = wetSurface(air, sizeMm).tempC
  const by = evaporation(air, surfaceC, sizeMm)
  return {
    tempC: air.tempC,
    rh: air.rh,
    aroundKgPerM3: vapourDensityKgPerM3(air.tempC, air.rh),
    vapourScale: vapourDensityKgPerM3(air.tempC, 1) / quickVapour(air.tempC),
    heatWPerM2K: by.heatWPerM2K,
    boundarySPerM: 1 / by.massMPerS,
    radiationWPerM2K: by.radiationWPerM2K,
    latentJPerKg: latentHeatJPerKg(surfaceC),
    dryLayerSPerMPerMm: VAPOUR_RESISTANCE / diffusivityM2PerS(air.tempC, air.pressurePa) / 1000,
    suction: suctionFactor(air.tempC),
  }
}

/** How freely air reaches the inside, against the outside. Tuned: 0.3 a narrow neck, 0.6 a mug, 0.8 an open bowl; a lid stands on its hollow. */
export const INSIDE_AIRING: Record<Form, number> = {
  bottle: 0.3,
  jar: 0.6,
  cup: 0.6,
  beaker: 0.6,
  cylinder: 0.6,
  bowl: 0.8,
  plate: 0.8,
  lid: 0.3,
}
