import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { OutlinePoint, Profile, Shape } from '../../src/engine/contract.ts'
import { at, smooth } from '../../src/engine/shape/curve.ts'
import {
  clayMl,
  displacedMl,
  enclosedMl,
  FORMS,
  faceAreaCm2,
  holdsMl,
  outlineOf,
  radiusAtMm,
  trappedRiseMm,
} from '../../src/engine/shape/geometry.ts'

/** Any shape that might be typed in, good or bad. */
const anyShape: fc.Arbitrary<Shape> = fc.record(
  {
    form: fc.constantFrom(...FORMS),
    heightMm: fc.double({ min: 10, max: 600, noNaN: true }),
    rimMm: fc.double({ min: 10, max: 600, noNaN: true }),
    bellyMm: fc.double({ min: 10, max: 700, noNaN: true }),
    bellyUpMm: fc.double({ min: 0, max: 300, noNaN: true }),
    footMm: fc.double({ min: 8, max: 400, noNaN: true }),
    wallMm: fc.oneof(
      fc.double({ min: 0.5, max: 12, noNaN: true }),
      fc.double({ min: 0.5, max: 60, noNaN: true }),
    ),
    floorMm: fc.double({ min: 0.5, max: 60, noNaN: true }),
    footLineMm: fc.double({ min: 0, max: 30, noNaN: true }),
  },
  { requiredKeys: ['form', 'heightMm', 'rimMm', 'wallMm', 'footLineMm'] },
)

function tried(shape: Shape): Profile | undefined {
  try {
    return outlineOf(shape)
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    return undefined
  }
}

/** A pot that could be thrown: measures in proportion. */
const pot: fc.Arbitrary<Profile> = fc
  .record({
    form: fc.constantFrom(...FORMS),
    heightMm: fc.double({ min: 60, max: 300, noNaN: true }),
    wide: fc.double({ min: 0.6, max: 1.6, noNaN: true }),
    foot: fc.double({ min: 0.4, max: 0.8, noNaN: true }),
    wallMm: fc.double({ min: 2.5, max: 9, noNaN: true }),
  })
  .map(({ form, heightMm, wide, foot, wallMm }) => {
    const rimMm = form === 'bottle' ? 30 + heightMm * 0.08 : heightMm * wide
    const bellyMm = form === 'bottle' ? heightMm * wide * 0.6 + 30 : rimMm * 1.2
    return outlineOf({ form, heightMm, rimMm, bellyMm, footMm: bellyMm * foot, wallMm, footLineMm: 5 })
  })

const part = fc.double({ min: 0, max: 1, noNaN: true })

const scaled = (profile: Profile, by: number): Profile => {
  const bigger = (line: readonly OutlinePoint[]): OutlinePoint[] =>
    line.map((p) => ({ rMm: p.rMm * by, zMm: p.zMm * by }))
  return {
    shape: { ...profile.shape, heightMm: profile.shape.heightMm * by },
    outer: bigger(profile.outer),
    inner: bigger(profile.inner),
  }
}

describe('outlines', () => {
  it('are finite, rise from foot to rim and keep the inside within the outside, or are refused', () => {
    let kept = 0
    fc.assert(
      fc.property(anyShape, (shape) => {
        const profile = tried(shape)
        if (!profile) return
        kept++
        for (const line of [profile.outer, profile.inner]) {
          expect(line.length).toBeGreaterThan(33)
          line.forEach((p, i) => {
            expect(Number.isFinite(p.rMm) && Number.isFinite(p.zMm) && p.rMm >= 0).toBe(true)
            expect(p.zMm).toBeGreaterThanOrEqual(line[i - 1]?.zMm ?? 0)
          })
        }
        for (const p of profile.inner)
          expect(p.rMm).toBeLessThanOrEqual(radiusAtMm(profile, 'outside', p.zMm) - shape.wallMm * 0.5 + 1e-6)
        expect(clayMl(profile, 0, shape.heightMm)).toBeGreaterThan(0)
        expect(holdsMl(profile)).toBeGreaterThan(0)
      }),
      { numRuns: 1500 },
    )
    expect(kept).toBeGreaterThan(100)
  })
  it('hold less with a thicker wall', () =>
    fc.assert(
      fc.property(pot, (profile) => {
        const thicker = tried({ ...profile.shape, wallMm: profile.shape.wallMm * 1.2, floorMm: 6 })
        const same = tried({ ...profile.shape, floorMm: 6 })
        if (thicker && same) expect(holdsMl(thicker)).toBeLessThan(holdsMl(same))
      }),
      { numRuns: 150 },
    ))
})

describe('curves', () => {
  it('pass through their points and never leave the span of the two they lie between', () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 1, max: 100, noNaN: true }),
            fc.double({ min: 0.1, max: 40, noNaN: true }),
          ),
          {
            minLength: 2,
            maxLength: 9,
          },
        ),
        (steps) => {
          let zMm = 0
          const through = steps.map(([rMm, up]) => {
            zMm += up
            return { rMm, zMm }
          })
          const curve = smooth(through, 8)
          expect(curve.length).toBe((through.length - 1) * 8 + 1)
          curve.forEach((p, i) => {
            const [a, b] = [at(through, Math.floor(i / 8)), at(through, Math.ceil(i / 8))]
            if (i % 8 === 0) expect(p).toEqual(a)
            expect(p.rMm).toBeGreaterThanOrEqual(Math.min(a.rMm, b.rMm) - 1e-9)
            expect(p.rMm).toBeLessThanOrEqual(Math.max(a.rMm, b.rMm) + 1e-9)
            expect(p.zMm).toBeGreaterThanOrEqual(a.zMm - 1e-9)
            expect(p.zMm).toBeLessThanOrEqual(b.zMm + 1e-9)
          })
        },
      ),
    ))
})

