import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dewPointC, evaporation, saturationPressurePa, wetSurface } from '../../src/engine/air/air.ts'
import { condensation, warmedC } from '../../src/engine/air/dew.ts'
import { rhFromPair } from '../../src/engine/air/psychrometer.ts'
import { witnessCloth } from '../../src/engine/air/witness-cloth.ts'
import type { Air } from '../../src/engine/contract.ts'

const anyAir: fc.Arbitrary<Air> = fc.record({
  tempC: fc.double({ min: 2, max: 45, noNaN: true }),
  rh: fc.double({ min: 0, max: 1, noNaN: true }),
  speedMps: fc.double({ min: 0, max: 5, noNaN: true }),
  pressurePa: fc.double({ min: 70_000, max: 105_000, noNaN: true }),
})
const size = fc.double({ min: 30, max: 400, noNaN: true })
const step = fc.double({ min: 0.01, max: 0.9, noNaN: true })

const loss = (air: Air, sizeMm: number): number => wetSurface(air, sizeMm).evaporationKgPerM2s

describe('wet clay', () => {
  it('dries no faster in more humid air', () =>
    fc.assert(
      fc.property(anyAir, size, step, (air, sizeMm, by) => {
        const wetter = { ...air, rh: air.rh + (1 - air.rh) * by }
        expect(loss(wetter, sizeMm)).toBeLessThanOrEqual(loss(air, sizeMm) + 1e-12)
      }),
    ))
  it('dries no slower in more draught', () =>
    fc.assert(
      fc.property(anyAir, size, step, (air, sizeMm, by) => {
        const blown = { ...air, speedMps: air.speedMps + by }
        expect(loss(blown, sizeMm)).toBeGreaterThanOrEqual(loss(air, sizeMm) - 1e-12)
      }),
    ))
  it('dries no slower in warmer air of the same humidity', () =>
    fc.assert(
      fc.property(anyAir, size, step, (air, sizeMm, by) => {
        const warmer = { ...air, tempC: air.tempC + 5 * by }
        expect(loss(warmer, sizeMm)).toBeGreaterThanOrEqual(loss(air, sizeMm) - 1e-12)
      }),
    ))
  it('loses the witness cloth’s factor as much, at the same temperature', () =>
    fc.assert(
      fc.property(anyAir, size, fc.double({ min: 0.1, max: 10, noNaN: true }), (air, sizeMm, factor) => {
        const plain = wetSurface(air, sizeMm)
        const wet = wetSurface({ ...air, factor }, sizeMm)
        expect(wet.tempC).toBeCloseTo(plain.tempC, 6)
        const off = wet.evaporationKgPerM2s - factor * plain.evaporationKgPerM2s
        expect(Math.abs(off)).toBeLessThan(1e-5 * factor * plain.evaporationKgPerM2s + 1e-12)
      }),
    ))
  it('settles between the dew point and the air, losing a finite amount', () =>
    fc.assert(
      fc.property(anyAir, size, (air, sizeMm) => {
        const wet = wetSurface(air, sizeMm)
        expect(wet.tempC).toBeGreaterThanOrEqual(dewPointC(air) - 1e-3)
        expect(wet.tempC).toBeLessThanOrEqual(air.tempC + 1e-9)
        expect(wet.evaporationKgPerM2s).toBeGreaterThanOrEqual(0)
        expect(wet.evaporationKgPerM2s).toBeLessThan(2e-3)
      }),
    ))
  it('is fed heat and rid of vapour by finite, positive coefficients', () =>
    fc.assert(
      fc.property(anyAir, fc.double({ min: -10, max: 60, noNaN: true }), size, (air, surfaceC, sizeMm) => {
        for (const value of Object.values(evaporation(air, surfaceC, sizeMm))) {
          expect(Number.isFinite(value)).toBe(true)
          expect(value).toBeGreaterThan(0)
        }
      }),
    ))
  it('a pot draws water exactly when it is colder than the dew point', () =>
    fc.assert(
      fc.property(anyAir, fc.double({ min: -5, max: 40, noNaN: true }), (air, potC) => {
        const { dewPointC: dew, condenses, filmMmPerH } = condensation(air, potC, 100)
        // Equal to within what the vapour's own temperature makes of the density.
        if (potC < dew - 1) expect(condenses && filmMmPerH > 0).toBe(true)
        if (potC > air.tempC) expect(condenses && dew < potC - 1).toBe(false)
      }),
    ))
})

