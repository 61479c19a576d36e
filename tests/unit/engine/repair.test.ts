/** After a slip on a thick dry wall: the next coat gives back what the slip took. */

import { describe, expect, test } from 'vitest'
import { type PotHistory, repairRest } from '../../../src/engine/index.ts'
import { tellingZone, zonesAfter } from '../../../src/engine/wait/seconds.ts'
import { dip, potOf, ROOM } from '../../fixtures/wall.ts'

const thick: PotHistory = {
  pot: potOf({ form: 'cylinder', heightMm: 80, rimMm: 120, wallMm: 25, floorMm: 10, footLineMm: 0 }),
  events: [],
  air0: ROOM,
}

/** Seconds at which a growing thickness reaches `goal`, by halving. */
function secondsWith(thickMm: (seconds: number) => number, goal: number): number {
  let [low, high] = [0, 60]
  for (let k = 0; k < 60; k++) {
    const mid = (low + high) / 2
    if (thickMm(mid) < goal) low = mid
    else high = mid
  }
  return high
}

describe('repair', () => {
  // Days between coats: each goes on a wall as dry as the first, but for the old coat's own thirst and resistance.
  test.each([
    [4, 6, 5],
    [5, 7, 6],
  ])('held %d s too long of %d: the next coat gives back what the first took', (overS, planS, nextS) => {
    const DAYS_MIN = 6 * 24 * 60
    const meant = dip('a', 0, planS)
    const slipped = { ...meant, holdS: planS + overS }
    const next = dip('b', DAYS_MIN, nextS)
    const limits = { stackMm: 9, glazeMm: {} }
    const standing = { ...thick, events: [slipped] }
    const { rest } = repairRest(standing, [meant, next], [next], limits)
    const at = (events: PotHistory['events']): number =>
      tellingZone(zonesAfter({ ...thick, events }), 'a')!.likelyMm
    const goal = at([meant, next])
    const own = secondsWith((s) => at([slipped, { ...next, holdS: s }]), goal)
    // Half seconds are tried.
    expect(Math.abs(rest[0]!.holdS! - own)).toBeLessThan(0.3)
    expect(rest[0]!.holdS!).toBeLessThan(nextS)
  })
})
