import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gravityOfMix } from '../../src/engine/slop/materials.ts'
import {
  type BaumeScale,
  baume,
  densityOfBatch,
  densityOfFraction,
  dryGramsPerLitre,
  dryTo,
  fillOf,
  gramsPerMlOfBaume,
  gramsPerMlOfTwaddell,
  gravityOfDried,
  massFraction,
  twaddell,
  volumeFraction,
  waterGramsPerLitre,
  waterTo,
} from '../../src/engine/slop/slurry.ts'

const density = fc.double({ min: 1.01, max: 1.89, noNaN: true })
const gravity = fc.double({ min: 2, max: 5, noNaN: true })
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

describe('fills', () => {
  it('mixed, then thinned, are those mixed at the thinner density', () =>
    fc.assert(
      fc.property(litres, density, density, gravity, (v, a, b, s) => {
        const [thin, thick] = [Math.min(a, b), Math.max(a, b)]
        const { waterLitres, newLitres } = waterTo(v, thick, thin)
        const made = fillOf(v, thick, s, [])
        const straight = fillOf(newLitres, thin, s, [])
        expect(straight.dryKg).toBeCloseTo(made.dryKg, 6)
        expect(straight.waterKg).toBeCloseTo(made.waterKg + waterLitres, 6)
        expect(densityOfBatch(made.dryKg, made.waterKg, s)).toBeCloseTo(thick, 9)
      }),
    ))
})

describe('round trips', () => {
  it('fraction, dried sample, Twaddell, Baume', () =>
    fc.assert(
      fc.property(
        density,
        gravity,
        fc.constantFrom<BaumeScale>('american', 'oldDutch', 'gerlach'),
        (d, s, scale) => {
          expect(densityOfFraction(volumeFraction(d, s), s)).toBeCloseTo(d, 9)
          expect(gravityOfDried(100, d, dryGramsPerLitre(d, s) / 10)).toBeCloseTo(s, 5)
          expect(gramsPerMlOfTwaddell(twaddell(d))).toBeCloseTo(d, 9)
          expect(gramsPerMlOfBaume(baume(d, scale), scale)).toBeCloseTo(d, 9)
        },
      ),
    ))
  it('dry and water make the whole; solids weigh more than they fill', () =>
    fc.assert(
      fc.property(density, gravity, (d, s) => {
        expect(dryGramsPerLitre(d, s) + waterGramsPerLitre(d, s)).toBeCloseTo(1000 * d, 6)
        expect(massFraction(d, s)).toBeGreaterThan(volumeFraction(d, s))
        expect(massFraction(d, s)).toBeLessThan(1)
      }),
    ))
})

describe('the gravity of a mix', () => {
  it('lies between its lightest and heaviest, at or below the mean by weight', () =>
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: 0.1, max: 100, noNaN: true }), gravity), {
          minLength: 1,
          maxLength: 9,
        }),
        (rows) => {
          const mix = rows.map(([parts, gramsPerMl], i) => ({ name: `m${i}`, parts, gramsPerMl }))
          const s = gravityOfMix(mix)
          const all = mix.reduce((sum, m) => sum + m.parts, 0)
          expect(s).toBeGreaterThanOrEqual(Math.min(...mix.map((m) => m.gramsPerMl)) - 1e-9)
          expect(s).toBeLessThanOrEqual(mix.reduce((sum, m) => sum + m.parts * m.gramsPerMl, 0) / all + 1e-9)
        },
      ),
    ))
})
