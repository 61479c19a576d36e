/**
 * Fine scans of what is entered: where nothing real changes, no figure jumps. A jump is what a step adds beyond the mean
 * of its neighbours, for a wait may climb steeply where a wall fills.
 */
import { describe, expect, test } from 'vitest'
import { bisqueOf, forecastPot, type PotForecast, UNLEARNED } from '../../src/engine/index.ts'
import { air, beaker, dip, potOf } from '../fixtures/wall.ts'

const FULL = process.env.PROVE === '1'
/** Steps of a whole scan, and how many of them from its middle are looked at. */
const STEPS = 400
const LOOKED = FULL ? STEPS : 24
/** Part of a wait that counts as a jump. */
const MOST = 0.05

interface Knobs {
  readonly absorption: number
  readonly wallMm: number
  readonly holdS: number
  readonly rh: number
}
const USUAL: Knobs = { absorption: 0.12, wallMm: 5.5, holdS: 3, rh: 0.5 }
const SCANS: readonly (readonly [keyof Knobs, number, number])[] = [
  ['absorption', 0.08, 0.16],
  ['wallMm', 4, 7],
  ['holdS', 1, 5],
  ['rh', 0.25, 0.75],
]

function forecastOf({ absorption, wallMm, holdS, rh }: Knobs, dipsAtMin: readonly number[]): PotForecast {
  const pot = potOf(beaker(wallMm, { heightMm: 95, rimMm: 80, footLineMm: 6 }), bisqueOf(absorption))
  const events = dipsAtMin.map((atMin) => dip(`at ${atMin}`, atMin, holdS, { kind: 'full' }, undefined, 120))
  return forecastPot(pot, events, air(20, rh, 0.15), UNLEARNED)
}

function figures(knobs: Knobs, secondMin: number): number[] {
  const { touchDry, thirsty, kilnDry } = forecastOf(knobs, [0, secondMin])
  return [touchDry, thirsty, kilnDry].flatMap(({ lower, likely, upper }) =>
    [lower, likely, upper].map((at) => Math.log(at - secondMin)),
  )
}

/** When the second coat is dipped: as soon as the app says so, a little later, when the wall is all but dry. */
const READY_MIN = forecastOf(USUAL, [0]).touchDry.likely
const SECONDS = [
  ['as the first is ready', READY_MIN],
  ['at 20 min', 20],
  ['at 300 min', 300],
] as const
const CASES = SCANS.flatMap(([knob, from, to]) =>
  SECONDS.map(([name, atMin]) => ({ knob, from, to, name, atMin })),
)

describe('no figure of a forecast jumps', () => {
  test.each(CASES)('$knob, second coat $name', ({ knob, from, to, name, atMin }) => {
    const first = (STEPS - LOOKED) / 2
    const scan = Array.from({ length: LOOKED + 1 }, (_, k) =>
      figures({ ...USUAL, [knob]: from + ((to - from) * (first + k)) / STEPS }, atMin),
    )
    let largest = 0
    for (let k = 2; k < scan.length - 1; k++)
      scan[k]!.forEach((now, i) => {
        const [earlier, before, after] = [scan[k - 2]![i]!, scan[k - 1]![i]!, scan[k + 1]![i]!]
        const jump = Math.abs(now - before) - Math.max(Math.abs(before - earlier), Math.abs(after - now))
        if (Number.isFinite(jump)) largest = Math.max(largest, jump)
      })
    if (FULL)
      console.log(`${knob}, second coat ${name}: largest jump ${(100 * Math.expm1(largest)).toFixed(1)} %`)
    expect(Math.expm1(largest)).toBeLessThan(MOST)
  })
})

test('a second coat dipped a breath before the first is ready waits as one a breath after', () => {
  for (const wallMm of [5, 6.5, 8]) {
    const knobs = { ...USUAL, wallMm, holdS: 2 }
    const ready = forecastOf(knobs, [0]).touchDry.likely
    const [before, after] = [ready - 0.05, ready + 0.05].map((atMin) => figures(knobs, atMin))
    before!.forEach((at, k) => {
      expect(Math.abs(after![k]! - at)).toBeLessThan(MOST)
    })
  }
})

test('a coat dipped on a wet one makes neither touch-dry sooner than the wet one alone', () => {
  for (const wallMm of [3, 4, 5, 6.5, 8])
    for (const part of [0.1, 0.4, 0.7, 0.95]) {
      const knobs = { ...USUAL, wallMm, holdS: 2 }
      const alone = forecastOf(knobs, [0]).touchDry.likely
      expect(forecastOf(knobs, [0, part * alone]).touchDry.likely).toBeGreaterThan(alone)
    }
})
