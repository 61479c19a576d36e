/** The water book closes, and stores hold what they can. */

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { WallEvent } from '../../src/engine/contract.ts'
import { fillablePerMm } from '../../src/engine/index.ts'
import { TOUCH_EMPTY } from '../../src/engine/parameters.ts'
import { courseOf, finish, runPot } from '../../src/engine/wall/pot.ts'
import { waterOf } from '../../src/engine/wall/wall.ts'
import { cases, dipsOf, lastMm, pieceOf, RUNS, SLACK, straight, within } from '../fixtures/cases.ts'

describe('the water book', () => {
  const long = fc.integer({ min: 1, max: 8 }).chain(cases)

  test('closes: what dips and sponges brought is in the wall or in the air', () => {
    fc.assert(
      fc.property(long, within(0, 0.3), within(0, 300), within(0, 90), (of, sponged, washedMin, dryMin) => {
        const dips = dipsOf(of)
        const events: WallEvent[] = [
          { kind: 'wipe', atMin: 0, waterMm: sponged },
          ...dips,
          { kind: 'dry', atMin: dryMin },
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

  test('a wall found dry is dry from then on, and holds what it held, but for what it had no room for', () => {
    fc.assert(
      fc.property(cases(2), within(0.2, 30), (of, dryMin) => {
        const after = [...dipsOf(of)]
        const atMin = after.at(-1)!.atMin + dryMin
        const looked: WallEvent[] = [...after, { kind: 'wipe', atMin, waterMm: 0 }]
        const { wall } = pieceOf(of, [...looked, { kind: 'dry', atMin }])
        const before = pieceOf(of, looked).wall
        for (const side of [wall.outside, wall.inside]) {
          expect(side.film).toBe(0)
          expect(side.coat).toBeLessThanOrEqual(side.pore - TOUCH_EMPTY * side.newPore + SLACK)
          expect(side.touchS).toBeLessThanOrEqual(60 * atMin + SLACK)
        }
        const gone = wall.evaporated - before.evaporated
        expect(waterOf(wall) + gone).toBeCloseTo(waterOf(before), 9)
        if (wall.outside.body < wall.outside.cap - SLACK && wall.inside.body < wall.inside.cap - SLACK)
          expect(gone).toBeLessThan(SLACK)
      }),
      RUNS,
    )
  })

  test('a dip brings the water of the slop it took', () => {
    fc.assert(
      fc.property(cases(1), (of) => {
        const piece = pieceOf(of)
        const mm = lastMm(piece)
        const solids = (of.slop.gramsPerMl - 1) / (of.slop.solidsGravity - 1)
        const perFaceMm = (mm * of.slop.cakeSolids * (1 - solids)) / solids
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
