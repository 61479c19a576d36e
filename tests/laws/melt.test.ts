import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { coneTemp, USUAL_CONES } from '../../src/engine/cones.ts'
import type { Form, Profile, Shape } from '../../src/engine/contract.ts'
import { doseScale, firingToCone, heatWorkMin, logOf } from '../../src/engine/firing.ts'
import { outlineOf } from '../../src/engine/geometry.ts'
import { type FootRoomInput, footRoom, LEAST_SLOPE, pairsOf } from '../../src/engine/melt.ts'
import { type CoatOnWall, layCoats } from '../../src/engine/melt-coats.ts'
import { flow, frontMm, type Melt, volumeFrom } from '../../src/engine/melt-flow.ts'
import { downToMm, downwards, pathAlong } from '../../src/engine/melt-path.ts'
import { doseOfStripe, doseOfTiles, runOfStripe } from '../../src/engine/melt-tile.ts'
import { layWell } from '../../src/engine/melt-well.ts'

const fromTo = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const FORMS: readonly Form[] = ['beaker', 'bowl', 'bottle', 'cup', 'jar', 'cylinder']

const shapes: fc.Arbitrary<Shape> = fc
  .record({
    form: fc.constantFrom(...FORMS),
    heightMm: fromTo(50, 220),
    rimMm: fromTo(60, 180),
    wallMm: fromTo(3, 7),
    footLineMm: fromTo(3, 15),
  })
  .map((shape) => shape)

const profiles: fc.Arbitrary<Profile> = shapes.map(outlineOf)

