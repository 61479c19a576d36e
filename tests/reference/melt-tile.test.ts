/**
 * Tiles read back and pools against closed forms: Huppert's band law (Nature 300, 427, 1982) inverted, volumes of
 * solids, and two rules of the trade that every prediction must meet (common practice, no source).
 */
import { describe, expect, test } from 'vitest'
import type { OutlinePoint } from '../../src/engine/contract.ts'
import { doseOfStripe, doseOfTile, runOfStripe } from '../../src/engine/melt/flow-tile.ts'
import { footRoom } from '../../src/engine/melt/melt.ts'
import { coat, straightPot, wellPool } from '../fixtures/melt.ts'

describe('a tile read back (band law above, inverted)', () => {
  // Melt 0.3 and 0.5 mm are dry 0.6 and 1.0; the second is past the catch-up, 3 (400 * 200/4)^(1/3) - 40.
  test.each([
    [0.6, 60, 9, 100],
    [1, 40, 41.4325, 200],
    [1, 30, 15, 60],
  ])('dry %d mm, band %d mm, run %d mm: dose %d', (dryMm, bandMm, runMm, dose) => {
    expect(doseOfStripe({ dryMm, bandMm, runMm })).toBeCloseTo(dose, 2)
    expect(runOfStripe(dose, dryMm, bandMm)).toBeCloseTo(runMm, 2)
  })

  test('three stripes under the square law give the one dose: sum R h^2 / sum h^4', () => {
    const stripes = [0.4, 0.8, 1.2].map((dryMm) => ({ dryMm, bandMm: 80, runMm: 20 * (dryMm / 2) ** 2 }))
    expect(doseOfTile(stripes)).toBeCloseTo(20, 9)
  })

  test('the solver on a pot runs what the tile ran', () => {
    const run = footRoom({
      profile: straightPot(90, 1e4, 30),
      coats: [coat('a', 30, 90, 0.8, doseOfStripe({ dryMm: 0.8, bandMm: 60, runMm: 6 }))],
      footLineMm: 30,
      marginFactor: 2,
      provedPairs: [],
    }).runMm
    expect(run).toBeCloseTo(6, 1)
  })
})

describe('a pool in the well (volumes of solids)', () => {
  test('on a flat round floor: volume over area', () => {
    const pool = wellPool(straightPot(80, 40, 8), [coat('a', 0, 80, 1, 50, { face: 'inside' })], 1)
    expect(pool.poolMl).toBeGreaterThan(2)
    expect(pool.depthMm).toBeCloseTo((pool.poolMl * 1000) / (Math.PI * 35 ** 2), 9)
  })

  test('in a round bowl: a spherical cap, V = pi d^2 (3 R - d)/3', () => {
    const radius = 60
    const round = (r: number): OutlinePoint[] =>
      Array.from({ length: 600 }, (_, i) => {
        const angle = (i / 599) * (Math.PI / 2)
        return { rMm: r * Math.sin(angle), zMm: radius + 5 - r * Math.cos(angle) }
      })
    const { shape } = straightPot(65, 65, 8)
    const profile = { shape, outer: round(65), inner: round(radius) }
    const { poolMl, depthMm } = wellPool(profile, [coat('a', 0, 70, 1.2, 60, { face: 'inside' })], 1)
    const cap = (Math.PI * depthMm ** 2 * (3 * radius - depthMm)) / 3 / 1000
    expect(depthMm).toBeGreaterThan(2)
    expect(Math.abs(cap / poolMl - 1)).toBeLessThan(0.005)
  })
})

describe('trade practice (common practice, no source)', () => {
  const mug = straightPot(90, 40, 6)
  const room = (coats: number, dose: number) =>
    footRoom({
      profile: mug,
      coats: Array.from({ length: coats }, (_, i) => coat('a', 6, 90, 0.5, dose, { dipId: `${i}` })),
      footLineMm: 6,
      marginFactor: 2,
      provedPairs: [],
    }).verdict

  // Melt of 10^3.4 and 10^2.8 Pa s at cone 6: 16.9 and 67.2 per mm.
  test('one ordinary coat of a medium glaze holds above a 6 mm bare foot', () => {
    expect(room(1, 16.9)).not.toBe('over')
  })
  test('three coats of a runny glaze run', () => {
    expect(room(3, 67.2)).toBe('over')
  })
})
