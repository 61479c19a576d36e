/**
 * The trade's waits (common practice, no source): the touch threshold is tuned to them, so they prove nothing, but they
 * must not drift. The upright wall of a pot under exactly those seconds, both faces, 20 degC, 50 %, 0.15 m/s.
 */

import { describe, expect, test } from 'vitest'
import { wetSurface } from '../../../src/engine/index.ts'
import { courseOf, finish, runPot } from '../../../src/engine/wall/pot.ts'
import { type Coat, coatsOn } from '../../fixtures/coats-on.ts'
import { air, beaker, dip, potOf } from '../../fixtures/wall.ts'

const MILD = air(20, 0.5, 0.15)
const DAMP = air(24, 0.78, 0.15)
/** Ranges of minutes that a coat's wait should fall in, coat by coat. */
interface Expected {
  readonly wallMm: number
  readonly holds: readonly number[]
  readonly rangesMin: readonly (readonly [least: number, most: number])[]
}
const onWall = (wallMm: number, holds: number[], ...rangesMin: [number, number][]): Expected => ({
  wallMm,
  holds,
  rangesMin,
})
const EXPECTED: readonly Expected[] = [
  onWall(6.5, [2, 2, 2], [1, 2], [3, 7], [30, 65]),
  onWall(8, [3, 2, 2], [1, 2], [3, 5], [7, 19]),
  onWall(5, [2, 2, 2], [1, 3], [15, 37], [60, Infinity]),
  onWall(4, [4, 3], [8, 23], [60, Infinity]),
]

describe('touch-dry', () => {
  test.each(EXPECTED)('on $wallMm mm', ({ wallMm, holds, rangesMin }) => {
    coatsOn(wallMm, holds, MILD).forEach(({ waitMin }, k) => {
      const [least, most] = rangesMin[k]!
      expect(waitMin).toBeGreaterThanOrEqual(least)
      expect(waitMin).toBeLessThanOrEqual(most)
    })
  })

  test('a 3 mm wall is full after one dip: over an hour, and the second coat is a tenth of a mm', () => {
    const [first, second] = coatsOn(3, [4, 3], MILD) as [Coat, Coat]
    expect(first.waitMin).toBeGreaterThan(50)
    expect(first.waitMin).toBeLessThan(80)
    expect(second.waitMin).toBeGreaterThan(60)
    expect(second.mm).toBeLessThan(0.15)
    expect(coatsOn(4, [4, 3], MILD)[1]!.mm).toBeLessThan(0.12)
  })

  test('what only the air can dry takes about twice as long on a damp day; what the wall drinks hardly longer', () => {
    const times = (wallMm: number, holds: readonly number[], coat: number): number =>
      coatsOn(wallMm, holds, DAMP)[coat]!.waitMin / coatsOn(wallMm, holds, MILD)[coat]!.waitMin
    for (const wallMm of [3, 4]) {
      expect(times(wallMm, [4, 3], 1)).toBeGreaterThan(1.9)
      expect(times(wallMm, [4, 3], 1)).toBeLessThan(2.3)
    }
    for (const wallMm of [5, 6.5, 8]) {
      expect(times(wallMm, [2], 0)).toBeGreaterThanOrEqual(1)
      expect(times(wallMm, [2], 0)).toBeLessThan(1.4)
    }
  })
})

test('a wet pot loses some 97 g/m2h on the dry day and 31 on the damp one, within a tenth', () => {
  const gramsPerM2h = (tempC: number, rh: number): number =>
    wetSurface(air(tempC, rh, 0.08), 100).evaporationKgPerM2s * 3.6e6
  expect(Math.abs(gramsPerM2h(21, 0.32) - 97)).toBeLessThan(9.7)
  expect(Math.abs(gramsPerM2h(24, 0.78) - 31)).toBeLessThan(3.1)
})

// Two coats of 3 s on the upright wall of 5 mm; hours of common practice.
test.each([
  ['dry and still', air(21, 0.32, 0.08), 10, 16],
  ['dry with a fan', air(21, 0.32, 1.5), 5, 8],
  ['damp and still', air(24, 0.78, 0.08), 32, 49],
] as const)('kiln-dry %s', (_, room, leastH, mostH) => {
  const run = runPot(courseOf(potOf(beaker(5)), [dip('a', 0, 3), dip('b', 20, 3)], room), 1)
  finish(run, 'kiln')
  const hours = (run.pieces.at(-1)!.wall.kilnS - run.lastS) / 3600
  expect(hours).toBeGreaterThanOrEqual(leastH)
  expect(hours).toBeLessThanOrEqual(mostH)
})
