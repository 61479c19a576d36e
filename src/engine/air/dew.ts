/** Pots brought in from the cold: dew on them, and how fast they warm. */

import { between, inRange } from '../check.ts'
import type { Air } from '../contract.ts'
import { CLAY_J_PER_KG_K } from '../parameters.ts'
import { evaporation } from './air.ts'
import { dewPointC, vapourDensityKgPerM3 } from './vapour.ts'

export interface Condensation {
  readonly dewPointC: number
  readonly condenses: boolean
  /** Water settling on the pot while it stays this cold, mm/h. */
  readonly filmMmPerH: number
}

/**
 * Temperature of a bare pot brought in at `potTempC` after `minutes` in this air, degC: its wall, `dryKgPerM2` heavy
 * (both faces), warms by convection and radiation at the outside alone, which errs on the cold side.
 */
export function warmedC(
  potTempC: number,
  air: Air,
  sizeMm: number,
  dryKgPerM2: number,
  minutes: number,
): number {
  between('dryKgPerM2', dryKgPerM2, 0, 500)
  inRange('minutes', minutes, 0, 1e6)
  const by = evaporation({ ...air, factor: 1 }, potTempC, sizeMm)
  const perS = (by.heatWPerM2K + by.radiationWPerM2K) / (CLAY_J_PER_KG_K * dryKgPerM2)
  return air.tempC + (potTempC - air.tempC) * Math.exp(-perS * minutes * 60)
}

/** Does a pot brought in at `potTempC` draw water out of this air? Dry it and warm it before the first dip. */
export function condensation(air: Air, potTempC: number, sizeMm: number): Condensation {
  const by = evaporation(air, potTempC, sizeMm)
  const gap = vapourDensityKgPerM3(air.tempC, air.rh) - vapourDensityKgPerM3(potTempC, 1)
  return { dewPointC: dewPointC(air), condenses: gap > 0, filmMmPerH: Math.max(0, by.massMPerS * gap) * 3600 }
}
