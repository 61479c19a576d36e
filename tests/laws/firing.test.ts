import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { coneTemp, USUAL_CONES } from '../../src/engine/melt/cones.ts'
import { doseScale, firingToCone, heatWorkMin, logOf } from '../../src/engine/melt/firing.ts'
import { doseOfStripe, doseOfTiles, runOfStripe } from '../../src/engine/melt/flow-tile.ts'
import { fromTo } from '../fixtures/melt-pots.ts'

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
