import { describe, expect, test } from 'vitest'
import type { Profile, ZoneForecast } from '../../../src/engine/contract.ts'
import { coatsOf, footRoom, pairsOf, untriedPairs } from '../../../src/engine/melt/melt.ts'
import { downToMm, downwards, pathAlong } from '../../../src/engine/melt/path.ts'
import { coat, full, input, mug } from '../../fixtures/melt.ts'

describe('refusals name the field', () => {
  const ok = full('a', 0.5, 10)
  test.each([
    ['coats[0].likelyMm', [{ ...ok, likelyMm: -0.1 }]],
    ['coats[0].likelyMm', [{ ...ok, likelyMm: Number.NaN }]],
    ['coats[0].upperMm', [{ ...ok, upperMm: 0.4 }]],
    ['coats[0].toMm', [{ ...ok, toMm: 5 }]],
    ['coats[1].fromMm', [ok, { ...ok, fromMm: -5 }]],
    ['coats[0].dose.likelyPerMm', [{ ...ok, dose: { likelyPerMm: 0, highPerMm: 1 } }]],
    ['coats[0].dose.highPerMm', [{ ...ok, dose: { likelyPerMm: 5, highPerMm: 4 } }]],
  ])('%s', (field, coats) => {
    expect(() => footRoom(input(coats))).toThrow(RangeError)
    expect(() => footRoom(input(coats))).toThrow(field)
  })
  test.each([
    ['marginFactor', { marginFactor: 0.5 }],
    ['marginFactor', { marginFactor: Number.NaN }],
    ['footLineMm', { footLineMm: -1 }],
  ])('%s out of range', (field, more) => {
    expect(() => footRoom(input([ok], more))).toThrow(field)
  })
  test('an outline that turns down again, or has no length', () => {
    const turned: Profile = { ...mug, outer: [...mug.outer, { rMm: 45, zMm: 80 }] }
    expect(() => downwards(turned, 'outside')).toThrow(/outside outline point 3/)
    expect(() => downwards({ ...mug, inner: [] }, 'inside')).toThrow(/inside outline has 0 points/)
    const point = { rMm: 4, zMm: 4 }
    expect(() => pathAlong([point, point], 0, 0)).toThrow(/wall length/)
  })
})

describe('the way down', () => {
  test('runs from the rim to the shelf and leaves the base out', () => {
    const line = downwards(mug, 'outside')
    expect(line).toEqual([
      { rMm: 40, zMm: 90 },
      { rMm: 40, zMm: 0 },
    ])
    expect(downToMm(line, 6)).toBeCloseTo(84, 9)
    expect(downToMm(line, 95)).toBe(0)
    expect(downToMm(line, -1)).toBeCloseTo(90, 9)
  })
  test('has a face exactly at the edge asked for', () => {
    const path = pathAlong(downwards(mug, 'outside'), 84, 0)
    expect([...path.faceMm]).toContain(84)
    expect(path.faceMm[path.cells]).toBeCloseTo(90, 9)
  })
})

describe('coats of a forecast', () => {
  const zone = (
    name: 'skirt' | 'body',
    fromMm: number,
    toMm: number,
    glazes: readonly string[],
  ): ZoneForecast => ({
    name,
    face: 'outside',
    fromMm,
    toMm,
    coats: glazes.map((glazeId) => ({
      dipId: `dip ${glazeId}`,
      glazeId,
      likelyMm: 0.4,
      lowerMm: 0.3,
      upperMm: 0.5,
    })),
    likelyMm: 0.4 * glazes.length,
    lowerMm: 0.3 * glazes.length,
    upperMm: 0.5 * glazes.length,
    filled: 0.5,
  })
  const zones = [zone('skirt', 6, 26, ['a']), zone('body', 26, 90, ['a', 'b'])]
  test('a tile of the pair itself takes the place of the single glaze', () => {
    const seen: (string | null)[][] = []
    const coats = coatsOf(zones, (glazeId, underId) => {
      seen.push([glazeId, underId])
      return { likelyPerMm: underId ? 20 : 8, highPerMm: 30 }
    })
    expect(seen).toEqual([
      ['a', null],
      ['a', null],
      ['b', 'a'],
    ])
    expect(coats.map((c) => c.dose?.likelyPerMm)).toEqual([8, 8, 20])
  })
  test('one dip over two zones has one edge: the join does not slide', () => {
    const dose = { likelyPerMm: 30, highPerMm: 30 }
    const lone = coatsOf([zone('skirt', 6, 26, ['a']), zone('body', 26, 90, ['a'])], () => dose)
    expect(footRoom(input(lone)).overlapSlideMm).toBe(0)
    expect(footRoom(input(coatsOf(zones, () => dose))).overlapSlideMm).toBeGreaterThan(1)
  })
  test('pairs are found where coats lie straight on one another', () => {
    const coats = [full('a', 0.3, 4), coat('b', 40, 90, 0.3, 4), coat('c', 60, 90, 0.3, 4), full('a', 0.1, 4)]
    expect(pairsOf(coats)).toEqual([
      { under: 'a', over: 'b' },
      { under: 'b', over: 'a' },
      { under: 'b', over: 'c' },
      { under: 'c', over: 'a' },
    ])
    expect(pairsOf([coat('a', 6, 40, 0.3, 4), coat('b', 40, 90, 0.3, 4)])).toEqual([])
    expect(pairsOf([full('a', 0.3, 4), { ...full('b', 0.3, 4), face: 'inside' }])).toEqual([])
    expect(untriedPairs(coats.slice(0, 2), [{ under: 'a', over: 'b' }])).toEqual([])
  })
})
