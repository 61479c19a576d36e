/** Laws of the water balance that hold for any wall, slop, dips and air. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Air, Body, Dip, Slip, WallEvent } from '../../src/engine/contract.ts'
import { DEFAULT_BODY, fillablePerMm } from '../../src/engine/index.ts'
import { courseOf, finish, type Piece, runPot } from '../../src/engine/pot.ts'
import { waterOf } from '../../src/engine/wall.ts'
import { runsOf } from '../fixtures/runs.ts'
import { air, dip, potOf } from '../fixtures/wall.ts'

const RUNS = { numRuns: runsOf(300, 0.02) }
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })

interface Case {
  readonly wallMm: number
  readonly body: Body
  readonly startWater: number
  readonly slip: Slip
  readonly holds: readonly number[]
  readonly gapsMin: readonly number[]
  readonly air: Air
}

const slips: fc.Arbitrary<Slip> = fc.record({
  gramsPerMl: within(1.2, 1.47),
  solidsGravity: within(2.4, 2.9),
  cakeSolids: within(0.45, 0.58),
  cakeResistanceSPerMm2: within(2, 100),
  pickUpFactor: within(0.6, 1.6),
})

const cases = (coats: number): fc.Arbitrary<Case> =>
  fc.record({
    wallMm: within(2, 15),
    body: fc.record({
      absorption: within(0.04, 0.22),
      absorptionTest: fc.constant('soak' as const),
      bulkGramsPerMl: within(1.7, 2.1),
      sorptivityMmPerSqrtS: within(0.04, 0.45),
    }),
    startWater: within(0, 0.8),
    slip: slips,
    holds: fc.array(within(0.5, 10), { minLength: coats, maxLength: coats }),
    gapsMin: fc.array(within(0.1, 200), { minLength: coats, maxLength: coats }),
    air: fc.record({
      tempC: within(8, 32),
      rh: within(0.1, 0.95),
      speedMps: within(0.05, 3),
      pressurePa: fc.constant(101_325),
    }),
  })

/** A straight pot glazed to its foot: its last stretch is plain wall. */
const straight = (of: Case) =>
  potOf(
    { form: 'cylinder', heightMm: 80, rimMm: 90, wallMm: of.wallMm, floorMm: 6, footLineMm: 0 },
    of.body,
    of.startWater,
  )

function dipsOf(of: Case): Dip[] {
  let atMin = 0
  return of.holds.map((holdS, k) => {
    const coat = dip(`coat ${k}`, atMin, holdS, { kind: 'full' }, of.slip)
    atMin += of.gapsMin[k]!
    return coat
  })
}

const pieceOf = (of: Case, events: readonly WallEvent[] = dipsOf(of), room = of.air): Piece =>
  runPot(courseOf(straight(of), events, room), 1).pieces.at(-1)!

const lastMm = (piece: Piece): number => {
  const { gain } = piece.laid.outside.at(-1)!
  return gain.castMm + gain.filmMm
}

const SLACK = 1e-9

