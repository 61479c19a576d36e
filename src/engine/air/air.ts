/** Evaporation from wet clay: mixed convection about a pot, radiation, the wet surface's own temperature. */

import { inRange } from '../check.ts'
import type { Air } from '../contract.ts'
import { rootOf } from '../numeric/root.ts'
import { GRAVITY_M_PER_S2 } from '../parameters.ts'
import {
  COLDEST_C,
  checkedAir,
  checkedTempC,
  dewPointC,
  KELVIN,
  latentHeatJPerKg,
  STANDARD_PRESSURE_PA,
  saturationPressurePa,
  vapourDensityKgPerM3,
} from './vapour.ts'

export * from './vapour.ts'

const STEFAN_BOLTZMANN = 5.670374e-8
/** Emissivity of wet clay and glaze slop: water and most minerals are 0.9 to 0.96 (handbook range, from memory). */
const EMISSIVITY = 0.9
const DRY_AIR_J_PER_KG_K = 287.05
const AIR_HEAT_J_PER_KG_K = 1006

/** Diffusivity of water vapour in air, m2/s, 1 to 177 degC: Marrero & Mason 1972, J. Phys. Chem. Ref. Data 1, 3. */
export function diffusivityM2PerS(tempC: number, pressurePa: number): number {
  const t = checkedTempC('tempC', tempC) + KELVIN
  return (1.87e-10 * t ** 2.072 * STANDARD_PRESSURE_PA) / inRange('pressurePa', pressurePa, 50_000, 110_000)
}

/** Nusselt number of a cylinder across a stream (Churchill & Bernstein 1977); needs Re Pr above 0.2. */
export function nusseltCylinder(reynolds: number, prandtl: number): number {
  return (
    0.3 +
    ((0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25) *
      (1 + (reynolds / 282_000) ** 0.625) ** 0.8
  )
}

/** Nusselt number of a sheet along a stream, laminar (Blasius/Pohlhausen), Re below 5e5. */
export function nusseltSheet(reynolds: number, prandtl: number): number {
  return 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl)
}

/** Nusselt number of an upright face in still air, laminar (Churchill & Chu 1975, eq. for Ra below 1e9). */
export function nusseltUpright(rayleigh: number, prandtl: number): number {
  return 0.68 + (0.67 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9)
}

export interface Transfer {
  /** Convective heat transfer coefficient. */
  readonly heatWPerM2K: number
  /** Vapour transfer coefficient: flux = massMPerS x difference of vapour densities. */
  readonly massMPerS: number
  /** Heat exchanged with the room's walls, taken to be at air temperature. */
  readonly radiationWPerM2K: number
}

type Body = 'pot' | 'sheet'

function transfer(air: Air, surfaceTempC: number, sizeMm: number, body: Body): Transfer {
  const p = air.pressurePa
  const sizeM = sizeMm / 1000
  const airK = air.tempC + KELVIN
  const filmK = (air.tempC + surfaceTempC) / 2 + KELVIN
  // Sutherland's laws for dry air (White, Viscous Fluid Flow, table 1-2 and 1-3).
  const viscosity = (1.716e-5 * (filmK / KELVIN) ** 1.5 * (KELVIN + 111)) / (filmK + 111)
  const conductivity = (0.0241 * (filmK / KELVIN) ** 1.5 * (KELVIN + 194)) / (filmK + 194)
  const density = p / (DRY_AIR_J_PER_KG_K * filmK)
  const prandtl = (viscosity * AIR_HEAT_J_PER_KG_K) / conductivity
  const reynolds = (density * air.speedMps * sizeM) / viscosity
  // Moist air is lighter than dry: buoyancy runs on the virtual temperature.
  const vapourGapPa = saturationPressurePa(surfaceTempC) - air.rh * saturationPressurePa(air.tempC)
  const virtualGapK = Math.abs(air.tempC - surfaceTempC - (0.378 * airK * vapourGapPa) / p)
  const rayleigh =
    ((GRAVITY_M_PER_S2 * virtualGapK * sizeM ** 3) / (filmK * (viscosity / density) ** 2)) * prandtl
  const forced = body === 'pot' ? nusseltCylinder(reynolds, prandtl) : nusseltSheet(reynolds, prandtl)
  const nusselt = Math.cbrt(forced ** 3 + nusseltUpright(rayleigh, prandtl) ** 3)
  const heatWPerM2K = (nusselt * conductivity) / sizeM
  const heatPerM3K = density * AIR_HEAT_J_PER_KG_K
  const lewis = conductivity / heatPerM3K / diffusivityM2PerS(filmK - KELVIN, p)
  // All three alike: a wet surface keeps its temperature and loses exactly the factor as much.
  const factor = air.factor ?? 1
  return {
    heatWPerM2K: factor * heatWPerM2K,
    massMPerS: (factor * heatWPerM2K) / (heatPerM3K * lewis ** (2 / 3)),
    radiationWPerM2K: factor * 4 * EMISSIVITY * STEFAN_BOLTZMANN * filmK ** 3,
  }
}

/**
 * Transfer coefficients at the outside of a pot of `sizeMm` (10 to 1000, about its width) whose surface is at
 * `surfaceTempC`: a cylinder across the draught blended by cubes with still-air convection on an upright face, mass
 * from heat by Chilton & Colburn. Textbook laws for this case differ by 15 %, pools measured by 18 % and more (Shah
 * 2002): carry at least 20 %.
 */
export function evaporation(air: Air, surfaceTempC: number, sizeMm: number): Transfer {
  checkedAir(air)
  checkedTempC('surfaceTempC', surfaceTempC)
  inRange('sizeMm', sizeMm, 10, 1000)
  return transfer(air, surfaceTempC, sizeMm, 'pot')
}

export interface WetSurface {
  readonly tempC: number
  readonly evaporationKgPerM2s: number
}

function settled(air: Air, sizeMm: number, body: Body): WetSurface {
  const around = vapourDensityKgPerM3(air.tempC, air.rh)
  const flux = (tempC: number, by: Transfer): number =>
    by.massMPerS * (vapourDensityKgPerM3(tempC, 1) - around)
  const tempC = rootOf(
    (t) => {
      const by = transfer(air, t, sizeMm, body)
      const gain = (by.heatWPerM2K + by.radiationWPerM2K) * (air.tempC - t)
      return latentHeatJPerKg(t) * flux(t, by) - gain
    },
    Math.max(COLDEST_C, dewPointC(air) - 1),
    air.tempC,
  )
  return { tempC, evaporationKgPerM2s: Math.max(0, flux(tempC, transfer(air, tempC, sizeMm, body))) }
}

/**
 * Where a wet pot's surface settles between the cold of evaporation and the warmth of air and room, and how fast it
 * then loses water. In saturated air nothing evaporates.
 */
export function wetSurface(air: Air, sizeMm: number): WetSurface {
  checkedAir(air)
  return settled(air, inRange('sizeMm', sizeMm, 10, 1000), 'pot')
}

/** As `wetSurface` for a damp sheet with both faces in the air, no wider than a metre. */
export function wetSheet(air: Air, sizeMm: number): WetSurface {
  checkedAir(air)
  return settled(air, inRange('sizeMm', sizeMm, 10, 1000), 'sheet')
}
