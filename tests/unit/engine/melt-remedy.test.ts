import { describe, expect, test } from 'vitest'
import { type FootRoomInput, footRoom } from '../../../src/engine/melt/melt.ts'
import { lowestEdge, runRemedies } from '../../../src/engine/melt/remedy.ts'
import { coat, full, input } from '../../fixtures/melt.ts'

describe('remedies', () => {
  const base = full('a', 0.4, 4)
  test('a lower edge just high enough, and a share just thin enough, each clears and no more', () => {
    const runny = full('b', 0.6, 20)
    const found = runRemedies(input([runny]), 'b')
    expect(found.without).toBe('clear')
    const cleared = (coats: FootRoomInput['coats']) => footRoom(input(coats)).verdict === 'clear'
    const { edgeUpMm: edge, thicknessShare, thickestMm } = found.clear!
    expect(cleared([{ ...runny, fromMm: edge! }])).toBe(true)
    expect(cleared([{ ...runny, fromMm: edge! - 0.5 }])).toBe(false)
    const thin = (share: number) => [{ ...runny, likelyMm: 0.6 * share, upperMm: 0.6 * share }]
    expect(cleared(thin(thicknessShare!))).toBe(true)
    expect(cleared(thin(thicknessShare! + 1 / 64))).toBe(false)
    expect(thickestMm).toBeCloseTo(0.6 * thicknessShare!, 12)
    expect(found.slabMl).toBeLessThan(1e-9)
  })
  test('where the coat below is near by itself, the upper one is kept off the shelf and no more', () => {
    const base = full('a', 0.9, 8)
    const upper = full('b', 0.6, 30)
    expect(footRoom(input([base, upper])).verdict).toBe('over')
    const { clear, near, without } = runRemedies(input([base, upper]), 'b')
    expect([clear, without]).toEqual([null, 'near'])
    const at = (fromMm: number) => footRoom(input([base, { ...upper, fromMm }])).verdict
    expect([at(near!.edgeUpMm!), at(near!.edgeUpMm! - 0.5)]).toEqual(['near', 'over'])
  })
  test('to be kept off the shelf asks no more than to be clear of it', () => {
    const { clear, near } = runRemedies(input([full('b', 1, 30)]), 'b')
    expect(near!.edgeUpMm).toBeLessThan(clear!.edgeUpMm!)
    expect(near!.thicknessShare).toBeGreaterThan(clear!.thicknessShare!)
  })
  test('a dip that leaves near what was near has nothing to mend', () => {
    const found = runRemedies(input([full('a', 0.9, 8), coat('b', 70, 90, 0.3, 8)]), 'b')
    expect(found).toMatchObject({ clear: null, near: null, without: 'near' })
  })
  test('an untried pair is no bar to a remedy', () => {
    const coats = [base, full('b', 0.5, 30)]
    const found = runRemedies(input(coats, { provedPairs: [] }), 'b')
    expect(found.clear!.edgeUpMm).toBeGreaterThan(6)
    expect(found.slabMl).toBeGreaterThan(0)
  })
  test('nothing to mend: no remedy, no slab', () => {
    expect(runRemedies(input([base]), 'a')).toEqual({
      clear: null,
      near: null,
      without: 'clear',
      slabMl: null,
      testFirst: [],
    })
  })
  test('where the coat is not to blame only the slab is left', () => {
    const found = runRemedies(input([full('b', 1.5, 60), coat('c', 70, 90, 0.3, 4)]), 'c')
    expect(found).toMatchObject({ clear: null, near: null, without: 'over' })
    expect(found.slabMl).toBeGreaterThan(1)
  })
  test('an untested glaze asks for its tile first', () => {
    const found = runRemedies(input([base, full('z', 0.3, null)]), 'a')
    expect(found).toMatchObject({ testFirst: ['z'], clear: null, near: null })
  })
  test('the lowest edge alone is that of the remedies', () => {
    const over = input([full('b', 1, 30)])
    expect(lowestEdge(over, 'b')).toEqual({
      edgeUpMm: runRemedies(over, 'b').near!.edgeUpMm,
      reaches: 'near',
    })
    const near = input([full('b', 0.6, 20)])
    expect(lowestEdge(near, 'b')).toEqual({
      edgeUpMm: runRemedies(near, 'b').clear!.edgeUpMm,
      reaches: 'clear',
    })
    expect(lowestEdge(input([base]), 'a')).toBeNull()
    expect(lowestEdge(input([full('b', 1.5, 60), coat('c', 70, 90, 0.3, 4)]), 'c')).toBeNull()
  })
  test('a dip that is not outside is refused', () => {
    expect(() => runRemedies(input([base]), 'x')).toThrow(/dipId is x/)
  })
})
