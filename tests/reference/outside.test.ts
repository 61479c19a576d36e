/**
 * Values that nothing here was typed from or tuned to. Read: the figure itself stood in the text named.
 * Pools: nine values of a published pool model in open code (E = 35 rho (drho)^(1/3) (dW), after Shah); mean deviation
 * of that law from measurements 18 %.
 * Porous vessel: Mittal, Kataria, Das & Chatterjee, Int. J. Green Energy 3 (2006), doi 10.1080/01971520600704654.
 * Sand column: Iden, Diamantopoulos & Durner, Water Resour. Res. 57 (2021), doi 10.1029/2020WR028514, data CC-BY 4.0,
 * 20 of 54 rows; water lost and filling by trapezoids.
 * Withdrawn plates: Harman & Schaefer, J. Am. Ceram. Soc. 27 (1944) 202-207, abstract.
 */

import psychrolib from 'psychrolib'
import { describe, expect, test } from 'vitest'
import { evaporation, vapourDensityKgPerM3, wetSurface } from '../../src/engine/air/air.ts'
import type { Air } from '../../src/engine/contract.ts'
import { bisqueOf, coatFromWetGain, defaultSlop } from '../../src/engine/index.ts'
import { clingsGramsPerCm2, liquidOf, meanDrainedMm, yieldAtMostPa } from '../../src/engine/slop/film.ts'
import { step } from '../../src/engine/wall/balance.ts'
import { suctionFactor } from '../../src/engine/wall/body.ts'
import { newSide, type Wall } from '../../src/engine/wall/wall.ts'
import { type Weather, weatherOf } from '../../src/engine/wall/weather.ts'
import { near } from './near.ts'

const air = (tempC: number, rh: number, speedMps: number): Air => ({
  tempC,
  rh,
  speedMps,
  pressurePa: 101_325,
})

describe('quiet water', () => {
  const lossKgPerM2h = (waterC: number, airC: number): number =>
    evaporation(air(airC, 0.5, 0), waterC, 100).massMPerS *
    (vapourDensityKgPerM3(waterC, 1) - vapourDensityKgPerM3(airC, 0.5)) *
    3600

  test.each([
    [28, 28, 0.136],
    [28, 29, 0.1171],
    [29, 28, 0.1651],
    [29, 29, 0.1463],
    [29, 30, 0.1268],
    [30, 28, 0.1959],
    [30, 29, 0.1771],
    [30, 30, 0.1575],
  ])('at %d degC in air of %d degC and 50 %% loses %d kg/m2h', (waterC, airC, loss) =>
    near(lossKgPerM2h(waterC, airC), loss, { part: 0.18 }),
  )

  // The ninth of the nine, water 2 K under its air: there an upright face and a pool differ, and the engine is low.
  test('water 2 K colder than its air loses 0.0968 kg/m2h, and a third less by the engine: not reproduced', () => {
    const part = lossKgPerM2h(28, 30) / 0.0968
    expect(part).toBeGreaterThan(0.6)
    expect(part).toBeLessThan(0.82)
  })
})

describe('a porous vessel that is kept wet, air of 23 degC', () => {
  // Radiation and what heat comes through the rest of the vessel leave it 1.1 and 1.5 K open.
  test.each([
    [0.6, 4.7, 1.1],
    [0.15, 8.3, 1.5],
  ])('at humidity %d its water stands %d K below its air', (rh, below, by) => {
    for (const speedMps of [0, 0.05, 0.08])
      near(23 - wetSurface(air(23, rh, speedMps), 80).tempC, below, { by })
  })

  // A surface without radiation stands at the wet bulb, 5.26 and 12.71 K below; heat by radiation keeps it warmer.
  test.each([
    [0.6, 5.26],
    [0.15, 12.71],
  ])(
    'at humidity %d it stays warmer than the wet bulb, %d K below, by a tenth to two fifths',
    (rh, below) => {
      psychrolib.SetUnitSystem(psychrolib.SI)
      near(23 - psychrolib.GetTWetBulbFromRelHum(23, rh, 101_325), below, { by: 0.05 })
      const part = (23 - wetSurface(air(23, rh, 0.08), 80).tempC) / below
      expect(part).toBeGreaterThan(0.6)
      expect(part).toBeLessThan(0.9)
    },
  )
})