describe('thickness', () => {
  const coats = fc.integer({ min: 1, max: 4 }).chain(cases)

  test('never shrinks with seconds, whatever is already on', () => {
    fc.assert(
      fc.property(coats, within(1, 3), (of, factor) => {
        const longer = { ...of, holds: [...of.holds.slice(0, -1), of.holds.at(-1)! * factor] }
        expect(lastMm(pieceOf(longer))).toBeGreaterThanOrEqual(lastMm(pieceOf(of)) - SLACK)
      }),
      RUNS,
    )
  })

  test('never shrinks with density, whatever is already on', () => {
    fc.assert(
      fc.property(coats, within(0, 0.05), (of, more) => {
        const dips = dipsOf(of)
        const last = dips.at(-1)!
        const slip = { ...of.slip, gramsPerMl: of.slip.gramsPerMl + more }
        const denser = pieceOf(of, [...dips.slice(0, -1), { ...last, slip }])
        expect(lastMm(denser)).toBeGreaterThanOrEqual(lastMm(pieceOf(of)) - SLACK)
      }),
      RUNS,
    )
  })

  test('first coat: grows with absorption, wall and suction', () => {
    fc.assert(
      fc.property(cases(1), within(1, 1.5), (of, factor) => {
        const mm = lastMm(pieceOf(of))
        const { body } = of
        const more: Case[] = [
          { ...of, body: { ...body, absorption: body.absorption * factor } },
          { ...of, wallMm: of.wallMm * factor },
          { ...of, body: { ...body, sorptivityMmPerSqrtS: body.sorptivityMmPerSqrtS * factor } },
        ]
        for (const thirstier of more) expect(lastMm(pieceOf(thirstier))).toBeGreaterThanOrEqual(mm - SLACK)
      }),
      RUNS,
    )
  })

  test('first coat: falls with cake resistance, solids gravity and packing', () => {
    fc.assert(
      fc.property(cases(1), within(1, 1.1), (of, factor) => {
        const mm = lastMm(pieceOf(of))
        const { slip } = of
        const less: Slip[] = [
          { ...slip, cakeResistanceSPerMm2: slip.cakeResistanceSPerMm2 * factor },
          { ...slip, solidsGravity: slip.solidsGravity * factor },
          { ...slip, cakeSolids: slip.cakeSolids * factor },
        ]
        for (const other of less)
          expect(lastMm(pieceOf({ ...of, slip: other }))).toBeLessThanOrEqual(mm + SLACK)
      }),
      RUNS,
    )
  })

  test('first coat: four times the seconds cast at most twice as much', () => {
    fc.assert(
      fc.property(cases(1), (of) => {
        const cast = (holdS: number): number =>
          pieceOf({ ...of, holds: [holdS] }).laid.outside[0]!.gain.castMm
        expect(cast(4 * of.holds[0]!)).toBeLessThanOrEqual(2 * cast(of.holds[0]!) * (1 + 1e-3))
      }),
      RUNS,
    )
  })

  test('more water in the body never makes the next coat thicker', () => {
    fc.assert(
      fc.property(cases(1), within(0, 0.2), (of, more) => {
        const wetter = { ...of, startWater: of.startWater + more }
        expect(lastMm(pieceOf(wetter))).toBeLessThanOrEqual(lastMm(pieceOf(of)) + SLACK)
      }),
      RUNS,
    )
  })

  test('a longer wait never makes the next coat thinner', () => {
    fc.assert(
      fc.property(cases(2), within(1, 5), (of, factor) => {
        const later = { ...of, gapsMin: [of.gapsMin[0]! * factor, 0] }
        // Within the error of the waits' steps.
        expect(lastMm(pieceOf(later))).toBeGreaterThanOrEqual(lastMm(pieceOf(of)) * (1 - 5e-3))
      }),
      RUNS,
    )
  })
})

describe('the water book', () => {
  const long = fc.integer({ min: 1, max: 8 }).chain(cases)

  test('closes: what dips and sponges brought is in the wall or in the air', () => {
    fc.assert(
      fc.property(long, within(0, 0.3), within(0, 300), (of, sponged, washedMin) => {
        const dips = dipsOf(of)
        const events: WallEvent[] = [
          { kind: 'wipe', atMin: 0, waterMm: sponged },
          ...dips,
          { kind: 'washOff', atMin: washedMin },
        ]
        const run = runPot(courseOf(straight(of), events, of.air), 1)
        finish(run, 'kiln')
        for (const { wall } of run.pieces) {
          const start = of.startWater * (wall.outside.cap + wall.inside.cap)
          const off = start + wall.brought - wall.evaporated - waterOf(wall)
          expect(Math.abs(off)).toBeLessThan(1e-9)
        }
      }),
      RUNS,
    )
  })

  test('a dip brings the water of the slop it took', () => {
    fc.assert(
      fc.property(cases(1), (of) => {
        const piece = pieceOf(of)
        const mm = lastMm(piece)
        const solids = (of.slip.gramsPerMl - 1) / (of.slip.solidsGravity - 1)
        const perFaceMm = (mm * of.slip.cakeSolids * (1 - solids)) / solids
        expect(piece.wall.brought).toBeCloseTo(2 * perFaceMm, 9)
      }),
      RUNS,
    )
  })

  test('stores hold neither less than nothing nor more than fits', () => {
    fc.assert(
      fc.property(long, (of) => {
        const { wall } = pieceOf(of)
        const capMm = (fillablePerMm(of.body) * of.wallMm) / 2
        for (const side of [wall.outside, wall.inside]) {
          for (const mm of [side.film, side.coat, side.body]) expect(mm).toBeGreaterThanOrEqual(0)
          expect(side.coat).toBeLessThanOrEqual(side.pore + SLACK)
          expect(side.body).toBeLessThanOrEqual(capMm + SLACK)
        }
        expect(wall.outside.cap + wall.inside.cap).toBeCloseTo(2 * capMm, 12)
      }),
      RUNS,
    )
  })
})

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
})
