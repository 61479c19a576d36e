import psychrolib from 'psychrolib'
import { describe, expect, it } from 'vitest'
import {
  dewPointC,
  diffusivityM2PerS,
  evaporation,
  latentHeatJPerKg,
  nusseltCylinder,
  nusseltSheet,
  nusseltUpright,
  pressureAtAltitudePa,
  saturationPressurePa,
  vapourDensityKgPerM3,
  wetSurface,
} from '../../src/engine/air/air.ts'
import { rhFromPair } from '../../src/engine/air/psychrometer.ts'
import type { Air } from '../../src/engine/contract.ts'
import { rootOf } from '../../src/engine/numeric/root.ts'
import { near } from './near.ts'

const SEA_PA = 101_325
const air = (tempC: number, rh: number, speedMps = 0.1, pressurePa = SEA_PA): Air => ({
  tempC,
  rh,
  speedMps,
  pressurePa,
})

describe('saturation pressure', () => {
  // ASHRAE Handbook Fundamentals 2017, ch. 1, table 3, as in the tests of psychrometrics/psychrolib; 300 ppm claimed.
  it.each([
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
  ])('at %d degC is %d Pa (ASHRAE table 3)', (tempC, pa) =>
    near(saturationPressurePa(tempC), pa, { part: 3e-4 }),
  )
  // IAPWS-95 through CoolProp 8.0.0.
  it.each([
    [10, 1228.199],
    [20, 2339.318],
    [30, 4246.971],
  ])('at %d degC is %d Pa (IAPWS-95)', (tempC, pa) => near(saturationPressurePa(tempC), pa, { part: 3e-4 }))
  it('at 300 K is 3536.58941 Pa (IAPWS-IF97 release, table 35, computer-program verification)', () =>
    near(saturationPressurePa(26.85), 3536.58941, { part: 3e-4 }))
  // FAO Irrigation and drainage paper 56, example 3, by Tetens' formula, kPa to three places.
  it.each([
    [15, 1705],
    [24.5, 3075],
  ])('at %d degC is %d Pa (FAO-56 example 3)', (tempC, pa) =>
    near(saturationPressurePa(tempC), pa, { part: 2e-3 }),
  )
})

describe('vapour', () => {
  // Saturated vapour density by IAPWS-95 (CoolProp 8.0.0), g/m3; the ideal gas is 0.1 to 0.25 % lighter.
  it.each([
    [10, 9.4071],
    [20, 17.314],
    [30, 30.4152],
  ])('saturated at %d degC weighs %d g/m3', (tempC, grams) =>
    near(1000 * vapourDensityKgPerM3(tempC, 1), grams, { part: 3e-3 }),
  )

  // Their humidity is a part of the saturated mixing ratio, which is 0.62198 e / (p - e), e by vapour as an ideal gas.
  it.each([
    [28.1, 1000, 0.65, 15.9828],
    [30, 1013.25, 0.66176, 18],
  ])(
    'at %d degC, %d hPa, humidity %d holds %d g/kg of dry air (MetPy examples)',
    (tempC, hPa, part, grams) => {
      const e = (vapourDensityKgPerM3(tempC, 1) * 461.52 * (tempC + 273.15)) / 100
      near((1000 * part * 0.62198 * e) / (hPa - e), grams, { part: 2e-3 })
    },
  )
  // Latent heat by IAPWS-95 (CoolProp 8.0.0), kJ/kg.
  it.each([
    [10, 2477.19],
    [20, 2453.52],
    [40, 2405.98],
  ])('takes at %d degC %d kJ/kg', (tempC, kj) => near(latentHeatJPerKg(tempC) / 1000, kj, { part: 2e-4 }))
  it('ASHRAE 2017 ch. 1, example 1: air of 40 degC, 14 % has its dew point at 7 degC', () =>
    near(dewPointC(air(40, 0.14)), 7, { by: 0.5 }))
  // Incropera uses 0.26e-4 m2/s and Cengel 2.5e-5 m2/s for vapour in air at 298 K.
  it.each([2.6e-5, 2.5e-5])('spreads at 25 degC by %d m2/s (textbook tables)', (m2PerS) =>
    near(diffusivityM2PerS(25, SEA_PA), m2PerS, { part: 0.04 }),
  )
  // Fuller, Schettler & Giddings: diffusion volumes 12.7 of water and 20.1 of air.
  it.each([5, 20, 40])(
    'spreads at %d degC by its volume and that of air, to 3 % (Fuller, from memory)',
    (tempC) => {
      const apart = Math.cbrt(12.7) + Math.cbrt(20.1)
      const cm2PerS = (1e-3 * (tempC + 273.15) ** 1.75 * Math.sqrt(1 / 18.015 + 1 / 28.97)) / apart ** 2
      near(diffusivityM2PerS(tempC, SEA_PA), cm2PerS * 1e-4, { part: 0.03 })
    },
  )
})

