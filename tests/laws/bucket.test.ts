import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Bucket, bucketMl, fitOf, levelMm, roundOf, takenBy } from '../../src/engine/bucket/bucket.ts'
import { collarPour } from '../../src/engine/bucket/collar.ts'
import { FORMS, outlineOf, SIZES, sizeSteps } from '../../src/engine/shape/geometry.ts'

const bucket: fc.Arbitrary<Bucket> = fc.record({
  heightMm: fc.double({ min: 100, max: 600, noNaN: true }),
  floorWideMm: fc.double({ min: 100, max: 500, noNaN: true }),
  mouthWideMm: fc.double({ min: 100, max: 500, noNaN: true }),
})
const pot = fc
  .tuple(fc.constantFrom(...FORMS), fc.constantFrom(...SIZES))
  .map(([form, size]) => outlineOf(sizeSteps(form)[size]))
const part = fc.double({ min: 0, max: 1, noNaN: true })

describe('levels', () => {
  it('give back the millilitres they came from', () =>
    fc.assert(
      fc.property(bucket, part, (b, at) => {
        const ml = at * bucketMl(b, b.heightMm)
        expect(bucketMl(b, levelMm(b, ml))).toBeCloseTo(ml, 6)
      }),
    ))
  it('rise with every pot put in, and with depth', () =>
    fc.assert(
      fc.property(bucket, pot, part, part, (b, profile, fill, at) => {
        const litres = (fill * 0.9 * bucketMl(b, b.heightMm)) / 1000
        const depthMm = at * profile.shape.heightMm
        for (const way of ['filled', 'footFirst'] as const) {
          const fit = fitOf(b, litres, profile, { way, depthMm })
          expect(fit.levelAtMm).toBeGreaterThanOrEqual(fit.levelBeforeMm - 1e-9)
          expect(fit.levelAtMm).toBeLessThanOrEqual(b.heightMm)
          expect(fitOf(b, litres, profile, { way, depthMm: depthMm / 2 }).levelAtMm).toBeLessThanOrEqual(
            (way === 'footFirst' && at === 1 ? b.heightMm : fit.levelAtMm) + 1e-9,
          )
        }
      }),
    ))
  it('never rise over a round of dips', () =>
    fc.assert(
      fc.property(
        pot,
        fc.array(fc.double({ min: 0, max: 400, noNaN: true }), { maxLength: 8 }),
        (profile, takes) => {
          const b = { heightMm: 300, floorWideMm: 290, mouthWideMm: 290 }
          const how = { way: 'filled', depthMm: profile.shape.heightMm } as const
          const round = roundOf(
            b,
            12,
            takes.map((takesMl) => ({ profile, how, takesMl })),
          )
          const left = Math.max(0, 12 - takes.reduce((sum, ml) => sum + ml, 0) / 1000)
          expect(round[round.length - 1]?.litresAfter ?? 12).toBeCloseTo(left, 9)
          round.forEach((r, i) => {
            expect(r.levelAfterMm).toBeLessThanOrEqual((round[i - 1]?.levelAfterMm ?? 300) + 1e-9)
          })
        },
      ),
    ))
})

describe('fit', () => {
  it('a pot that is covered stays covered with more glaze', () =>
    fc.assert(
      fc.property(bucket, pot, part, part, (b, profile, one, other) => {
        const how = { way: 'filled', depthMm: profile.shape.heightMm } as const
        const full = bucketMl(b, b.heightMm) / 1000
        const [less, more] = [Math.min(one, other) * full, Math.max(one, other) * full]
        expect(fitOf(b, more, profile, how).spareMm).toBeGreaterThanOrEqual(
          fitOf(b, less, profile, how).spareMm - 1e-9,
        )
      }),
    ))
})

describe('collars', () => {
  it('a pour reaches its line exactly, in any vessel', () =>
    fc.assert(
      fc.property(bucket, pot, fc.double({ min: 5, max: 20, noNaN: true }), (vessel, profile, collarMm) => {
        const { pourMl, levelAtMm, lineMm } = collarPour({
          vessel,
          profile,
          collarMm,
          floorGapMm: 12,
          gramsPerMl: 1.45,
          pressurePa: 101_325,
          takesMl: 0,
        })
        expect(lineMm).toBeLessThanOrEqual(levelAtMm)
        if (pourMl > 0) expect(levelAtMm).toBeCloseTo(collarMm + 12, 6)
      }),
    ))
})

describe('take-up', () => {
  it('scales with face and coat, and its dry matter is what the slop brought', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3000, noNaN: true }),
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        fc.double({ min: 1.2, max: 1.7, noNaN: true }),
        fc.double({ min: 2.3, max: 3.5, noNaN: true }),
        fc.double({ min: 0.4, max: 0.6, noNaN: true }),
        (area, coat, gramsPerMl, solidsGravity, cakeSolids) => {
          const slop = { gramsPerMl, solidsGravity, cakeSolids }
          const { slopMl, dryG } = takenBy(area, coat, slop)
          const perMl = (solidsGravity * (gramsPerMl - 1)) / (solidsGravity - 1)
          expect(dryG / (slopMl * perMl)).toBeCloseTo(1, 9)
          expect(takenBy(2 * area, coat, slop).slopMl).toBeCloseTo(2 * slopMl, 6)
        },
      ),
    ))
})
