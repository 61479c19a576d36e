import { describe, expect, test } from 'vitest'
import type { WallEvent } from '../../../src/engine/contract.ts'
import { type DryingCurve, dryingCurve, wetnessAfter } from '../../../src/engine/wait/drying-curve.ts'
import { stillWet } from '../../../src/engine/wall/drying.ts'
import { courseOf, runPot } from '../../../src/engine/wall/pot.ts'
import { air, beaker, dip, potOf, ROOM } from '../../fixtures/wall.ts'

const THICK = potOf(beaker(8))
const THIN = potOf(beaker(3))
const ONE = [dip('a', 0, 3)]
const curveOf = (pot = THICK, events: readonly WallEvent[] = ONE, goal: 'touch' | 'thirsty' = 'touch') =>
  dryingCurve(pot, events, ROOM, 1, goal)
const partsOf = (curve = curveOf()) =>
  Array.from({ length: 101 }, (_, k) => ({ done: k / 100, ...wetnessAfter(curve, k / 100) }))

describe('what is still wet along a wait', () => {
  test('is what the balance holds, not the time that is left', () => {
    // A thick wall drinks its film at once; what is damp under it takes the rest of the wait.
    const early = wetnessAfter(curveOf(), 0.15)
    expect(early.film).toBe(0)
    expect(early.damp).toBeGreaterThan(0.88)
    // A thin one is full: its film stands for most of the wait, and under a film nothing is dry.
    const half = wetnessAfter(curveOf(THIN, [dip('a', 0, 10)]), 0.5)
    expect(half.film).toBeGreaterThan(0.08)
    expect(half.film).toBeLessThan(0.4)
    expect(half.damp).toBeCloseTo(1, 9)
  })

  test.each([THICK, THIN])('is that of the wall followed to that moment by itself', (pot) => {
    const curve = curveOf(pot)
    /** The wettest face of all stretches, as the pot stands after so many minutes. */
    const stands = (atMin: number) => {
      const run = runPot(courseOf(pot, [...ONE, { kind: 'wipe', atMin, waterMm: 0 }], ROOM), 1)
      const faces = run.pieces.flatMap(({ wall, stretch }) =>
        stretch.base ? [] : [stillWet(wall, 'outside'), stillWet(wall, 'inside')],
      )
      const damp = Math.max(
        ...faces.map(({ touchMm, ofTouchMm }) => (ofTouchMm > 0 ? touchMm / ofTouchMm : 0)),
      )
      return { damp, films: faces.filter(({ filmMm }) => filmMm > 0).length }
    }
    for (const done of [0.2, 0.5, 0.8, 0.95]) {
      const { damp, films } = stands(done * curve.lastsMin)
      const told = wetnessAfter(curve, done)
      expect(told.damp).toBeCloseTo(damp, 1)
      expect(told.film > 0).toBe(films > 0)
    }
  })

  test.each(['touch', 'thirsty'] as const)('falls from all of it to nothing, %s', (goal) => {
    for (const pot of [THICK, THIN]) {
      const parts = partsOf(curveOf(pot, ONE, goal))
      expect(parts[0]?.film).toBe(1)
      expect(parts[0]?.damp).toBeCloseTo(1, 9)
      expect(parts.at(-1)?.film).toBe(0)
      expect(parts.at(-1)?.damp).toBeLessThan(0.01)
      for (const [i, { film, damp }] of parts.entries()) {
        expect(film).toBeLessThanOrEqual(parts[i - 1]?.film ?? 1)
        expect(damp).toBeLessThanOrEqual((parts[i - 1]?.damp ?? 1) + 1e-3)
      }
    }
  })

  test('bends where the air changes', () => {
    const wait = curveOf().lastsMin
    const opened = curveOf(THICK, [...ONE, { kind: 'air', atMin: wait / 2, air: air(20, 0.5, 1) }])
    expect(opened.lastsMin).toBeLessThan(0.9 * wait)
    const falls = (curve: DryingCurve, from: number, to: number) => {
      const damp = (at: number) => wetnessAfter(curve, (at * wait) / curve.lastsMin).damp
      return damp(from) - damp(to)
    }
    expect(falls(opened, 0.55, 0.65)).toBeGreaterThan(1.2 * falls(curveOf(), 0.55, 0.65))
    expect(falls(opened, 0.3, 0.4)).toBeCloseTo(falls(curveOf(), 0.3, 0.4), 2)
  })

  test('stays where air takes nothing', () => {
    const never = dryingCurve(THIN, ONE, air(20, 1, 0), 1, 'touch')
    expect(never.lastsMin).toBe(7 * 24 * 60)
    expect(wetnessAfter(never, 1).damp).toBeGreaterThan(0.5)
  })
})
