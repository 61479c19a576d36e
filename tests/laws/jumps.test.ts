/**
 * Fine scans of what is entered: where nothing real changes, no figure jumps. A jump is what a step adds beyond the mean
 * of its neighbours, for a wait may climb steeply where a wall fills.
 */
import { describe, expect, test } from 'vitest'
import { bisqueOf, forecastPot, UNLEARNED } from '../../src/engine/index.ts'
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
  ['holdS', 1, 6],
  ['rh', 0.25, 0.75],
]

function figures({ absorption, wallMm, holdS, rh }: Knobs): number[] {
  const pot = potOf(beaker(wallMm, { heightMm: 95, rimMm: 80, footLineMm: 6 }), bisqueOf(absorption))
  const events = [0, 300].map((atMin) => dip(`at ${atMin}`, atMin, holdS, { kind: 'full' }, undefined, 120))
  const { touchDry, thirsty, kilnDry } = forecastPot(pot, events, air(20, rh, 0.15), UNLEARNED)
  return [touchDry, thirsty, kilnDry].flatMap(({ lower, likely, upper }) =>
    [lower, likely, upper].map((at) => Math.log(at - 300)),
  )
}

describe('no figure of a forecast jumps', () => {
  test.each(SCANS)('%s', (knob, from, to) => {
    const first = (STEPS - LOOKED) / 2
    const scan = Array.from({ length: LOOKED + 1 }, (_, k) =>
      figures({ ...USUAL, [knob]: from + ((to - from) * (first + k)) / STEPS }),
    )
    let largest = 0
    for (let k = 2; k < scan.length - 1; k++)
      scan[k]!.forEach((now, i) => {
        const [earlier, before, after] = [scan[k - 2]![i]!, scan[k - 1]![i]!, scan[k + 1]![i]!]
        const jump = Math.abs(now - before) - Math.max(Math.abs(before - earlier), Math.abs(after - now))
        if (Number.isFinite(jump)) largest = Math.max(largest, jump)
      })
    if (FULL) console.log(`${knob}: largest jump ${(100 * Math.expm1(largest)).toFixed(1)} %`)
    expect(Math.expm1(largest)).toBeLessThan(MOST)
  })
})
