/** A proposed load: every pot once, on its shelf, clear of the others. */
import { describe, expect, test } from 'vitest'
import type { LoadPlan, PlacedItem } from '../../../src/engine/kiln/contract.ts'
import { slabRadiusMm } from '../../../src/engine/kiln/items.ts'
import { proposeLoad } from '../../../src/engine/kiln/propose.ts'
import { BOX, HALVES, loadOf, mixedPots, ROUND } from '../../fixtures/loads.ts'

const reach = (one: PlacedItem) => Math.max(one.bellyRadiusMm, one.footRadiusMm)

/** Smallest gap between two items of one level, mm. */
const nearestMm = (plan: LoadPlan) =>
  Math.min(
    ...plan.levels.flatMap(({ items }) =>
      items.flatMap((a, i) =>
        items.slice(i + 1).map((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) - reach(a) - reach(b)),
      ),
    ),
  )

describe.each([ROUND, BOX, HALVES])('in the kiln $id', (kiln) => {
  test.each([1, 20, 40])('%d pots stand once each, six millimetres apart', (count) => {
    const pots = mixedPots(count, 5)
    const plan = proposeLoad(loadOf(kiln, pots))
    const ids = [...plan.levels.flatMap(({ items }) => items), ...plan.leftOut].map(({ id }) => id)
    expect(ids.sort()).toEqual(pots.map(({ id }) => id).sort())
    expect(nearestMm(plan)).toBeGreaterThan(5.95)
    for (const { items, freeMm } of plan.levels)
      for (const item of items) expect(item.heightMm).toBeLessThanOrEqual(freeMm)
  })

  test('each level of a column stands on the posts below', () => {
    const plan = proposeLoad(loadOf(kiln, mixedPots(40, 5)))
    for (const level of plan.levels) {
      const above = plan.levels.find((one) => one.column === level.column && one.storey === level.storey + 1)
      const thick = kiln.shelves[0]!.thickMm
      if (above) expect(above.upMm).toBeCloseTo(level.upMm + level.postMm.reduce((a, b) => a + b, 0) + thick)
      else expect(level.postMm).toEqual([])
    }
  })
})

test('a slab is 15 mm wider than its foot, more where its ledge has to hold more', () => {
  expect(slabRadiusMm(30)).toBe(45)
  expect(slabRadiusMm(30, 1.4)).toBe(45)
  expect(slabRadiusMm(30, 10)).toBeCloseTo(Math.sqrt(900 + 5000 / Math.PI), 9)
})

test('what may not be proposed is left out and says why', () => {
  const [a, b, c] = mixedPots(3, 5)
  const plan = proposeLoad(
    loadOf(ROUND, [
      { ...a!, risk: 'over', onSlab: false },
      { ...b!, notYet: 'foot' },
      { ...c!, notYet: 'wet' },
    ]),
  )
  expect(plan.leftOut.map(({ why }) => why)).toEqual(['noSlab', 'foot', 'wet'])
  expect(plan.levels).toEqual([])
})

test.each([
  ['heightMm', { heightMm: Number.NaN }, '1.heightMm is NaN: must be from 1 to 5000'],
  ['bellyRadiusMm', { bellyRadiusMm: -3 }, '1.bellyRadiusMm is -3: must be from 1 to 1000'],
])('bad %s is refused with its range', (_, wrong, says) => {
  const pots = mixedPots(1, 5).map((pot) => ({ ...pot, ...wrong }))
  expect(() => proposeLoad(loadOf(ROUND, pots))).toThrow(says)
})
