/**
 * Hidden truths: how often a band holds what happens, told of rooms whose truth the engine doesn't know. A small seeded
 * slice here; `npm run prove` prints the table in full.
 */
import { describe, expect, test } from 'vitest'
import { afterNotYet, coverageOf, type Tally } from '../fixtures/worlds/coverage.ts'
import { WORLDS } from '../fixtures/worlds/rooms.ts'
import { weighedOf } from '../fixtures/worlds/weighed.ts'

const FULL = process.env.PROVE === '1'
const ROOMS = FULL ? 300 : 16
const WEIGHINGS = FULL ? 800 : 80

const PHYSICAL = WORLDS.find(({ physical }) => physical)!

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

  test('untaught they are wide, and no wider than rooms with physical errors ask for', () => {
    const rooms = FULL ? ROOMS : 4 * ROOMS
    const untaught = coverageOf(PHYSICAL, rooms, 0, 1).touch
    expect(untaught.inside).toBeLessThan(FULL ? 0.9 : 0.95)
    expect(untaught.inside).toBeGreaterThan(0.75)
    expect(untaught.width).toBeLessThan(8)
  })

  test('ten looks make them narrower by a third, and the likely touch two fifths less off', () => {
    const [before, after] = [0, 10].map((looks) => coverageOf(WORLDS[0]!, ROOMS, looks, 1).touch)
    expect(after!.error).toBeLessThan(0.6 * before!.error)
    expect(after!.width).toBeLessThan(FULL ? 3.5 : 4)
    expect(after!.width).toBeLessThan((FULL ? 0.66 : 0.75) * before!.width)
  })

  // One room's waits share its errors: a slice of few rooms tells little, so the promise is held at full count.
  test('waits of 3 to 60 minutes after 24 looks, with physical errors', () => {
    const { middling } = coverageOf(PHYSICAL, FULL ? ROOMS : 24, 24, 1)
    expect(middling.inside).toBeGreaterThan(FULL ? 0.75 : 0.65)
    expect(middling.inside).toBeLessThan(FULL ? 0.88 : 0.95)
  })
})

test.each([0.5, 1, 2])('found NOT YET dry at %s of the likely wait, a band holds what comes then', (part) => {
  const of = afterNotYet(WORLDS[0]!, FULL ? ROOMS : 6 * ROOMS, part, 1)
  if (FULL) console.log(`NOT YET at ${part} of the likely wait: ${told(of)}`)
  expect(of.inside).toBeGreaterThan(0.7)
  expect(of.inside).toBeLessThan(FULL ? 0.88 : 0.92)
})

test('a pot on the scale: touch bands hold, and the likely wait is off by as little as one reading can make it', () => {
  const { unweighed, weighed, best } = weighedOf(WORLDS[0]!, WEIGHINGS, 5)
  if (FULL) console.log(`unweighed: ${told(unweighed)}; weighed: ${told(weighed)}; best: ${told(best)}`)
  expect(weighed.inside).toBeGreaterThan(FULL ? 0.75 : 0.7)
  expect(weighed.inside).toBeLessThan(FULL ? 0.88 : 0.95)
  expect(weighed.error).toBeLessThan(1.03 * best.error)
  // What a scale can't tell, from coat to coat and of time, is most of what is left, whatever is made of its reading.
  expect(weighed.error).toBeLessThan(0.8 * unweighed.error)
})
