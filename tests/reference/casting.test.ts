/**
 * Casting, suction and films against published laws and measured points. Sources named beside each value:
 * Hall & Hoff, Water Transport in Brick, Stone and Concrete (sorptivity, its square-root law; from memory);
 * Collier et al., J. Phys. D 40 (2007) 4049: 1/A2 = 1/S2 + 1/R2 (from memory; exact by Darcy in series);
 * Tiller & Tsai, J. Am. Ceram. Soc. 69 (1986) 882: cake and mould in series (from memory);
 * ASTM C216 / C270 rate-of-absorption limits 30 and 5 to 25 g/min/30 in2 (abstract of ASTM STP1577);
 * Landau & Levich 1942, Derjaguin 1943: drag-out; coefficient solved numerically 0.94581;
 * Jeffreys, Proc. Camb. Phil. Soc. 26 (1930) 204: the draining plate;
 * Brick data sets of DELPHIN (ribuild/delphin_6_automation): sorptivity, capillary and total porosity;
 * IAPWS viscosity and surface tension of water as computed by an open IAPWS package.
 */

import { describe, expect, test } from 'vitest'
import { coatFromWetGain, pickUpOf, sorptivityOf } from '../../src/engine/index.ts'
import { DRIP_S } from '../../src/engine/parameters.ts'
import { dragOutMm, filmOf, liquidOf, meanDrainedMm, standsMm } from '../../src/engine/slop/film.ts'
import { drawn, type Thirst } from '../../src/engine/slop/pickup.ts'
import { defaultSlop, shedPerMm } from '../../src/engine/slop/slop.ts'
import { DEFAULT_BODY, fillablePerMm, suctionFactor } from '../../src/engine/wall/body.ts'
import { rawPickUp } from '../../src/engine/wall/calibrate.ts'
import { near } from './near.ts'

const bare = (sorptivity: number, room = Infinity): Thirst => ({
  suction2: sorptivity ** 2,
  room,
  coatRoom: 0,
  resistance: 0,
})
/** Coat on bare dry ware of boundless capacity, film apart, mm. */
const castMm = (sorptivity: number, shed: number, cakeResistance: number, seconds: number): number =>
  drawn(bare(sorptivity), shed, cakeResistance, seconds).intoBody / shed

describe('two resistances in series (Collier 2007; Tiller & Tsai 1986)', () => {
  test.each([
    [3, 4, 2.4],
    [0.2, 0.15, 0.12],
    [5, 12, 60 / 13],
  ])('S %d and R %d draw A %d', (s, r, a) =>
    near(drawn(bare(s), 0.5, 0.5 / r ** 2, 1).intoBody, a, { part: 1e-12 }),
  )

  test('a cake of resistance rho has R2 = B/rho, not 1/(B rho)', () => {
    // B 0.5, rho 8: R2 = 1/16; with S2 = 1/9: A2 = 1/25, so 4 s draw 0.4 mm.
    near(drawn(bare(1 / 3), 0.5, 8, 4).intoBody, 0.4, { part: 1e-12 })
  })

  test('a wall that drinks without effort leaves the cake alone: L2 = t/(rho B)', () => {
    near(castMm(1e9, 0.7, 12, 5), Math.sqrt(5 / (12 * 0.7)), { part: 1e-9 })
  })

  test('a cake without resistance leaves the wall alone: L = S sqrt(t)/B', () => {
    near(castMm(0.22, 0.7, 0, 5), (0.22 * Math.sqrt(5)) / 0.7, { part: 1e-12 })
  })

  test('a wall that does not drink casts nothing', () => expect(castMm(0, 0.7, 12, 5)).toBe(0))

  test('an ample wall casts by the root of time: four times the seconds, twice the coat', () => {
    near(castMm(0.22, 0.7, 12, 8), 2 * castMm(0.22, 0.7, 12, 2), { part: 1e-12 })
  })

  test('a full wall stops: L = W/B however long', () => {
    near(drawn(bare(0.22, 0.3), 0.7, 12, 1e6).intoBody / 0.7, 0.3 / 0.7, { part: 1e-12 })
  })

  test('closed forms agree with marching the resistances, old coats first', () => {
    for (const [coatRoom, resistance, seconds] of [
      [0.1, 5, 0.05],
      [0.1, 5, 4],
      [0.25, 9, 30],
      [0, 4, 6],
    ] as const) {
      const [s2, shed, rho] = [0.05, 0.7, 12]
      const got = drawn({ suction2: s2, room: Infinity, coatRoom, resistance }, shed, rho, seconds)
      // q = 1/(2 (rho L + passed part of the old coat + j/S2)), marched in water drawn.
      const steps = 200_000
      const total = got.intoCoats + got.intoBody
      let t = 0
      for (let k = 0; k < steps; k++) {
        const i = ((k + 0.5) * total) / steps
        const old = coatRoom > 0 ? resistance * Math.min(1, i / coatRoom) : resistance
        const body = Math.max(0, i - coatRoom) / s2
        t += (2 * ((rho * i) / shed + old + body) * total) / steps
      }
      near(t, seconds, { part: 1e-6 })
    }
  })
})

