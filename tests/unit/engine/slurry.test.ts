import { describe, expect, it } from 'vitest'
import { GRAVITY, gravityOfMix } from '../../../src/engine/slop/materials.ts'
import {
  baume,
  densityOfBatch,
  densityOfCup,
  densityOfFraction,
  dryGramsPerLitre,
  dryTo,
  FIRST_PART,
  fillOf,
  gramsPerMlOfBaume,
  gramsPerMlOfPint,
  gramsPerMlOfTwaddell,
  gravityOfDried,
  twaddell,
  volumeFraction,
  waterTo,
} from '../../../src/engine/slop/slurry.ts'

describe('bad slop', () => {
  it.each([
    ['gramsPerMl', () => dryGramsPerLitre(1, 2.6)],
    ['gramsPerMl', () => dryGramsPerLitre(1.9, 2.6)],
    ['gramsPerMl', () => volumeFraction(1.7, 1.6)],
    ['solidsGravity', () => dryGramsPerLitre(1.45, 1)],
    ['solidsGravity', () => dryGramsPerLitre(1.45, Number.NaN)],
    ['fraction', () => densityOfFraction(1.1, 2.6)],
    ['litres', () => waterTo(0, 1.5, 1.45)],
    ['nowGramsPerMl', () => waterTo(10, 2, 1.45)],
    ['targetGramsPerMl', () => waterTo(10, 1.5, 1)],
    ['targetGramsPerMl', () => dryTo(10, 1.5, 1.45, 2.6)],
    ['waterKg', () => densityOfBatch(1, 0, 2.6)],
    ['dryKg', () => densityOfBatch(-1, 1, 2.6)],
    ['fullG', () => densityOfCup(60, 50, 100, 1, 1)],
    ['gramsPerMl of the cup', () => densityOfCup(0, 250, 100, 1, 1)],
    ['cupMl', () => densityOfCup(0, 250, 0, 1, 1)],
    ['dryG', () => gravityOfDried(100, 1.45, 150)],
    ['solidsGravity', () => gravityOfDried(100, 1.45, 50)],
    ['parts of clay', () => fillOf(1, 1.45, 2.6, [{ name: 'clay', parts: -1, gramsPerMl: 2.6 }])],
    ['parts in all', () => fillOf(1, 1.45, 2.6, [{ name: 'clay', parts: 0, gramsPerMl: 2.6 }])],
    ['parts in all', () => gravityOfMix([])],
    ['gramsPerMl of clay', () => gravityOfMix([{ name: 'clay', parts: 1, gramsPerMl: 0.5 }])],
    ['degrees', () => gramsPerMlOfTwaddell(-1)],
    ['degrees', () => gramsPerMlOfBaume(145, 'american')],
    ['ounces', () => gramsPerMlOfPint(0, 'imperial')],
    ['gramsPerMl', () => twaddell(0.9)],
    ['gramsPerMl', () => baume(3, 'gerlach')],
  ])('%s is named', (field, use) => {
    expect(use).toThrow(RangeError)
    expect(use).toThrow(new RegExp(`^${field} is `))
  })
})

describe('two thirds first', () => {
  it('leaves a third and a density between the two', () => {
    const { waterLitres, firstLitres, afterFirstGramsPerMl } = waterTo(13.25, 1.52, 1.45)
    expect(firstLitres / waterLitres).toBeCloseTo(FIRST_PART, 12)
    expect(afterFirstGramsPerMl).toBeLessThan(1.52)
    expect(afterFirstGramsPerMl).toBeGreaterThan(1.45)
    const rest = waterTo(13.25 + firstLitres, afterFirstGramsPerMl, 1.45)
    expect(rest.waterLitres).toBeCloseTo(waterLitres / 3, 9)
  })
  it('holds for dry mix as well', () => {
    const { dryKg, firstKg, afterFirstGramsPerMl } = dryTo(10, 1.4, 1.45, 2.6)
    const rest = dryTo(10 + firstKg / 2.6, afterFirstGramsPerMl, 1.45, 2.6)
    expect(firstKg + rest.dryKg).toBeCloseTo(dryKg, 9)
  })
  it('says how much clear water to pour off when the bucket is too thin', () =>
    expect(waterTo(10, 1.4, 1.45).waterLitres).toBeCloseTo(-10 / 9, 9))
})

describe('a fill', () => {
  it('shares the dry weight by parts, whatever they add up to', () => {
    const mix = [
      { name: 'feldspar', parts: 40, gramsPerMl: GRAVITY.potashFeldspar },
      { name: 'whiting', parts: 20, gramsPerMl: GRAVITY.whiting },
      { name: 'tin', parts: 5, gramsPerMl: GRAVITY.tinOxide },
    ]
    const { dryKg, parts } = fillOf(10, 1.45, gravityOfMix(mix), mix)
    expect(parts.map((p) => p.name)).toEqual(['feldspar', 'whiting', 'tin'])
    expect(parts.reduce((sum, p) => sum + p.kg, 0)).toBeCloseTo(dryKg, 9)
    expect((parts[0]?.kg ?? 0) / (parts[1]?.kg ?? 1)).toBeCloseTo(2, 9)
  })
  it('without a mix gives dry and water alone', () => expect(fillOf(10, 1.45, 2.6, []).parts).toEqual([]))
  it('of a cup names the scale as the larger error for a small cup', () => {
    const small = densityOfCup(10, 39, 20, 1, 0)
    expect(small.errorGramsPerMl).toBeCloseTo(1.45 / 29, 9)
  })
})
