/** Water vapour: saturation, density, dew point, pressure at a height. */

import { inRange } from '../check.ts'
import type { Air } from '../contract.ts'
import { rootOf } from '../numeric/root.ts'

export const KELVIN = 273.15
export const STANDARD_PRESSURE_PA = 101_325
/** Specific gas constant of water vapour, J/(kg K): 8.314462 / 0.01801527. */
const VAPOUR_J_PER_KG_K = 461.52
export const COLDEST_C = -60
const HOTTEST_C = 100
export const PRESSURE_PA = [50_000, 110_000] as const
/** A cloth this far off was weighed wrongly, or was dry. */
export const FACTORS = [0.1, 10] as const

/** Throws RangeError naming `field` unless a temperature, degC, is one that the laws of vapour here cover. */
export const checkedTempC = (field: string, tempC: number): number =>
  inRange(field, tempC, COLDEST_C, HOTTEST_C)

/** Throws RangeError unless temperature (-60 to 100 degC), humidity, draught (0 to 20 m/s), pressure and factor make sense. */
export function checkedAir(air: Air): Air {
  checkedTempC('air.tempC', air.tempC)
  inRange('air.rh', air.rh, 0, 1)
  inRange('air.speedMps', air.speedMps, 0, 20)
  inRange('air.pressurePa', air.pressurePa, ...PRESSURE_PA)
  inRange('air.factor', air.factor ?? 1, ...FACTORS)
  return air
}

/**
 * Saturation pressure of water vapour, Pa, at `tempC` (-60 to 100 degC), over ice below 0 degC.
 * Hyland & Wexler 1983 as printed in ASHRAE Fundamentals 2017, ch. 1, eqs 5 and 6.
 */
export function saturationPressurePa(tempC: number): number {
  const t = checkedTempC('tempC', tempC) + KELVIN
  if (tempC < 0)
    return Math.exp(
      -5674.5359 / t +
        6.3925247 +
        t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 - t * 9.484024e-13))) +
        4.1635019 * Math.log(t),
    )
  return Math.exp(
    -5800.2206 / t +
      1.3914993 +
      t * (-0.048640239 + t * (4.1764768e-5 - t * 1.4452093e-8)) +
      6.5459673 * Math.log(t),
  )
}

/** Mass of vapour in a cubic metre of air at `tempC` and `rh` (0 to 1), kg/m3, as an ideal gas. */
export function vapourDensityKgPerM3(tempC: number, rh: number): number {
  return (inRange('rh', rh, 0, 1) * saturationPressurePa(tempC)) / (VAPOUR_J_PER_KG_K * (tempC + KELVIN))
}

/** Temperature at which this air's vapour starts to condense, degC; -60 for air drier than that. */
export function dewPointC(air: Air): number {
  checkedAir(air)
  const vapourPa = air.rh * saturationPressurePa(air.tempC)
  return rootOf((t) => saturationPressurePa(t) - vapourPa, COLDEST_C, air.tempC)
}

/** Station pressure, Pa, `altitudeM` above the sea (-500 to 5000 m): standard atmosphere, ASHRAE 2017 ch. 1 eq. 3. */
export function pressureAtAltitudePa(altitudeM: number): number {
  return STANDARD_PRESSURE_PA * (1 - 2.25577e-5 * inRange('altitudeM', altitudeM, -500, 5000)) ** 5.2559
}

/** Heat that turns a kilogram of water to vapour, J/kg; within 0.02 % of IAPWS-95 from 10 to 40 degC. */
export function latentHeatJPerKg(tempC: number): number {
  return 2.501e6 - 2369 * checkedTempC('tempC', tempC)
}