describe('suction of bodies', () => {
  // Rate of initial absorption over a minute, 30 in2 = 193.548 cm2; S = i/sqrt(60 s).
  test.each([
    [30, 0.2001],
    [25, 0.1668],
    [20, 0.1334],
    [5, 0.0334],
  ])('%d g in a minute over 30 in2 (ASTM C216, C270) is %d mm/sqrt s: a conversion', (grams, s) => {
    // By the root of time a quarter of the minute takes half of it.
    near(sorptivityOf({ seconds: 15, gainG: grams / 2 }, { seconds: 60, gainG: grams }, 193.548), s, {
      by: 1e-4,
    })
  })

  test('two water dips give the sorptivity whatever clings', () => {
    // 0.2001 mm/sqrt s over 100 cm2 and 1.3 g of clinging water.
    const at = (seconds: number) => ({ seconds, gainG: 1.3 + 0.2001 * 10 * Math.sqrt(seconds) })
    near(sorptivityOf(at(10), at(60), 100), 0.2001, { part: 1e-12 })
  })

  // Capillary over long-soak porosity of measured bricks (DELPHIN data): 0.974, 0.862, 0.771, 0.845, 0.714.
  test('the fillable part of a soak test lies among measured bricks', () => {
    const part = fillablePerMm(DEFAULT_BODY) / (DEFAULT_BODY.absorption * DEFAULT_BODY.bulkGramsPerMl)
    expect(part).toBeGreaterThan(0.714)
    expect(part).toBeLessThan(0.974)
  })

  // Capillary over total porosity of measured bricks (same data): 0.57, 0.63, 0.71, 0.72, 0.76.
  test('and of a boil test too', () => {
    const boiled = { ...DEFAULT_BODY, absorptionTest: 'boil' as const }
    const part = fillablePerMm(boiled) / (boiled.absorption * boiled.bulkGramsPerMl)
    expect(part).toBeGreaterThan(0.57)
    expect(part).toBeLessThan(0.76)
  })

  // 1.4 mm/sqrt min at porosity 0.28 (Brick ZC), bricks of bisque-like porosity 0.39 to 1.4 (DELPHIN, Masea data).
  test('the assumed sorptivity is within the range measured on bricks, 0.39 to 2.2 mm/sqrt min', () => {
    const perRootMin = DEFAULT_BODY.sorptivityMmPerSqrtS * Math.sqrt(60)
    expect(perRootMin).toBeGreaterThan(0.39)
    expect(perRootMin).toBeLessThan(2.2)
  })

  // Surface tension of water: IAPWS R1-76(2014), 235.8 (1 - T/Tc)^1.256 (1 - 0.625 (1 - T/Tc)) mN/m, Tc 647.096 K
  // (formulas from memory; the printed values below hold them).
  const tension = (tempC: number): number => {
    const away = 1 - (tempC + 273.15) / 647.096
    return 235.8 * away ** 1.256 * (1 - 0.625 * away)
  }
  // Its viscosity at 0.1 MPa: IAPWS SR6-08(2011), uPa s (likewise).
  const viscosity = (tempC: number): number => {
    const t = (tempC + 273.15) / 300
    return 280.68 * t ** -1.9 + 511.45 * t ** -7.7 + 61.131 * t ** -19.6 + 0.45903 * t ** -40
  }

  // Printed values: 74.22, 72.74, 71.19 mN/m; 1.3059, 1.0016, 0.7972 mPa s (IAPWS tables).
  test.each([
    [10, 74.22, 1.3059],
    [20, 72.74, 1.0016],
    [30, 71.19, 0.7972],
  ])('water at %d degC has %d mN/m and %d mPa s (IAPWS)', (tempC, mNPerM, mPaS) => {
    near(tension(tempC), mNPerM, { by: 6e-3 })
    near(viscosity(tempC) / 1000, mPaS, { by: 1.5e-4 })
    const at20 = 72.74 / 1.0016
    near(suctionFactor(tempC), Math.sqrt(mNPerM / mPaS / at20), { part: 2e-3 })
  })

  test.each([2, 7, 12.5, 18, 23, 28, 35, 40])(
    'at %d degC a wall drinks as the root of tension over viscosity (IAPWS releases)',
    (tempC) =>
      near(
        suctionFactor(tempC),
        Math.sqrt((tension(tempC) / viscosity(tempC) / tension(20)) * viscosity(20)),
        {
          part: 2e-3,
        },
      ),
  )
})