describe('a pot from the cold', () => {
  it('warms towards the air and never past it, a thick one no faster', () =>
    fc.assert(
      fc.property(
        anyAir,
        fc.double({ min: -5, max: 45, noNaN: true }),
        fc.double({ min: 2, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 120, noNaN: true }),
        (air, potC, dryKgPerM2, minutes) => {
          const gap = (kg: number, min: number): number =>
            Math.abs(warmedC(potC, air, 100, kg, min) - air.tempC)
          const before = Math.abs(potC - air.tempC)
          expect(gap(dryKgPerM2, 0)).toBeCloseTo(before, 9)
          expect(gap(dryKgPerM2, minutes)).toBeLessThanOrEqual(before + 1e-9)
          expect(gap(2 * dryKgPerM2, minutes)).toBeGreaterThanOrEqual(gap(dryKgPerM2, minutes) - 1e-9)
        },
      ),
    ))
})

describe('vapour', () => {
  it('dew point, wet surface and air stand in that order', () =>
    fc.assert(
      fc.property(anyAir, (air) => {
        const wet = wetSurface(air, 100).tempC
        expect(dewPointC(air)).toBeLessThanOrEqual(wet + 0.01)
        expect(wet).toBeLessThanOrEqual(air.tempC + 1e-9)
      }),
    ))
  it('saturation pressure rises with temperature', () =>
    fc.assert(
      fc.property(fc.double({ min: -59, max: 98, noNaN: true }), step, (t, by) => {
        expect(saturationPressurePa(t + by)).toBeGreaterThan(saturationPressurePa(t))
      }),
    ))
  it('the dew point has the air’s own vapour pressure', () =>
    fc.assert(
      fc.property(anyAir, (air) => {
        const vapour = air.rh * saturationPressurePa(air.tempC)
        if (vapour < saturationPressurePa(-59)) return
        expect(saturationPressurePa(dewPointC(air)) / vapour).toBeCloseTo(1, 6)
      }),
    ))
})

describe('a thermometer pair', () => {
  it('reads a drier room when it stood in less draught, and for a colder wick', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 40, noNaN: true }),
        fc.double({ min: 0.1, max: 7, noNaN: true }),
        (dry, gap) => {
          const at = (wet: number, draught: 'fanned' | 'natural' | 'still'): number =>
            rhFromPair(dry, wet, draught, 98_000)
          const wet = dry - gap
          expect(at(wet, 'fanned')).toBeGreaterThanOrEqual(at(wet, 'natural'))
          expect(at(wet, 'natural')).toBeGreaterThanOrEqual(at(wet, 'still'))
          expect(at(wet - 0.5, 'fanned')).toBeLessThanOrEqual(at(wet, 'fanned'))
        },
      ),
    ))
})

describe('the witness cloth', () => {
  it('of any size that lost what was computed has the factor it lost by', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 600, noNaN: true }),
        fc.double({ min: 100, max: 600, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (widthMm, heightMm, factor) => {
          const air: Air = { tempC: 21, rh: 0.4, speedMps: 0.15, pressurePa: 101_325 }
          const cloth = { widthMm, heightMm, firstG: 500, secondG: 490, minutes: 30 }
          const once = witnessCloth(air, cloth, 0.1)
          const lost = 10 / once.airFactor
          const again = witnessCloth(air, { ...cloth, secondG: 500 - lost * factor }, 0.1)
          expect(again.airFactor).toBeCloseTo(factor, 6)
          // Whatever was taken for the factor before: a second cloth does not count twice.
          expect(witnessCloth({ ...air, factor: 3 }, cloth, 0.1).airFactor).toBe(once.airFactor)
        },
      ),
    ))
})
