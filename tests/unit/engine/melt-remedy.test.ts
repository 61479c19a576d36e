import { describe, expect, test } from 'vitest'
import { type FootRoomInput, footRoom } from '../../../src/engine/melt.ts'
import { runRemedies } from '../../../src/engine/melt-remedy.ts'
import { coat, full, input } from '../../fixtures/melt.ts'

describe('remedies', () => {
  const base = full('a', 0.4, 4)
  test('a lower edge just high enough, and a share just thin enough, each clears and no more', () => {
    const runny = full('b', 0.6, 20)
    const found = runRemedies(input([runny]), 'b')
    expect(found.skipClears).toBe(true)
    const cleared = (coats: FootRoomInput['coats']) => footRoom(input(coats)).verdict === 'clear'
    const edge = found.edgeUpMm!
    expect(cleared([{ ...runny, fromMm: edge }])).toBe(true)
    expect(cleared([{ ...runny, fromMm: edge - 0.5 }])).toBe(false)
    const thin = (share: number) => [{ ...runny, likelyMm: 0.6 * share, upperMm: 0.6 * share }]
    expect(cleared(thin(found.thicknessShare!))).toBe(true)
    expect(cleared(thin(found.thicknessShare! + 1 / 64))).toBe(false)
    expect(found.thickestMm).toBeCloseTo(0.6 * found.thicknessShare!, 12)
    expect(found.slabMl).toBeLessThan(1e-9)
  })
  test('an untried pair is no bar to a remedy', () => {
    const coats = [base, full('b', 0.5, 30)]
    const found = runRemedies(input(coats, { provedPairs: [] }), 'b')
    expect(found.edgeUpMm).toBeGreaterThan(6)
    expect(found.slabMl).toBeGreaterThan(0)
  })
  test('nothing to mend: no remedy, no slab', () => {
    expect(runRemedies(input([base]), 'a')).toEqual({
      edgeUpMm: null,
      thicknessShare: null,
      thickestMm: null,
      skipClears: true,
      slabMl: null,
      testFirst: [],
    })
  })
  test('where the coat is not to blame only the slab is left', () => {
    const found = runRemedies(input([full('b', 1.5, 60), coat('c', 70, 90, 0.3, 4)]), 'c')
    expect(found).toMatchObject({ skipClears: false, edgeUpMm: null, thicknessShare: null })
    expect(found.slabMl).toBeGreaterThan(1)
  })
  test('an untested glaze asks for its tile first', () => {
    const found = runRemedies(input([base, full('z', 0.3, null)]), 'a')
    expect(found).toMatchObject({ testFirst: ['z'], edgeUpMm: null, thicknessShare: null })
  })
  test('a dip that is not outside is refused', () => {
    expect(() => runRemedies(input([base]), 'x')).toThrow(/dipId is x/)
  })
})