describe('a porous body dries', () => {
  /** Body of `deepMm` behind each of two open faces, nothing on it: heat enough, its boundary layer as given. */
  const column = (deepMm: number, waterMm: number, filled: number): Wall => ({
    thickMm: 2 * deepMm,
    outside: newSide(waterMm, filled, 1, 1),
    inside: newSide(waterMm, filled, 1, 1),
    sorptivity2: 0,
    dryKgPerM2: 2 * 1.6 * deepMm,
    perKilnMm: 1,
    tempC: 20,
    kilnS: 0,
    brought: 0,
    evaporated: 0,
  })
  const room: Weather = { ...weatherOf(air(20, 0.5, 0.15), 100), heatWPerM2K: 1e6 }
  const dryTo = (wall: Wall, weather: Weather, fromS: number, toS: number): number => {
    let s = fromS
    while (s < toS - 1e-6) s += step(wall, weather, Math.min(120, toS - s))
    return s
  }

  // 100 mm of sand, saturated 0.280, closed below. Air is not given: one number, the boundary layer, is set by the loss
  // of the first 57 h; where the steady loss ends is the body's own.
  test('sand: its filling over 75 hours, fifteen points through the end of the steady stage, to 0.04', () => {
    const points = [
      [1, 0.97],
      [5, 0.92],
      [11, 0.85],
      [25, 0.7],
      [39, 0.56],
      [51, 0.45],
      [57, 0.39],
      [59, 0.37],
      [61, 0.35],
      [63, 0.33],
      [65, 0.32],
      [67, 0.3],
      [69, 0.29],
      [71, 0.28],
      [75.3, 0.26],
    ] as const
    const wall = column(100, 28, 0.277 / 0.28)
    let s = 0
    for (const [hour, filled] of points) {
      s = dryTo(wall, { ...room, boundarySPerM: 105 }, s, hour * 3600)
      near(wall.outside.body / 28, filled, { by: 0.04 })
    }
  })

  // Beyond 80 h water still creeps to the sand's surface through films, which the model of a thin wall leaves out: at
  // 334 h the sand holds 0.07 of its pores and the engine's 0.24.
  test('sand: the tail after 80 hours is not reproduced, and too wet', () => {
    const wall = column(100, 28, 0.277 / 0.28)
    dryTo(wall, { ...room, boundarySPerM: 105 }, 0, 334 * 3600)
    expect(wall.outside.body / 28).toBeGreaterThan(0.07 + 0.05)
  })

  // Scheffler 2008 as quoted: a linear relationship between the duration of the first drying phase and sample height.
  test('the steady stage lasts in proportion to the height', () => {
    const lastsS = (deepMm: number): number => {
      const wall = column(deepMm, 0.25 * deepMm, 0.98)
      const first = step(wall, room, 60)
      const perS = wall.evaporated / first
      let s = first
      for (;;) {
        const before = wall.evaporated
        const seconds = step(wall, room, 60)
        s += seconds
        if ((wall.evaporated - before) / seconds < 0.9 * perS) return s
      }
    }
    const perMm = lastsS(4) / 4
    for (const deepMm of [2, 3, 5, 8]) near(lastsS(deepMm) / deepMm, perMm, { part: 0.03 })
  })
})

describe('suction', () => {
  // Karagiannis, Karoglou, Bakolas & Moropoulou, Build. Environ. 96 (2016), abstract: linear in temperature, fitted at 20,
  // 25 and 30 degC and confirmed at 15.
  test('follows a straight line from 20 to 30 degC that holds at 15', () => {
    const perK = (suctionFactor(30) - suctionFactor(20)) / 10
    near(suctionFactor(25), suctionFactor(20) + 5 * perK, { part: 5e-3 })
    near(suctionFactor(15), suctionFactor(20) - 5 * perK, { part: 5e-3 })
  })

  // Stray-field resonance of a wall tile, one face in water: its core is full within 4 minutes (abstract, 20 h for glazed
  // ones). With 6 to 8 mm and porosity 0.25 to 0.30 that is 0.10 mm/sqrt s at least.
  test('a bisque of wall tile absorbs at least as fast as a wall tile was seen to', () =>
    expect(bisqueOf(0.15).sorptivityMmPerSqrtS).toBeGreaterThan((6 * 0.25) / Math.sqrt(240)))
})

