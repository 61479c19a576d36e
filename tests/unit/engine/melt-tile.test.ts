import { describe, expect, test } from 'vitest'
import {
  carriedDose,
  doseOfStripe,
  doseOfTile,
  doseOfTiles,
  type FlowTile,
  runOfStripe,
} from '../../../src/engine/melt/flow-tile.ts'

describe('flow tiles', () => {
  const tile = (...runs: number[]): FlowTile => ({
    cone: '6',
    make: 'american',
    stripes: runs.map((runMm, i) => ({ dryMm: 0.4 * (i + 1), bandMm: 60, runMm })),
  })
  test('a run that cannot be read counts as half a millimetre, not as none', () => {
    expect(doseOfStripe({ dryMm: 0.4, bandMm: 60, runMm: 0 })).toBeCloseTo(0.5 / 0.04, 9)
  })
  test('the branches meet where R is half the band', () => {
    const at = (runMm: number) => doseOfStripe({ dryMm: 1, bandMm: 60, runMm })
    expect(at(30 + 1e-9)).toBeCloseTo(at(30), 6)
    expect(runOfStripe(at(50), 1, 60)).toBeCloseTo(50, 9)
  })
  test('the thick stripe counts most', () => {
    // (3 * 0.04 + 2 * 0.16 + 7.2 * 0.36)/(0.04^2 + 0.16^2 + 0.36^2)
    expect(doseOfTile(tile(3, 2, 7.2).stripes)).toBeCloseTo(19.337, 2)
    expect(doseOfTile(tile(0.8, 3.2, 7.2).stripes)).toBeCloseTo(20, 6)
  })
  test("several tiles: geometric mean inside a band, narrower than one tile's", () => {
    const one = doseOfTiles([tile(0.8, 3.2, 7.2)])
    const two = doseOfTiles([tile(0.8, 3.2, 7.2), tile(1.25, 5, 11.25)])
    expect(one.likelyPerMm).toBeCloseTo(20, 6)
    expect(two.likelyPerMm).toBeCloseTo(20 * Math.sqrt(11.25 / 7.2), 4)
    expect(two.tiles).toBe(2)
    expect(two.highPerMm / two.likelyPerMm).toBeLessThan(one.highPerMm / one.likelyPerMm)
    expect(one.lowPerMm * one.highPerMm).toBeCloseTo(400, 6)
  })
  test('the drip factor is the worst measured, at least 1.5, 2 unmeasured, 5 at most', () => {
    const drip = (longestMm?: number) =>
      doseOfTiles([
        { ...tile(), stripes: [{ dryMm: 0.8, bandMm: 60, runMm: 4, ...(longestMm && { longestMm }) }] },
      ]).dripFactor
    expect(drip()).toBe(2)
    expect(drip(10)).toBe(2.5)
    expect(drip(4.4)).toBe(1.5)
    expect(drip(60)).toBe(5)
  })
  test('another firing scales each edge by its own and asks for a tile', () => {
    const dose = doseOfTiles([tile(0.8, 3.2, 7.2)])
    const hotter = carriedDose(dose, { low: 1.2, likely: 1.3, high: 1.84 })
    expect(hotter.likelyPerMm).toBeCloseTo(26, 6)
    expect(hotter.highPerMm / dose.highPerMm).toBeCloseTo(1.84, 9)
    expect(hotter.lowPerMm / dose.lowPerMm).toBeCloseTo(1.2, 9)
    expect([dose.carried, hotter.carried]).toEqual([false, true])
  })
  test.each([
    ['dryMm', () => doseOfStripe({ dryMm: 0, bandMm: 60, runMm: 4 })],
    ['bandMm', () => doseOfStripe({ dryMm: 0.4, bandMm: 0, runMm: 4 })],
    ['runMm', () => doseOfStripe({ dryMm: 0.4, bandMm: 60, runMm: -1 })],
    ['longestMm', () => doseOfStripe({ dryMm: 0.4, bandMm: 60, runMm: 4, longestMm: 3 })],
    ['stripes.length', () => doseOfTile([])],
    ['stripes.length', () => doseOfTile(tile(1, 2, 3, 4).stripes)],
    ['tiles.length', () => doseOfTiles([])],
    ['tiles[1].cone', () => doseOfTiles([tile(1), { ...tile(1), cone: '5' }])],
    ['tiles[1].cone', () => doseOfTiles([tile(1), { ...tile(1), make: 'seger' }])],
    ['dosePerMm', () => runOfStripe(-1, 0.4, 60)],
    ['scale.high', () => carriedDose(doseOfTiles([tile(1)]), { low: 1, likely: 2, high: 1.5 })],
  ])('%s is refused by name', (field, run) => {
    expect(run).toThrow(RangeError)
    expect(run).toThrow(field)
  })
})
