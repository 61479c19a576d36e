/** The promises made at the table about humidity, the count of coats, wax, and coats too thick. */

import { expect, test } from 'vitest'
import type { Air, PotForecast, PotWall, WallEvent } from '../../../src/engine/contract.ts'
import {
  DEFAULT_BODY,
  forecastPot,
  repairRest,
  skirtTopMm,
  UNLEARNED,
  waxSetMin,
  worstZone,
} from '../../../src/engine/index.ts'
import { BOARD, stackDips } from '../../fixtures/class.ts'
import { coatsOn } from '../../fixtures/coats-on.ts'
import { air, beaker, dip, potOf } from '../../fixtures/wall.ts'

const forecast = (pot: PotWall, events: readonly WallEvent[], room: Air): PotForecast =>
  forecastPot(pot, events, room, UNLEARNED)

/** Wait to touch-dry of the upright wall under alike coats, each dipped when the one below is touch-dry, minutes. */
const waitsOf = (wallMm: number, holds: readonly number[], room: Air): number[] =>
  coatsOn(wallMm, holds, room).map(({ waitMin }) => waitMin)

test('humidity hardly moves the first coat on a thirsty wall', () => {
  const pot = potOf(beaker(8))
  const dry = forecast(pot, [dip('a', 0, 3)], air(22, 0.35)).touchDry.likely
  const wet = forecast(pot, [dip('a', 0, 3)], air(22, 0.8)).touchDry.likely
  expect(wet).toBeGreaterThanOrEqual(dry)
  expect(wet / dry).toBeLessThan(1.4)
})

test('humidity doubles the second coat on a thin wall, same events', () => {
  const pot = potOf(beaker(4))
  const events = [dip('a', 0, 3), dip('b', 10, 3)]
  const dry = forecast(pot, events, air(22, 0.35)).touchDry.likely - 10
  const wet = forecast(pot, events, air(22, 0.8)).touchDry.likely - 10
  expect(wet / dry).toBeGreaterThanOrEqual(2)
  expect(wet / dry).toBeLessThanOrEqual(6)
})

test.each([3, 4, 5, 6])('a second coat waits longer than the first on %d mm', (wallMm) => {
  const [first, second] = waitsOf(wallMm, [2, 2], air(20, 0.5)) as [number, number]
  expect(second).toBeGreaterThan(first)
})

test('the second coat on 4 mm waits at least four times that on 10 mm', () => {
  const thin = waitsOf(4, [3, 3], air(20, 0.5))[1]!
  const thick = waitsOf(10, [3, 3], air(20, 0.5))[1]!
  expect(thin).toBeGreaterThanOrEqual(4 * thick)
})

test('hot wax ignores humidity, water-based wax does not', () => {
  expect(waxSetMin('hot', air(20, 0.2))).toBe(waxSetMin('hot', air(20, 0.9)))
  expect(waxSetMin('hot', air(10, 0.5))).toBeLessThan(waxSetMin('hot', air(28, 0.5)))
  expect(waxSetMin('water', air(20, 0.8))).toBeGreaterThan(2 * waxSetMin('water', air(20, 0.4)))
  expect(waxSetMin('water', air(20, 1))).toBe(Infinity)
})

test('a stack too thick at the rim says where, how much, and what to do', () => {
  const pot = potOf({ form: 'beaker', heightMm: 110, rimMm: 90, wallMm: 8, footLineMm: 8 })
  const plan = stackDips(pot, 'Tideline')
  const dips = plan.map((coat, k) => ({ ...coat, holdS: [8, 8, 5][k]!, atMin: 15 * k }))
  const limits = { stackMm: 1.25, glazeMm: {} }
  const { zones } = forecast(pot, dips, air(21, 0.32))
  const worst = worstZone(zones, limits)
  expect(worst.zone.name).toBe('collar')
  expect(['over', 'close']).toContain(worst.grade)
  const skirt = zones.find((zone) => zone.name === 'skirt')!
  expect(worstZone([skirt], limits).grade).toBe('fine')

  // Two coats on a wall that never tires would add as the roots of their times.
  const alone = dips.map((coat) => {
    const zone = forecast(pot, [coat], air(21, 0.32)).zones.find(
      (z) => z.face === 'outside' && z.coats.length > 0 && z.toMm === 110,
    )!
    return zone.likelyMm
  })
  expect(worst.likelyMm).toBeLessThan(alone.reduce((sum, mm) => sum + mm, 0))

  const repair = repairRest(
    { pot, events: dips.slice(0, 2), air0: air(21, 0.32) },
    plan.map((coat, k) => ({ ...coat, atMin: 15 * k })),
    dips.slice(2),
    limits,
  )
  expect(repair.inside).toBe(true)
  expect(repair.rest[0]!.holdS ?? 0).toBeLessThan(5)
})

test('a thin cup is drowned by a two-sided dip of 4 s', () => {
  const cup = BOARD.find(({ number }) => number === 36)!
  const pot = potOf(cup.shape, { ...DEFAULT_BODY, absorption: 0.12 })
  const { zones, touchDry } = forecast(pot, stackDips(pot, 'Doorstep').slice(0, 1), air(24, 0.78))
  expect(zones.find((zone) => zone.name === 'body')!.filled).toBeGreaterThan(0.75)
  expect(touchDry.likely).toBeGreaterThan(60)
})

test('the skirt ends at 20 mm above the foot line or at the belly if that is lower', () => {
  expect(skirtTopMm(potOf(beaker(5)).profile)).toBe(28)
  const squat = potOf({
    form: 'jar',
    heightMm: 120,
    rimMm: 80,
    bellyMm: 120,
    bellyUpMm: 25,
    wallMm: 6,
    footLineMm: 10,
  })
  expect(skirtTopMm(squat.profile)).toBe(25)
})
