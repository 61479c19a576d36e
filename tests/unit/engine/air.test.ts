import { describe, expect, it } from 'vitest'
import {
  dewPointC,
  diffusivityM2PerS,
  evaporation,
  latentHeatJPerKg,
  pressureAtAltitudePa,
  saturationPressurePa,
  vapourDensityKgPerM3,
  wetSurface,
} from '../../../src/engine/air/air.ts'
import { condensation } from '../../../src/engine/air/dew.ts'
import { pairTrouble, rhFromPair } from '../../../src/engine/air/psychrometer.ts'
import { witnessCloth } from '../../../src/engine/air/witness-cloth.ts'
import { between, inRange, oneOf } from '../../../src/engine/check.ts'
import type { Air } from '../../../src/engine/contract.ts'

const room: Air = { tempC: 20, rh: 0.5, speedMps: 0.1, pressurePa: 101_325 }
const cloth = { widthMm: 300, heightMm: 400, firstG: 117, secondG: 100, minutes: 60 }

describe('guards', () => {
  it('name the field, the value and what is allowed', () => {
    expect(() => inRange('rh', 1.2, 0, 1)).toThrow(new RangeError('rh is 1.2: must be from 0 to 1'))
    expect(() => between('litres', 0, 0, 9)).toThrow(
      new RangeError('litres is 0: must be above 0 and below 9'),
    )
    expect(() => oneOf('form', 'vase', ['cup', 'jar'])).toThrow(
      new RangeError('form is vase: must be one of cup, jar'),
    )
  })
  it('refuse what is no number, and let the ends pass only where they may', () => {
    for (const wrong of [Number.NaN, Infinity, -Infinity]) {
      expect(() => inRange('x', wrong, -Infinity, Infinity)).toThrow(RangeError)
      expect(() => between('x', wrong, -Infinity, Infinity)).toThrow(RangeError)
    }
    expect(inRange('x', 1, 0, 1)).toBe(1)
    expect(() => between('x', 1, 0, 1)).toThrow(RangeError)
  })
})

describe('bad air', () => {
  it.each([
    ['air.rh', { rh: 1.01 }],
    ['air.rh', { rh: -0.01 }],
    ['air.tempC', { tempC: 140 }],
    ['air.speedMps', { speedMps: -1 }],
    ['air.pressurePa', { pressurePa: 1013 }],
    ['air.rh', { rh: Number.NaN }],
  ])('%s is named', (field, wrong) => {
    const air = { ...room, ...wrong }
    const named = new RegExp(`^${field} is `)
    for (const use of [
      () => dewPointC(air),
      () => wetSurface(air, 100),
      () => evaporation(air, 15, 100),
      () => witnessCloth(air, cloth, 0.1),
      () => condensation(air, 10, 100),
    ])
      expect(use).toThrow(named)
  })
  it.each([
    ['tempC', () => saturationPressurePa(101)],
    ['rh', () => vapourDensityKgPerM3(20, 55)],
    ['tempC', () => latentHeatJPerKg(-61)],
    ['pressurePa', () => diffusivityM2PerS(20, 0)],
    ['altitudeM', () => pressureAtAltitudePa(9000)],
    ['wetC', () => rhFromPair(20, 20.1, 'fanned', 101_325)],
    ['dryC', () => rhFromPair(70, 20, 'fanned', 101_325)],
    ['draught', () => rhFromPair(20, 15, 'windy' as 'still', 101_325)],
    ['surfaceTempC', () => evaporation(room, 200, 100)],
    ['sizeMm', () => evaporation(room, 15, 5)],
    ['sizeMm', () => wetSurface(room, 5000)],
    ['secondG', () => witnessCloth(room, { ...cloth, secondG: 118 }, 0.1)],
    ['minutes', () => witnessCloth(room, { ...cloth, minutes: 1 }, 0.1)],
    ['scaleG', () => witnessCloth(room, cloth, 0)],
    ['computed loss, g/m2h', () => witnessCloth({ ...room, rh: 1 }, cloth, 0.1)],
  ])('%s is named', (field, use) => {
    expect(use).toThrow(RangeError)
    expect(use).toThrow(new RegExp(`^${field} is `))
  })
})

describe('edges', () => {
  it('saturated air has dew point and wet surface at its own temperature and dries nothing', () => {
    const wet = { ...room, rh: 1 }
    expect(dewPointC(wet)).toBeCloseTo(20, 6)
    expect(wetSurface(wet, 100).tempC).toBeCloseTo(20, 6)
    expect(wetSurface(wet, 100).evaporationKgPerM2s).toBeLessThan(1e-9)
  })
  it('bone-dry air has a dew point at the end of the scale and finite evaporation', () => {
    expect(dewPointC({ ...room, rh: 0 })).toBeCloseTo(-60, 6)
    expect(wetSurface({ ...room, rh: 0 }, 100).evaporationKgPerM2s).toBeGreaterThan(0)
  })
  it('air without any draught still dries by its own weight', () =>
    expect(wetSurface({ ...room, speedMps: 0 }, 100).evaporationKgPerM2s * 3.6e6).toBeGreaterThan(40))
  it('saturation pressure is smooth at freezing', () =>
    expect(saturationPressurePa(-1e-9) / saturationPressurePa(0)).toBeCloseTo(1, 3))
  it('a pair that no still air could give is held to 0 and asked about', () => {
    expect(rhFromPair(25, 12, 'still', 101_325)).toBe(0)
    expect(pairTrouble(25, 12, 'still', 101_325)).toBe('tooDry')
    expect(pairTrouble(25, 12, 'fanned', 101_325)).toBe('none')
    expect(pairTrouble(3, -1, 'fanned', 101_325)).toBe('icy')
  })
  it('equal thermometers mean saturated air, whatever the draught', () => {
    for (const draught of ['fanned', 'natural', 'still'] as const)
      expect(rhFromPair(18, 18, draught, 95_000)).toBe(1)
  })
})

describe('the witness cloth', () => {
  it('gives the factor by which the air beats the computed one', () => {
    const once = witnessCloth(room, cloth, 0.1)
    const twice = witnessCloth(room, { ...cloth, secondG: 83 }, 0.1)
    expect(twice.airFactor / once.airFactor).toBeCloseTo(2, 9)
    expect(once.gramsPerM2h).toBeCloseTo(17 / 0.24, 9)
  })
  it('reads alike at half the time and half the loss, with twice the error', () => {
    const hour = witnessCloth(room, cloth, 0.1)
    const half = witnessCloth(room, { ...cloth, secondG: 108.5, minutes: 30 }, 0.1)
    expect(half.airFactor).toBeCloseTo(hour.airFactor, 9)
    expect(half.relativeError / hour.relativeError).toBeCloseTo(2, 9)
  })
  it('that lost nothing tells of no drying and of no certainty', () => {
    const none = witnessCloth(room, { ...cloth, secondG: 117 }, 0.1)
    expect(none.airFactor).toBe(0)
    expect(none.relativeError).toBe(Infinity)
  })
})

describe('a cold pot', () => {
  it('draws water below the dew point and none above it', () => {
    const humid = { ...room, tempC: 24, rh: 0.78 }
    const dew = dewPointC(humid)
    const cold = condensation(humid, dew - 5, 100)
    expect(cold.condenses).toBe(true)
    expect(cold.filmMmPerH).toBeGreaterThan(0.01)
    const warm = condensation(humid, dew + 0.5, 100)
    expect(warm.condenses).toBe(false)
    expect(warm.filmMmPerH).toBe(0)
    expect(warm.dewPointC).toBe(dew)
  })
})