describe('films', () => {
  const newtonian = (viscosity: number, kgPerM3: number) => ({ viscosity, kgPerM3, yieldPa: 0 })
  const bingham = (yieldPa: number) => ({ viscosity: 0.06, kgPerM3: 1450, yieldPa })

  // White & Tallmadge in Deen, Analysis of Transport Phenomena (a solved problem): 1 Pa s at 10 mm/s, 900 kg/m3,
  // 0.03 N/m. With the coefficient 0.94581 and g 9.80665 instead of 0.944: 0.629325.
  test('drag-out with gravity taken off (White & Tallmadge)', () =>
    near(dragOutMm(newtonian(1, 900), 0.01, 0.03), 0.629325, { part: 2e-5 }))

  // Water at 1 mm/s and 0.072 N/m; 1.4777 um with 0.944 and g 9.81. Gravity takes 1.4 % off.
  test('a thin film is that of Landau, Levich and Derjaguin', () =>
    near(dragOutMm(newtonian(1e-3, 1000), 1e-3, 0.072), 1.48077e-3, { part: 0.02 }))

  // Kushner, quoted by Konishi et al., J. Metal Finishing Soc. Japan 25 (1974) 2: 0.626 sqrt(mu U / (rho g)) is the mean
  // film of a plate that has just left its bath; Jeffreys gives 2/3 of the same root.
  test('drag-out of plating baths: 0.626 of the root of mu U over rho g, within a tenth', () => {
    const liquid = newtonian(0.06, 1450)
    const justLeft = meanDrainedMm(liquid, 0.1, 1, 10)
    near(justLeft, 626 * Math.sqrt((0.06 * 0.1) / (1450 * 9.80665)), { part: 0.1 })
  })

  // Jeffreys at 0.1 m after 3 s: 0.37497 mm with g 9.81, 0.37503 with 9.80665.
  test('the mean of a draining plate is two thirds of its lower end (Jeffreys)', () =>
    near(meanDrainedMm(newtonian(0.06, 1450), 0.1, 3, 10), (2 / 3) * 0.37503, { part: 1e-4 }))

  // A Bingham film on an upright wall stops at tau / (rho g): polymerprocessing.com, quiz of 15 Oct 2000.
  test('what yield stress holds stays: 1.4 Pa is 0.09846 mm', () => {
    near(standsMm(bingham(1.4)), 0.09846, { by: 1e-5 })
    near(meanDrainedMm(bingham(1.4), 0.1, 1e9, 10), 0.09846, { by: 1e-4 })
  })

  // A Bingham film keeps the flux's wave: it moves at rho g h (h - h0) / mu, so z is that times t. Solved for h.
  test('the mean is that of the film, summed in thin strips', () => {
    const [liquid, strips] = [bingham(2), 20_000]
    const h0 = 2 / (1450 * 9.80665)
    const filmMm = (z: number): number =>
      500 * (h0 + Math.sqrt(h0 * h0 + (4 * 0.06 * z) / (1450 * 9.80665 * 11)))
    let sum = 0
    for (let k = 0; k < strips; k++) sum += Math.min(0.4, filmMm(((k + 0.5) / strips) * 0.1))
    near(meanDrainedMm(liquid, 0.1, 11, 0.4), sum / strips, { part: 1e-6 })
  })

  // Harman & Schaefer, J. Am. Ceram. Soc. 27 (1944) 202: glazes that cling to a withdrawn plate by more than 0.04 g/cm2
  // seldom satisfy. As a shear stress at the wall that is 3.9 Pa.
  test('an unmeasured slop of 1.45 clings by less than 0.04 g/cm2', () => {
    const slop = defaultSlop(1.45, 2.6)
    const { fullMm } = filmOf(slop, 100, 100, 10)
    const gramsPerCm2 = (fullMm * slop.cakeSolids * 1.45) / (0.28125 * 10)
    expect(gramsPerCm2).toBeLessThan(0.04)
    expect(gramsPerCm2).toBeGreaterThan(0.02)
    expect(liquidOf(slop).yieldPa).toBeLessThan(3.92)
  })
})