describe('what a plate carries off', () => {
  // Harman & Schaefer: 0.04 g/cm2 parts good glaze slips from poor. Mass per area times g is the stress: 3.9 Pa.
  test('0.04 g/cm2 is a stress of 3.9 Pa whatever the density', () =>
    near(yieldAtMostPa(0.04), 3.9, { by: 0.03 }))

  test.each([
    [1.4, 0.15],
    [1.45, 0.16],
    [1.5, 0.17],
    [1.55, 0.19],
  ])('0.04 g/cm2 of a slop of %d is %d mm dry', (gramsPerMl, dryMm) =>
    near(coatFromWetGain(defaultSlop(gramsPerMl, 2.6), 0.04, 1), dryMm, { by: 0.0053 }),
  )

  // By that limit an unmeasured slop of 1.40 or 1.45 is a good one, within the abstract's factor of 1.4.
  test.each([1.4, 1.45])('an unmeasured slop of %d clings by less than the limit', (gramsPerMl) =>
    expect(clingsGramsPerCm2(defaultSlop(gramsPerMl, 2.6))).toBeLessThan(0.04),
  )

  // European Enamel Association, Quality Requirements ed. 6: fired coats dipped on steel, which can't drink, 0.40 to 0.50
  // mm at most. Fired is about half of raw.
  test('the film of an unmeasured slop stays under a dipped enamel coat on steel', () => {
    for (const gramsPerMl of [1.4, 1.45, 1.5]) {
      const slop = defaultSlop(gramsPerMl, 2.6)
      expect(coatFromWetGain(slop, clingsGramsPerCm2(slop), 1) / 2).toBeLessThan(0.5)
    }
  })

  // Washcoats of alumina: best loads at 50 to 150 mPa s (J. Mater. Sci. 35 (2000) 951-960, abstract).
  test('a dipping slop has the viscosity at which washcoats load best', () => {
    const { viscosity } = liquidOf(defaultSlop(1.45, 2.6))
    expect(viscosity).toBeGreaterThan(0.05)
    expect(viscosity).toBeLessThan(0.15)
  })

  // The film of a Bingham liquid worked out apart from the engine's code, wet to dry by 0.48: 100 mm at 100 mm/s.
  test.each([
    [1.4, 1.5, 0.034, 3, 0.12],
    [1.4, 1.5, 0.034, 10, 0.09],
    [1.4, 1.5, 0.034, 30, 0.07],
    [1.45, 2, 0.06, 3, 0.18],
    [1.45, 2, 0.06, 10, 0.13],
    [1.45, 2, 0.06, 30, 0.1],
    [1.5, 3, 0.106, 3, 0.26],
    [1.5, 3, 0.106, 10, 0.2],
    [1.5, 3, 0.106, 30, 0.16],
    [1.55, 4, 0.186, 3, 0.38],
    [1.55, 4, 0.186, 10, 0.28],
    [1.55, 4, 0.186, 30, 0.23],
  ])('at %d, %d Pa, %d Pa s, after %d s: %d mm dry', (gramsPerMl, yieldPa, viscosity, dripS, dryMm) => {
    const liquid = { viscosity, yieldPa, kgPerM3: 1000 * gramsPerMl }
    const wetMm = meanDrainedMm(liquid, 0.1, 1 + dripS, 10)
    near((wetMm * ((gramsPerMl - 1) / 1.6)) / 0.48, dryMm, { by: 0.011 })
  })

  test.each([
    [1.4, 0.191],
    [10, 0.73],
  ])('%d Pa at 1.45 and 0.06 Pa s leave %d mm after 10 s', (yieldPa, wetMm) =>
    near(meanDrainedMm({ viscosity: 0.06, yieldPa, kgPerM3: 1450 }, 0.1, 11, 10), wetMm, { part: 0.02 }),
  )
})