const coatsFor = (profile: Profile): fc.Arbitrary<readonly CoatOnWall[]> => {
  const { heightMm, footLineMm } = profile.shape
  return fc
    .array(
      fc.record({
        low: fromTo(0, 0.9),
        glaze: fc.constantFrom('a', 'b', 'c'),
        mm: fromTo(0.05, 1.2),
        more: fromTo(1, 1.6),
        dose: fromTo(0.5, 150),
        face: fc.constantFrom('outside', 'outside', 'inside' as const),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((all) =>
      all.map(({ low, glaze, mm, more, dose, face }, i) => ({
        dipId: `${i}`,
        glazeId: glaze,
        face,
        fromMm: footLineMm + low * (heightMm - footLineMm),
        toMm: heightMm,
        likelyMm: mm,
        upperMm: mm * more,
        dose: { likelyPerMm: dose, highPerMm: dose * 1.4 },
      })),
    )
}

const pots = profiles.chain((profile) => coatsFor(profile).map((coats) => ({ profile, coats })))

const outsideOf = (profile: Profile, coats: readonly CoatOnWall[], edgeMm?: number): Melt => {
  const line = downwards(profile, 'outside')
  const own = coats.filter((coat) => coat.face === 'outside')
  const lowest = Math.max(0, ...own.map((coat) => downToMm(line, coat.fromMm)))
  return layCoats(pathAlong(line, edgeMm ?? lowest, LEAST_SLOPE), line, own, false)
}

const inputOf = (profile: Profile, coats: readonly CoatOnWall[]): FootRoomInput => ({
  profile,
  coats,
  footLineMm: profile.shape.footLineMm,
  marginFactor: 2,
  provedPairs: pairsOf(coats),
})

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

test('scaling: a times the melt at 1/a^2 of the dose gives a times the same profile', () => {
  fc.assert(
    fc.property(pots, fromTo(0.5, 2), ({ profile, coats }, a) => {
      const scaled = coats.map((coat) => ({
        ...coat,
        likelyMm: coat.likelyMm * a,
        upperMm: coat.upperMm * a,
        dose: coat.dose && {
          likelyPerMm: coat.dose.likelyPerMm / a ** 2,
          highPerMm: coat.dose.highPerMm / a ** 2,
        },
      }))
      const [one, other] = [outsideOf(profile, coats), outsideOf(profile, scaled)]
      flow(one, 1)
      flow(other, 1)
      for (let i = 0; i < one.path.cells; i += 5)
        expect(Math.abs(other.thickMm[i]! - a * one.thickMm[i]!)).toBeLessThan(1e-6)
      expect(frontMm(other)).toBeCloseTo(frontMm(one), 4)
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

describe('verdicts', () => {
  const withExtra = pots.chain(({ profile, coats }) =>
    coatsFor(profile).map(([extra]) => ({ profile, coats, extra: { ...extra!, dipId: 'extra' } })),
  )

  test('an added coat never turns over into clear', () => {
    let overs = 0
    fc.assert(
      fc.property(withExtra, ({ profile, coats, extra }) => {
        const before = footRoom(inputOf(profile, coats)).verdict
        if (before === 'over') overs++
        const after = footRoom(inputOf(profile, [...coats, extra])).verdict
        if (before === 'over') expect(after).not.toBe('clear')
      }),
      { numRuns: 300 },
    )
    expect(overs).toBeGreaterThan(30)
  })

  test('unknown is never clear: an untested glaze, or a pair not proved, is never cleared', () => {
    fc.assert(
      fc.property(withExtra, fc.boolean(), ({ profile, coats, extra }, untested) => {
        const outside = {
          ...extra,
          face: 'outside' as const,
          glazeId: 'z',
          dose: untested ? null : extra.dose,
        }
        const input = inputOf(profile, [...coats, outside])
        const lone = !pairsOf(input.coats.filter((c) => c.face === 'outside')).some((p) => p.over === 'z')
        fc.pre(untested || !lone)
        const room = footRoom({ ...input, provedPairs: untested ? input.provedPairs : [] })
        expect(room.verdict).not.toBe('clear')
        expect(room.doubts.length).toBeGreaterThan(0)
      }),
      { numRuns: 200 },
    )
  })

  test('a wider margin, a higher dose or more thickness never eases a verdict', () => {
    const rank = { clear: 0, near: 1, over: 2, unknown: 3 }
    fc.assert(
      fc.property(
        pots,
        fromTo(1.1, 2),
        fc.constantFrom('margin', 'dose', 'thickness'),
        ({ profile, coats }, by, what) => {
          const input = inputOf(profile, coats)
          const harder: FootRoomInput = {
            ...input,
            marginFactor: what === 'margin' ? 2 * by : 2,
            coats: coats.map((coat) => ({
              ...coat,
              likelyMm: what === 'thickness' ? coat.likelyMm * by : coat.likelyMm,
              upperMm: what === 'thickness' ? coat.upperMm * by : coat.upperMm,
              dose:
                what === 'dose' && coat.dose
                  ? { likelyPerMm: coat.dose.likelyPerMm * by, highPerMm: coat.dose.highPerMm * by }
                  : coat.dose,
            })),
          }
          const [before, after] = [footRoom(input), footRoom(harder)]
          expect(rank[after.verdict]).toBeGreaterThanOrEqual(Math.min(rank[before.verdict], 2))
        },
      ),
      { numRuns: 200 },
    )
  })

  test('every number is finite', () => {
    fc.assert(
      fc.property(pots, fromTo(1, 5), ({ profile, coats }, marginFactor) => {
        const room = footRoom({ ...inputOf(profile, coats), marginFactor })
        const { verdict, doubts, untestedGlazes, untried, ...numbers } = room
        for (const value of Object.values(numbers)) expect(Number.isFinite(value) && value >= 0).toBe(true)
        expect([verdict, doubts.length, untestedGlazes.length, untried.length]).toEqual([
          verdict,
          doubts.length,
          0,
          0,
        ])
      }),
      { numRuns: 200 },
    )
  })
})

describe('tiles and firings', () => {
  test('a dose read back from the run it makes, on both branches', () => {
    fc.assert(
      fc.property(fromTo(0.3, 2), fromTo(20, 100), fromTo(1, 500), (dryMm, bandMm, dose) => {
        const runMm = runOfStripe(dose, dryMm, bandMm)
        fc.pre(runMm >= 0.5 && runMm <= 500)
        expect(doseOfStripe({ dryMm, bandMm, runMm }) / dose).toBeCloseTo(1, 9)
      }),
    )
  })

  test('tiles that agree more closely never widen the band', () => {
    fc.assert(
      fc.property(fromTo(2, 20), fromTo(1, 3), (runMm, apart) => {
        const tile = (run: number) => ({
          cone: '6',
          make: 'american' as const,
          stripes: [{ dryMm: 0.8, bandMm: 80, runMm: run }],
        })
        const close = doseOfTiles([tile(runMm), tile(runMm)])
        const far = doseOfTiles([tile(runMm / Math.sqrt(apart)), tile(runMm * Math.sqrt(apart))])
        expect(far.highPerMm / far.lowPerMm).toBeGreaterThanOrEqual(close.highPerMm / close.lowPerMm - 1e-9)
        expect(close.highPerMm).toBeLessThan(doseOfTiles([tile(runMm)]).highPerMm)
      }),
    )
  })

  test('heat work grows with peak, hold and slowness; and the scale of a firing to itself is one', () => {
    fc.assert(
      fc.property(
        fromTo(900, 1300),
        fromTo(15, 200),
        fromTo(0, 60),
        fromTo(180, 650),
        (peakC, rateCPerH, holdMin, kJ) => {
          const firing = { peakC, rateCPerH, holdMin, coolCPerH: 150 }
          const work = (more: object) => heatWorkMin(logOf({ ...firing, ...more }), kJ)
          expect(work({ peakC: peakC + 10 })).toBeGreaterThan(work({}))
          expect(work({ holdMin: holdMin + 5 })).toBeGreaterThan(work({}))
          expect(work({ rateCPerH: rateCPerH * 0.8 })).toBeGreaterThan(work({}))
          expect(doseScale(firing, firing)).toEqual({ low: 1, likely: 1, high: 1 })
        },
      ),
      { numRuns: 60 },
    )
  })

  test('a cone falls at a higher temperature the faster the rise', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('018', '06', '04', '1', '6', '10'),
        fromTo(15, 150),
        fromTo(1, 2),
        (cone, rate, more) => {
          const slow = coneTemp(cone, USUAL_CONES, rate)!.tempC
          const fast = coneTemp(cone, USUAL_CONES, Math.min(150, rate * more))!.tempC
          expect(fast).toBeGreaterThanOrEqual(slow)
          expect(firingToCone(cone, USUAL_CONES, rate)?.peakC).toBe(slow)
        },
      ),
    )
  })
})