describe('measured coats', () => {
  const cast = (seconds: number, gramsPerMl: number): number => {
    const slop = defaultSlop(gramsPerMl, 2.6)
    const { sorptivityMmPerSqrtS } = DEFAULT_BODY
    const cake = castMm(sorptivityMmPerSqrtS, shedPerMm(slop), slop.cakeResistanceSPerMm2, seconds)
    return cake + filmOf(slop, 100, 120, DRIP_S).thirstyMm
  }
  /** A hand's way in and out, for the middle of 100 mm. */
  const HAND_S = 100 / 120

  // J. Sankey, johnsankey.ca/ptips: a shard dipped 2 s came out 0.41 mm. Density not told: 1.43 to 1.45 assumed, and
  // the packing was tuned on the same pair of raw and fired, so this is a fit and no proof: it only must not drift.
  test('2 s near 1.44 is near 0.41 mm, tuned on it', () => near(cast(2 + HAND_S, 1.44), 0.41, { part: 0.15 }))

  // One dip of 3 to 5 s near 1.45 leaves about half a mm to just under one (common practice, no source).
  test.each([3, 4, 5])('%d s is within the trade range', (seconds) => {
    expect(cast(seconds + HAND_S, 1.45)).toBeGreaterThan(0.35)
    expect(cast(seconds + HAND_S, 1.45)).toBeLessThan(0.9)
  })
})

describe('scale and pin', () => {
  const slop = defaultSlop(1.45, 2.6)

  // Mass balance of a mug: 533.2 cm2 took 72.0 g of slop, 36.3 g of it dry (derived): 0.546 mm either way.
  test('a wet gain tells the coat', () => {
    near(coatFromWetGain(slop, 72.0, 533.2), 0.546, { part: 2e-3 })
  })

  // Bayes with a normal prior on the logarithm (closed form).
  test('a scratch moves the factor as far as its error allows', () => {
    const reading = {
      slop,
      holdS: 5,
      measuredMm: 0.8,
      errorMm: 0.05,
      body: DEFAULT_BODY,
      wallMm: 6,
      bothFaces: true,
      lengthMm: 100,
      liftMmPerS: 120,
    }
    const raw = rawPickUp(reading)
    const { factor, sd } = pickUpOf([reading])
    const weight = 1 / raw.sd ** 2 / (1 / raw.sd ** 2 + 1 / 0.3 ** 2)
    near(Math.log(factor), weight * Math.log(raw.factor), { part: 1e-12 })
    near(1 / sd ** 2, 1 / raw.sd ** 2 + 1 / 0.3 ** 2, { part: 1e-12 })
  })
})
