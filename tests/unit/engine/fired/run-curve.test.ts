/** One result, one number: the run of a pot against k times its doses, and what was seen as a statement about k. */
import { describe, expect, test } from 'vitest'
import {
  type FiredPot,
  lnKAt,
  lnKOf,
  lnToShelf,
  type RunCurve,
  runAt,
  runCurve,
  sharesOf,
  taughtBy,
} from '../../../../src/engine/fired/run-curve.ts'
import { subjectsOn } from '../../../../src/engine/fired/subjects.ts'
import type { CoatOnWall } from '../../../../src/engine/melt/coats.ts'
import { footRoom } from '../../../../src/engine/melt/melt.ts'
import { coat, full, input, mug } from '../../../fixtures/melt.ts'
import { near } from '../../../reference/near.ts'

const pot = (...coats: CoatOnWall[]): FiredPot => ({ profile: mug, coats })
const curveOf = (...coats: CoatOnWall[]): RunCurve => runCurve(pot(...coats))!
/** Dry 0.5 is melt 0.25: 48 /mm run 3 mm of the 6 that are bare. */
const LONE = full('a', 0.5, 48)
/** A stiff base and a runny collar over it that ends 4 mm above the base's edge. */
const STEEP = [full('a', 0.9, 3), coat('b', 10, 90, 0.6, 20)] as const

describe('the curve', () => {
  test('of a lone coat is its dose times thickness squared, and the bare wall its room', () => {
    const curve = curveOf(LONE)
    near(curve.roomMm, 6, { by: 1e-9 })
    for (const k of [0.5, 1, 1.5]) near(runAt(curve, Math.log(k)), 3 * k, { part: 0.06 })
    near(Math.exp(lnKAt(curve, 3)), 1, { part: 0.06 })
  })

  test('at k = 1 is the run that foot room tells', () => {
    for (const coats of [[LONE], STEEP]) {
      const { runMm } = footRoom(input([...coats]))
      near(runAt(curveOf(...coats), 0), Math.min(6, runMm), { by: 0.25 })
    }
  })

  test('rises, there and back', () => {
    const curve = curveOf(...STEEP)
    expect(curve.runMm).toEqual(curve.runMm.toSorted((a, b) => a - b))
    for (const mm of [1, 2.5, 4, 5.5]) near(runAt(curve, lnKAt(curve, mm)), mm, { part: 1e-6 })
  })

  test('is steep where an upper coat catches the edge of the one below', () => {
    const reach = (curve: RunCurve) => lnKAt(curve, curve.roomMm) - lnKAt(curve, 1)
    expect(reach(curveOf(...STEEP))).toBeLessThan(0.6 * reach(curveOf(LONE)))
  })

  test('is none without a coat outside, without a dose, or without bare wall', () => {
    expect(runCurve(pot())).toBeNull()
    expect(runCurve(pot({ ...LONE, face: 'inside' }))).toBeNull()
    expect(runCurve(pot(LONE, full('b', 0.5, null)))).toBeNull()
    expect(runCurve(pot(coat('a', 0, 90, 0.5, 48)))).toBeNull()
  })
})

describe('what was seen', () => {
  const curve = curveOf(LONE)
  const first = lnKAt(curve, 1)
  const shelf = lnKAt(curve, 6)

  test('is below the first millimetre, above the room, or between', () => {
    expect(lnKOf(curve, { kind: 'none' })).toEqual({
      kind: 'range',
      low: Number.NEGATIVE_INFINITY,
      high: first,
    })
    expect(lnKOf(curve, { kind: 'shelf' })).toEqual({
      kind: 'range',
      low: shelf,
      high: Number.POSITIVE_INFINITY,
    })
    expect(lnKOf(curve, { kind: 'some' })).toEqual({ kind: 'range', low: first, high: shelf })
  })

  test('measured is a point, with half a millimetre of reading error in ln k', () => {
    const point = lnKOf(curve, { kind: 'measured', mm: 3 })
    if (point.kind !== 'point') throw new Error('no point')
    near(Math.exp(point.ln), 1, { part: 0.06 })
    near(point.sd, 0.5 / 3, { part: 0.15 })
  })

  test('measured under a millimetre is none, past the room the shelf', () => {
    expect(lnKOf(curve, { kind: 'measured', mm: 0.4 })).toEqual(lnKOf(curve, { kind: 'none' }))
    expect(lnKOf(curve, { kind: 'measured', mm: 30 })).toEqual(lnKOf(curve, { kind: 'shelf' }))
    expect(() => lnKOf(curve, { kind: 'measured', mm: Number.NaN })).toThrow(
      'mm is NaN: must be from 0 to 1000',
    )
  })

  test('of a coat that nothing makes run says nothing when it did not', () => {
    const stiff = lnKOf(curveOf(full('a', 0.1, 0.5)), { kind: 'none' })
    expect(stiff).toEqual({
      kind: 'range',
      low: Number.NEGATIVE_INFINITY,
      high: Number.POSITIVE_INFINITY,
    })
  })
})

describe('whose run it was', () => {
  test('a glaze by itself has all of it', () => {
    const [share] = sharesOf(pot(LONE), curveOf(LONE), { kind: 'none' })
    expect(share).toEqual({ subject: { under: null, over: 'a' }, share: 1 })
  })

  test('the pair has it where its melt catches the edge, the base where the pair ends far above', () => {
    const owner = (...coats: CoatOnWall[]) =>
      taughtBy(sharesOf(pot(...coats), curveOf(...coats), { kind: 'shelf' }))
    expect(owner(full('a', 0.3, 3), coat('b', 6, 90, 0.6, 30))).toEqual({ under: 'a', over: 'b' })
    expect(owner(LONE, coat('b', 80, 90, 0.3, 5))).toEqual({ under: null, over: 'a' })
  })

  test('nobody has it where either could have done it, and parts sum to one', () => {
    const coats = [full('a', 0.6, 20), coat('b', 14, 90, 0.5, 20)]
    const shares = sharesOf(pot(...coats), curveOf(...coats), { kind: 'shelf' })
    near(
      shares.reduce((sum, { share }) => sum + share, 0),
      1,
      { by: 1e-9 },
    )
    expect(taughtBy(shares)).toBeNull()
  })

  test('subjects: a glaze on the wall, a glaze on another; a second dip of the same is the same', () => {
    expect(subjectsOn([full('a', 0.3, 3), full('a', 0.3, 3), full('b', 0.3, 3), full('a', 0.3, 3)])).toEqual([
      { under: null, over: 'a' },
      { under: 'a', over: 'b' },
      { under: 'b', over: 'a' },
    ])
  })
})

test('a factor of one glaze that takes a pot to the shelf, the others as told', () => {
  const lone = lnToShelf(pot(LONE), { under: null, over: 'a' })
  near(Math.exp(lone), 2, { part: 0.08 })
  expect(lnToShelf(pot(full('a', 0.1, 0.5)), { under: null, over: 'a' })).toBe(Number.POSITIVE_INFINITY)
})
