/**
 * Hidden truths: how often a band holds what happens, told of rooms whose truth the engine doesn't know. A small seeded
 * slice here; `npm run prove` prints the table in full.
 */
import { describe, expect, test } from 'vitest'
import { coverageOf, type Tally } from '../fixtures/worlds/coverage.ts'
import { WORLDS } from '../fixtures/worlds/rooms.ts'
import { weighedOf } from '../fixtures/worlds/weighed.ts'

const FULL = process.env.PROVE === '1'
const ROOMS = FULL ? 300 : 16
const WEIGHINGS = FULL ? 800 : 80

const told = ({ inside, width, error, count }: Tally): string =>
  `${(100 * inside).toFixed(0)} % in a factor of ${width.toFixed(1)}, off by ${error.toFixed(2)} (${count})`

describe('bands hold the truth four times out of five', () => {
  test.each(WORLDS)('$name', (world) => {
    for (const looks of FULL ? [0, 10, 24] : [10]) {
      const of = coverageOf(world, ROOMS, looks, 1)
      if (FULL)
        for (const key of ['touch', 'middling', 'thirsty', 'kiln'] as const)
          console.log(`${world.name}, ${looks} looks, ${key}: ${told(of[key])}`)
      // Where spreads are half as wide again as the engine holds, its bands can't be wide enough.
      const least = world.spreads > 1 ? 0.5 : 0.7
      expect(of.touch.inside).toBeGreaterThan(least)
      expect(of.kiln.inside).toBeGreaterThan(least)
      if (looks > 0) expect(of.touch.width).toBeLessThan(5)
    }
  })

  test('ten looks halve how far off the likely touch is', () => {
    const [before, after] = [0, 10].map((looks) => coverageOf(WORLDS[0]!, ROOMS, looks, 1).touch.error)
    expect(after!).toBeLessThan(before! / 2)
  })
})

test('a pot on the scale: touch bands hold, and the likely wait is off by a quarter less', () => {
  const { unweighed, weighed } = weighedOf(WORLDS[0]!, WEIGHINGS, 5)
  if (FULL) console.log(`unweighed: ${told(unweighed)}; weighed: ${told(weighed)}`)
  expect(weighed.inside).toBeGreaterThan(FULL ? 0.75 : 0.7)
  expect(weighed.inside).toBeLessThan(FULL ? 0.88 : 0.95)
  expect(weighed.error).toBeLessThan(0.75 * unweighed.error)
})