describe('side by side with psychrolib 1.1.1 (ASHRAE 2017)', () => {
  psychrolib.SetUnitSystem(psychrolib.SI)
  const grid = [2, 8, 15, 20, 24, 30, 38].flatMap((tempC) =>
    [0.1, 0.3, 0.5, 0.7, 0.9, 1].flatMap((rh) => [SEA_PA, 90_000].map((pa) => [tempC, rh, pa] as const)),
  )
  it('saturation pressure over ice and water to 1e-9', () => {
    for (const tempC of [-19, -5, -0.5, 0.5, 5, 21, 33, 60])
      near(saturationPressurePa(tempC), psychrolib.GetSatVapPres(tempC), { part: 1e-9 })
  })
  it('dew point to 0.003 K', () => {
    for (const [t, rh, pa] of grid)
      near(dewPointC(air(t, rh, 0, pa)), psychrolib.GetTDewPointFromRelHum(t, rh), { by: 3e-3 })
  })
  it('a fanned pair gives its humidity to 1.2 points (another equation of the wet bulb)', () => {
    for (const [t, wet] of [
      [20, 15],
      [25, 18],
      [30, 20],
      [15, 10],
      [22, 21],
    ] as const)
      near(rhFromPair(t, wet, 'fanned', SEA_PA), psychrolib.GetRelHumFromTWetBulb(t, wet, SEA_PA), {
        by: 0.012,
      })
  })
  it('vapour in a cubic metre to 5e-5, from mixing ratio and volume of the moist air', () => {
    for (const [t, rh, pa] of grid) {
      const ratio = psychrolib.GetHumRatioFromRelHum(t, rh, pa)
      near(vapourDensityKgPerM3(t, rh), ratio / psychrolib.GetMoistAirVolume(t, ratio, pa), { part: 5e-5 })
    }
  })
  it('pressure at altitude to 1e-5', () => {
    for (const m of [0, 180, 500, 1000, 2200])
      near(pressureAtAltitudePa(m), psychrolib.GetStandardAtmPressure(m), { part: 1e-5 })
  })
})

describe('thermometer pairs', () => {
  it('ASHRAE table 1: 95461 Pa at 500 m, 89875 Pa at 1000 m', () => {
    near(pressureAtAltitudePa(500), 95_461, { by: 2 })
    near(pressureAtAltitudePa(1000), 89_875, { by: 2 })
  })
  it('ASHRAE 2017 ch. 1, example 1: 40/20 degC is 14 %', () =>
    near(rhFromPair(40, 20, 'fanned', SEA_PA), 0.14, { by: 0.01 }))
  it('a table of a fanned pair at 20 degC: 1 to 10 K apart, to 1.5 points (from memory)', () =>
    [91, 83, 74, 66, 59, 51, 44, 37, 30, 24].forEach((percent, i) => {
      near(rhFromPair(20, 19 - i, 'fanned', SEA_PA), percent / 100, { by: 0.015 })
    }))
  it('FAO-56 example 4: 25.6/19.5 degC at 87.9 kPa hold 1.91 kPa (from memory)', () =>
    near(rhFromPair(25.6, 19.5, 'fanned', 87_900) * saturationPressurePa(25.6), 1910, { by: 5 }))
  // FAO-56 eq. 16 with its coefficients 0.000662, 0.000800, 0.001200 over Tetens' pressures, for 20/15 degC at sea level.
  const fao = (perK: number): number => {
    const tetens = (t: number): number => 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
    return (tetens(15) - perK * 101.325 * 5) / tetens(20)
  }
  it.each([
    ['fanned', 0.000662],
    ['natural', 0.0008],
    ['still', 0.0012],
  ] as const)('%s agrees with FAO-56 eq. 16 at %d to 0.5 points', (draught, perK) =>
    near(rhFromPair(20, 15, draught, SEA_PA), fao(perK), { by: 0.005 }),
  )
  it('958 hPa, 25/12 degC is 19.83 % (MetPy example; its coefficient is 6.21e-4, ours 5 % more: 2 points)', () =>
    near(rhFromPair(25, 12, 'fanned', 95_800), 0.1983, { by: 0.02 }))
  it('with the coefficient 6.62e-4 of AWS330 manual, appendix B, 18/12 agrees to 0.3 points', () =>
    near(rhFromPair(18, 12, 'fanned', SEA_PA), (1402.6 - 6.62e-4 * SEA_PA * 6) / 2064.7, { by: 0.003 }))
})

