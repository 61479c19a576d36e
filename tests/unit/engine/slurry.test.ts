import { describe, expect, it } from 'vitest'
import { dryTo, FIRST_PART, waterTo } from '../../../src/engine/slop/slurry.ts'

describe('bad slop', () => {
  it.each([
    ['litres', () => waterTo(0, 1.5, 1.45)],
    ['nowGramsPerMl', () => waterTo(10, 2, 1.45)],
    ['targetGramsPerMl', () => waterTo(10, 1.5, 1)],
    ['targetGramsPerMl', () => dryTo(10, 1.5, 1.45, 2.6)],
    ['gramsPerMl', () => dryTo(10, 1, 1.45, 2.6)],
    ['gramsPerMl', () => dryTo(10, 1.4, 1.7, 1.6)],
    ['solidsGravity', () => dryTo(10, 1.4, 1.45, 1)],
    ['solidsGravity', () => dryTo(10, 1.4, 1.45, Number.NaN)],
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
