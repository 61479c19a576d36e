/** Laws of drying that hold for any wall, slop, dips and air. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Air } from '../../src/engine/contract.ts'
import { bisqueOf, DEFAULT_BODY, defaultSlop } from '../../src/engine/index.ts'
import { waitsOf } from '../../src/engine/wait/forecast.ts'
import { courseOf, finish, runPot } from '../../src/engine/wall/pot.ts'
import { type Case, cases, dipsOf, RUNS, straight, within } from '../fixtures/cases.ts'
import { air, beaker, dip, potOf } from '../fixtures/wall.ts'

describe('waits', () => {
  interface Moments {
    readonly touchS: number
    readonly thirstyS: number
    readonly kilnS: number
  }

  /** The same pot and dips; from the last dip on, another air. */
  function dries(of: Case, last: Air): Moments {
    const dips = dipsOf(of)
    const run = runPot(
      courseOf(straight(of), [...dips, { kind: 'air', atMin: dips.at(-1)!.atMin, air: last }], of.air),
      1,
    )
    finish(run, 'kiln')
    const { outside, inside, kilnS } = run.pieces.at(-1)!.wall
    return {
      touchS: Math.max(outside.touchS, inside.touchS) - run.lastS,
      thirstyS: Math.max(outside.thirstyS, inside.thirstyS) - run.lastS,
      kilnS: kilnS - run.lastS,
    }
  }

  /** Not shorter, but for the error of the steps. */
  function notShorter(worse: Moments, better: Moments): void {
    for (const key of ['touchS', 'thirstyS', 'kilnS'] as const) {
      if (better[key] === Infinity) expect(worse[key]).toBe(Infinity)
      else expect(worse[key], key).toBeGreaterThanOrEqual(better[key] * 0.98 - 0.5)
    }
  }

  const few = fc.integer({ min: 1, max: 3 }).chain(cases)

  test('never shorter in damper air, in less draught, or colder at the same humidity', () => {
    fc.assert(
      fc.property(few, within(0, 1), within(0, 1), within(0, 8), (of, damper, calmer, colder) => {
        const base = dries(of, of.air)
        notShorter(dries(of, { ...of.air, rh: of.air.rh + damper * (1 - of.air.rh) }), base)
        notShorter(dries(of, { ...of.air, speedMps: of.air.speedMps * calmer }), base)
        // A pot carried into the cold dries on its own warmth at first: told of long waits alone.
        const cold = dries(of, { ...of.air, tempC: of.air.tempC - colder })
        if (base.kilnS > 3 * 3600) expect(cold.kilnS).toBeGreaterThanOrEqual(base.kilnS * 0.97)
      }),
      RUNS,
    )
  })

  test('a wetter bare pot is never kiln-dry sooner', () => {
    fc.assert(
      fc.property(cases(1), within(0, 0.2), (of, more) => {
        const kilnS = (startWater: number): number => {
          const run = runPot(courseOf(straight({ ...of, startWater }), [], of.air), 1)
          finish(run, 'kiln')
          return run.pieces.at(-1)!.wall.kilnS
        }
        expect(kilnS(of.startWater + more)).toBeGreaterThanOrEqual(kilnS(of.startWater) * 0.98)
      }),
      RUNS,
    )
  })

  test('in saturated air a pot is never kiln-dry, yet a thirsty wall dries its first coat', () => {
    fc.assert(
      fc.property(within(6, 12), within(1, 3), (wallMm, holdS) => {
        const pot = potOf(
          { form: 'cylinder', heightMm: 80, rimMm: 90, wallMm, floorMm: 6, footLineMm: 0 },
          DEFAULT_BODY,
        )
        const run = runPot(courseOf(pot, [dip('a', 0, holdS)], air(20, 1)), 1)
        finish(run, 'kiln')
        const { outside, kilnS } = run.pieces.at(-1)!.wall
        expect(kilnS).toBe(Infinity)
        expect(outside.touchS).toBeLessThan(30 * 60)
      }),
      RUNS,
    )
  })

  test('a thinner wall never waits less than a thicker one by more than 5 % for a first coat', () => {
    fc.assert(
      fc.property(
        within(2.5, 9),
        within(1, 1.5),
        within(0.08, 0.16),
        within(1, 6),
        within(1.38, 1.52),
        within(0.25, 0.8),
        (wallMm, thicker, absorption, holdS, gramsPerMl, rh) => {
          const coat = dip('a', 0, holdS, { kind: 'full' }, defaultSlop(gramsPerMl, 2.6), 120)
          const touchMin = (mm: number): number =>
            waitsOf(
              runPot(courseOf(potOf(beaker(mm), bisqueOf(absorption)), [coat], air(20, rh)), 1),
              'touch',
            ).touchMin
          expect(touchMin(wallMm)).toBeGreaterThanOrEqual(0.95 * touchMin(wallMm * thicker))
        },
      ),
      RUNS,
    )
  })
})