describe('areas and volumes', () => {
  it('grow as the square and the cube of the size', () =>
    fc.assert(
      fc.property(pot, fc.double({ min: 0.3, max: 4, noNaN: true }), part, (profile, by, at) => {
        const h = profile.shape.heightMm
        const big = scaled(profile, by)
        const area = faceAreaCm2(profile, 'outside', at * h, h)
        expect(faceAreaCm2(big, 'outside', at * big.shape.heightMm, big.shape.heightMm)).toBeCloseTo(
          area * by * by,
          6,
        )
        expect(holdsMl(big) / (holdsMl(profile) * by ** 3)).toBeCloseTo(1, 9)
      }),
    ))
  it('do not depend on where the pot is cut', () =>
    fc.assert(
      fc.property(
        pot,
        fc.array(part, { maxLength: 6 }),
        fc.constantFrom('outside', 'inside'),
        (profile, cuts, face) => {
          const h = profile.shape.heightMm
          const edges = [0, ...cuts.map((c) => c * h).sort((a, b) => a - b), h]
          let [area, volume] = [0, 0]
          edges.slice(1).forEach((to, i) => {
            const from = edges[i] ?? 0
            area += faceAreaCm2(profile, face, from, to)
            volume += enclosedMl(profile, face, from, to)
          })
          expect(area).toBeCloseTo(faceAreaCm2(profile, face, 0, h), 6)
          expect(volume).toBeCloseTo(enclosedMl(profile, face, 0, h), 6)
        },
      ),
    ))
  it('of a line drawn within a convex side stay below those of the side', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 60 }),
        fc.double({ min: 5, max: 200, noNaN: true }),
        (pieces, r) => {
          const outer = Array.from({ length: pieces + 1 }, (_, i) => ({
            rMm: r * Math.sin((Math.PI * i) / pieces / 2),
            zMm: r * (1 - Math.cos((Math.PI * i) / pieces / 2)),
          }))
          const rim = outer[outer.length - 1] ?? { rMm: r, zMm: r }
          const bowl: Profile = {
            shape: { form: 'bowl', heightMm: rim.zMm, rimMm: 2 * r, wallMm: 1, footLineMm: 0 },
            outer,
            inner: [rim, rim],
          }
          expect(faceAreaCm2(bowl, 'outside', 0, 2 * r)).toBeLessThan((2 * Math.PI * r * r) / 100)
          expect(enclosedMl(bowl, 'outside', 0, 2 * r)).toBeLessThan((2 * Math.PI * r ** 3) / 3000)
        },
      ),
    ))
})

describe('displacement', () => {
  it('grows with depth, however the pot goes in', () =>
    fc.assert(
      fc.property(pot, part, part, fc.double({ min: 0, max: 180, noNaN: true }), (profile, a, b, tiltDeg) => {
        const h = profile.shape.heightMm * 0.999
        const [less, more] = [Math.min(a, b) * h, Math.max(a, b) * h]
        const slop = { gramsPerMl: 1.45, pressurePa: 95_000 }
        for (const of of [
          (depthMm: number) => displacedMl(profile, { way: 'footFirst', depthMm }),
          (depthMm: number) => displacedMl(profile, { way: 'filled', depthMm }),
          (depthMm: number) => displacedMl(profile, { way: 'tilted', depthMm, tiltDeg }),
          (depthMm: number) => displacedMl(profile, { way: 'rimFirst', depthMm, ...slop }),
        ])
          expect(of(more)).toBeGreaterThanOrEqual(of(less) - 1e-6)
      }),
    ))
  it('of a pot wholly under and full is its clay, at any lean', () =>
    fc.assert(
      fc.property(pot, fc.double({ min: 0, max: 180, noNaN: true }), (profile, tiltDeg) => {
        const clay = clayMl(profile, 0, profile.shape.heightMm)
        const under = displacedMl(profile, { way: 'tilted', depthMm: 3000, tiltDeg })
        expect(under / clay).toBeCloseTo(1, 9)
      }),
    ))
  it('with trapped air lies between clay alone and the whole outside; the air climbs less than the depth', () =>
    fc.assert(
      fc.property(pot, part, (profile, at) => {
        const h = profile.shape.heightMm
        const depthMm = at * h
        const aside = displacedMl(profile, { way: 'rimFirst', depthMm, gramsPerMl: 1.5, pressurePa: 101_325 })
        expect(aside).toBeLessThanOrEqual(enclosedMl(profile, 'outside', h - depthMm, h) + 1e-9)
        expect(aside).toBeGreaterThanOrEqual(clayMl(profile, h - depthMm, h) - 1e-6)
        expect(trappedRiseMm(profile, depthMm, 1.5, 101_325)).toBeLessThanOrEqual(depthMm)
      }),
    ))
})
