/**
 * The trade's waits (common practice, no source): suction, exchange and touch threshold are tuned to them, so they prove
 * nothing, but they must not drift. A 95 mm beaker at the app's own defaults: dipped whole by hand, 1.45, absorption
 * 0.12, 20 degC, 50 %, an ordinary room; minutes of the zone that waits longest.
 */

import { describe, expect, test } from 'vitest'
import { wetSurface } from '../../../src/engine/index.ts'
import { type Coat, coatsOn, kilnHours } from '../../fixtures/coats-on.ts'
import { air } from '../../fixtures/wall.ts'

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

  test('a 3 mm wall is full after one dip, and the second coat is hardly more than its film', () => {
    const [first, second] = coatsOn(3, [4, 3], MILD) as [Coat, Coat]
    expect(first.waitMin).toBeGreaterThan(30)
    expect(first.waitMin).toBeLessThan(80)
    expect(second.waitMin).toBeGreaterThan(60)
    expect(second.mm).toBeLessThan(0.25)
  })

  test('what only the air can dry takes about twice as long on a damp day; what the wall drinks hardly longer', () => {
    const times = (wallMm: number, holds: readonly number[], coat: number): number =>
      coatsOn(wallMm, holds, DAMP)[coat]!.waitMin / coatsOn(wallMm, holds, MILD)[coat]!.waitMin
    for (const wallMm of [3, 4]) {
      expect(times(wallMm, [4, 3], 1)).toBeGreaterThan(1.9)
      expect(times(wallMm, [4, 3], 1)).toBeLessThan(2.3)
    }
    for (const wallMm of [5, 6.5, 8]) {
      expect(times(wallMm, [2], 0)).toBeGreaterThanOrEqual(0.9)
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

// Two coats on 6 mm: overnight in an ordinary room; hours of common practice.
test.each([
  ['overnight in an ordinary room', MILD, 10, 18],
  ['dry and still', air(21, 0.32, 0.08), 10, 16],
  ['dry with a fan', air(21, 0.32, 1.5), 5, 8],
  ['damp and still', air(24, 0.78, 0.08), 32, 49],
] as const)('kiln-dry %s', (_, room, leastH, mostH) => {
  const hours = kilnHours(6, [2, 2], room)
  expect(hours).toBeGreaterThanOrEqual(leastH)
  expect(hours).toBeLessThanOrEqual(mostH)
})
