import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solidsFraction } from '../../src/engine/slop/slop.ts'
import { dryTo, waterTo } from '../../src/engine/slop/slurry.ts'

const density = fc.double({ min: 1.01, max: 1.89, noNaN: true })
const gravity = fc.double({ min: 2, max: 5, noNaN: true })
/** Dry matter and water in a litre, g. */
const dryGramsPerLitre = (gramsPerMl: number, solidsGravity: number): number =>
  1000 * solidsGravity * solidsFraction({ gramsPerMl, solidsGravity })
const waterGramsPerLitre = (gramsPerMl: number, solidsGravity: number): number =>
  1000 * gramsPerMl - dryGramsPerLitre(gramsPerMl, solidsGravity)
const litres = fc.double({ min: 0.1, max: 200, noNaN: true })

describe('water', () => {
  it('by way of a density between is the water straight there', () =>
    fc.assert(
      fc.property(litres, density, density, density, (v, a, b, c) => {
        const first = waterTo(v, a, b)
        if (first.newLitres <= 0) return
        const second = waterTo(first.newLitres, b, c)
        expect(first.waterLitres + second.waterLitres).toBeCloseTo(waterTo(v, a, c).waterLitres, 6)
      }),
    ))
  it('to the same density is none, and more for a thinner target', () =>
    fc.assert(
      fc.property(litres, density, density, (v, a, b) => {
        expect(waterTo(v, a, a).waterLitres).toBe(0)
        if (b < a) expect(waterTo(v, a, b).waterLitres).toBeGreaterThan(0)
        if (b > a) expect(waterTo(v, a, b).waterLitres).toBeLessThan(0)
      }),
    ))
  it('leaves the dry matter as it was, and scales with the bucket', () =>
    fc.assert(
      fc.property(litres, density, density, gravity, (v, a, b, s) => {
        const { newLitres, waterLitres } = waterTo(v, a, b)
        expect(newLitres * dryGramsPerLitre(b, s)).toBeCloseTo(v * dryGramsPerLitre(a, s), 4)
        expect(waterTo(3 * v, a, b).waterLitres).toBeCloseTo(3 * waterLitres, 6)
      }),
    ))
})

describe('dry mix', () => {
  it('leaves the water as it was and reaches the target', () =>
    fc.assert(
      fc.property(litres, density, density, gravity, (v, a, b, s) => {
        const [thin, thick] = [Math.min(a, b), Math.max(a, b)]
        const { newLitres, dryKg, afterFirstGramsPerMl } = dryTo(v, thin, thick, s)
        expect(newLitres * waterGramsPerLitre(thick, s)).toBeCloseTo(v * waterGramsPerLitre(thin, s), 4)
        expect((v * thin + dryKg) / newLitres).toBeCloseTo(thick, 9)
        expect(afterFirstGramsPerMl).toBeGreaterThanOrEqual(thin - 1e-12)
        expect(afterFirstGramsPerMl).toBeLessThanOrEqual(thick + 1e-12)
      }),
    ))
})