describe('convection', () => {
  // Bergman et al., example 7.3, as quoted in the tests of the open library ht.
  it('cylinder, Re 6071, Pr 0.7: 40.637 (Churchill & Bernstein)', () =>
    near(nusseltCylinder(6071, 0.7), 40.637086, { part: 1e-7 }))
  // The same inputs by other published laws, as computed in the tests of ht: textbooks differ by 15 %.
  it.each([
    ['Sanitjai & Goldstein', 40.383],
    ['Zukauskas', 42.424],
    ['Fand', 45.2],
    ['Whitaker', 45.945],
    ['McAdams', 46.982],
  ])('cylinder within 15 %% of %s', (_, nusselt) => near(nusseltCylinder(6071, 0.7), nusselt, { part: 0.15 }))
  it('upright face of a 0.3 m duct, 45 against 15 degC: 47.83 (Bergman et al., example 9.3)', () =>
    near(nusseltUpright((9.81 * 30 * 0.3 ** 3) / (303 * 16.2e-6 * 22.9e-6), 16.2 / 22.9), 47.83, {
      part: 5e-3,
    }))
  it('upright face within 15 % of 0.59 Ra^1/4 (McAdams, from memory), Ra 1e5 to 1e8', () => {
    for (const rayleigh of [1e5, 1e6, 1e7, 1e8])
      near(nusseltUpright(rayleigh, 0.71), 0.59 * rayleigh ** 0.25, { part: 0.15 })
  })
  it('sheet, Pr 0.7: twice the local 0.2927 Re^1/2 of the exact boundary layer (from memory)', () =>
    near(nusseltSheet(1e4, 0.7), 2 * 0.2927 * 100, { part: 0.01 }))
})

describe('wet surfaces', () => {
  /** Where a wet pot that takes no heat by radiation settles, degC: close to the wet bulb. */
  const unradiatedC = (of: Air, sizeMm: number): number =>
    rootOf(
      (t) => {
        const { heatWPerM2K, massMPerS } = evaporation(of, t, sizeMm)
        const gap = vapourDensityKgPerM3(t, 1) - vapourDensityKgPerM3(of.tempC, of.rh)
        return latentHeatJPerKg(t) * massMPerS * gap - heatWPerM2K * (of.tempC - t)
      },
      dewPointC(of) - 1,
      of.tempC,
    )
  it('a wrapped can in 30 degC, 40 % settles at 19.4 degC without radiation (Cengel, example 14-12)', () =>
    near(unradiatedC(air(30, 0.4, 1), 65), 19.4, { by: 0.3 }))
  it('without radiation lies within 0.5 K of the thermodynamic wet bulb (psychrolib)', () => {
    for (const [t, rh] of [
      [20, 0.5],
      [24, 0.78],
      [15, 0.3],
    ] as const)
      near(unradiatedC(air(t, rh, 1), 100), psychrolib.GetTWetBulbFromRelHum(t, rh, SEA_PA), {
        by: 0.5,
      })
  })
  // Undisturbed water loses 74 % of (0.0885 + 0.0779 v)(pw - pa)/Y kg/m2s, kPa, kJ/kg (ASHRAE Transactions 104, 1998).
  it('still air over water at 20 degC, 50 %: 113 g/m2h from a pool; a pot within 25 % (Shah 2002: laws 18 % off)', () => {
    const still = air(20, 0.5, 0.05)
    const gap = vapourDensityKgPerM3(20, 1) - vapourDensityKgPerM3(20, 0.5)
    near(evaporation(still, 20, 100).massMPerS * gap * 3.6e6, 113, { part: 0.25 })
  })
  it('radiation among surfaces at 20 degC is 5.1 W/m2K at emissivity 0.9 (4 e sigma T3)', () =>
    near(evaporation(air(20, 0.5), 20, 100).radiationWPerM2K, 5.14, { by: 0.05 }))
  it('heat and mass agree by Lewis: h/hm is rho cp Le^2/3, about 1100 (textbook rule, from memory)', () => {
    const by = evaporation(air(20, 0.5), 15, 100)
    near(by.heatWPerM2K / by.massMPerS, 1100, { part: 0.05 })
  })
  it('a wet pot loses 60 to 105 g/m2h in a room at 21 degC, 32 % (common practice, no source)', () => {
    const grams = wetSurface(air(21, 0.32, 0.15), 100).evaporationKgPerM2s * 3.6e6
    expect(grams).toBeGreaterThan(60)
    expect(grams).toBeLessThan(105)
  })
})
