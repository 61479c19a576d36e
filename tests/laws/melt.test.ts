import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { CoatOnWall } from '../../src/engine/melt/coats.ts'
import { flow, frontMm, type Melt, volumeFrom } from '../../src/engine/melt/flow.ts'
import { layWell } from '../../src/engine/melt/well.ts'
import { outlineOf } from '../../src/engine/shape/geometry.ts'
import { coatsFor, fromTo, outsideOf, pots, shapes } from '../fixtures/melt-pots.ts'

const total = (melt: Melt): number => volumeFrom(melt, 0) + melt.gone

describe('melt on 1,000 random pots', () => {
  test('no volume is lost or made, outside or inside, and none is negative', () => {
    fc.assert(
      fc.property(pots, fromTo(0.1, 3), ({ profile, coats }, share) => {
        for (const melt of [outsideOf(profile, coats), layWell(profile, coats, true).melt]) {
          const before = total(melt)
          flow(melt, share)
          expect(Math.abs(total(melt) - before)).toBeLessThanOrEqual(1e-12 * before)
          expect(melt.thickMm.every((h) => h >= 0)).toBe(true)
          expect(melt.gone).toBeGreaterThanOrEqual(0)
        }
      }),
      { numRuns: 1000 },
    )
  })
})

/** Steps differ between two runs, and with them the scheme's own smear: so much of a melt may differ. */
const SMEAR = 2e-3

describe('more never runs less', () => {
  test('thicker: no less melt past any height, no less on the shelf', () => {
    fc.assert(
      fc.property(pots, fromTo(1, 2), ({ profile, coats }, more) => {
        const thick = coats.map((coat) => ({
          ...coat,
          likelyMm: coat.likelyMm * more,
          upperMm: coat.upperMm * more,
        }))
        const [thin, thicker] = [outsideOf(profile, coats), outsideOf(profile, thick)]
        flow(thin, 1)
        flow(thicker, 1)
        const slack = SMEAR * total(thicker) + 1e-12
        for (let i = 0; i < thin.path.cells; i += 7)
          expect(volumeFrom(thicker, i) + thicker.gone).toBeGreaterThanOrEqual(
            volumeFrom(thin, i) + thin.gone - slack,
          )
      }),
      { numRuns: 200 },
    )
  })

  test('longer: no less on the shelf, a front no higher', () => {
    fc.assert(
      fc.property(pots, fromTo(0, 2), fromTo(0, 2), ({ profile, coats }, share, more) => {
        const melt = outsideOf(profile, coats)
        flow(melt, share)
        const [gone, past] = [melt.gone, [10, 40, 80].map((i) => volumeFrom(melt, i))]
        flow(melt, more)
        expect(melt.gone).toBeGreaterThanOrEqual(gone)
        for (const [k, i] of [10, 40, 80].entries())
          expect(volumeFrom(melt, i) + melt.gone).toBeGreaterThanOrEqual((past[k]! + gone) * (1 - 1e-12))
      }),
      { numRuns: 200 },
    )
  })

  test('a more fluid glaze all over: no less past any height', () => {
    fc.assert(
      fc.property(pots, fromTo(1, 4), ({ profile, coats }, factor) => {
        const alike = coats.map((coat) => ({ ...coat, dose: { likelyPerMm: 20, highPerMm: 20 } }))
        const [stiff, fluid] = [outsideOf(profile, alike), outsideOf(profile, alike)]
        flow(stiff, 1)
        flow(fluid, factor)
        for (let i = 0; i < stiff.path.cells; i += 7)
          expect(volumeFrom(fluid, i) + fluid.gone).toBeGreaterThanOrEqual(
            volumeFrom(stiff, i) + stiff.gone - SMEAR * total(fluid),
          )
      }),
      { numRuns: 100 },
    )
  })
})

test('a firing in two parts runs as the whole', () => {
  fc.assert(
    fc.property(pots, fromTo(0, 1), ({ profile, coats }, part) => {
      const [whole, split] = [outsideOf(profile, coats), outsideOf(profile, coats)]
      flow(whole, 1)
      flow(split, part)
      flow(split, 1 - part)
      const apart = whole.thickMm.reduce(
        (sum, h, i) => sum + Math.abs(h - split.thickMm[i]!) * whole.path.areaMm2[i]!,
        0,
      )
      expect(apart + Math.abs(whole.gone - split.gone)).toBeLessThanOrEqual(0.02 * total(whole))
      expect(Math.abs(frontMm(whole) - frontMm(split))).toBeLessThan(1)
    }),
    { numRuns: 200 },
  )
})

const scaledBy = (coats: readonly CoatOnWall[], a: number): readonly CoatOnWall[] =>
  coats.map((coat) => ({
    ...coat,
    likelyMm: coat.likelyMm * a,
    upperMm: coat.upperMm * a,
    dose: coat.dose && {
      likelyPerMm: coat.dose.likelyPerMm / a ** 2,
      highPerMm: coat.dose.highPerMm / a ** 2,
    },
  }))

test('scaling: a times the melt at 1/a^2 of the dose gives a times the same profile', () => {
  fc.assert(
    fc.property(pots, fromTo(0.5, 2), ({ profile, coats }, a) => {
      const [one, other] = [outsideOf(profile, coats), outsideOf(profile, scaledBy(coats, a))]
      flow(one, 1)
      flow(other, 1)
      for (let i = 0; i < one.path.cells; i++)
        expect(Math.abs(other.thickMm[i]! - a * one.thickMm[i]!)).toBeLessThan(1e-6)
    }),
    { numRuns: 200 },
  )
})

// A power of two leaves every bit as it is, so nothing but the scale differs.
test('scaling: twice the melt at a quarter of the dose stands at the very same front', () => {
  fc.assert(
    fc.property(pots, ({ profile, coats }) => {
      const [one, other] = [outsideOf(profile, coats), outsideOf(profile, scaledBy(coats, 2))]
      flow(one, 1)
      flow(other, 1)
      expect(frontMm(other)).toBe(frontMm(one))
    }),
    { numRuns: 200 },
  )
})

test('on an upright wall the thickest melt never grows', () => {
  const upright = shapes.map((shape) => outlineOf({ ...shape, form: 'cylinder' }))
  fc.assert(
    fc.property(
      upright.chain((p) => coatsFor(p).map((coats) => ({ p, coats }))),
      ({ p, coats }) => {
        const alike = coats.map((coat) => ({ ...coat, dose: { likelyPerMm: 30, highPerMm: 30 } }))
        const melt = outsideOf(p, alike)
        const before = Math.max(...melt.thickMm)
        flow(melt, 1)
        expect(Math.max(...melt.thickMm)).toBeLessThanOrEqual(before * (1 + 1e-9))
      },
    ),
    { numRuns: 100 },
  )
})
