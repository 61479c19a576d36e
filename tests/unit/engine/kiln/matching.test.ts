/** Which pot is this: by place, stack and size, each pot once. */
import { describe, expect, test } from 'vitest'
import { type FoundPiece, type MatchPot, matching, SHRINKAGE } from '../../../../src/engine/kiln/matching.ts'

const pot = (id: string, heightMm: number, more: Partial<MatchPot> = {}): MatchPot => ({
  id,
  heightMm,
  widthMm: 80,
  stackId: 's',
  place: null,
  ...more,
})
const piece = (id: string, heightMm: number | null, more: Partial<FoundPiece> = {}): FoundPiece => ({
  id,
  heightMm,
  widthMm: null,
  stackId: null,
  place: null,
  ...more,
})
const match = (pots: readonly MatchPot[], pieces: readonly FoundPiece[]) =>
  matching(pots, pieces, 1, SHRINKAGE, 7)
const firstOf = (matched: ReturnType<typeof matching>, id: string) =>
  matched.pieces.find((one) => one.id === id)!.options[0]!

describe('a piece is known', () => {
  test('by its size after shrinking, and not by the size it had', () => {
    const found = match([pot('low', 95), pot('high', 100)], [piece('x', 95), piece('y', 90.2)])
    expect(firstOf(found, 'x').potId).toBe('high')
    expect(firstOf(found, 'y').potId).toBe('low')
    expect(found.pieces.every(({ sure }) => sure)).toBe(true)
  })

  test('by the stack that is seen, where sizes are alike', () => {
    const pots = [pot('a', 100, { stackId: 'red' }), pot('b', 100, { stackId: 'blue' })]
    const found = match(pots, [piece('x', 95, { stackId: 'blue' })])
    expect(firstOf(found, 'x')).toMatchObject({ potId: 'b' })
    expect(found.pieces[0]!.sure).toBe(true)
  })

  test('by its place, and by its level alone', () => {
    const pots = [pot('a', 100, { place: '1.2' }), pot('b', 100, { place: '2.1' })]
    expect(firstOf(match(pots, [piece('x', null, { place: '2.1' })]), 'x').potId).toBe('b')
    expect(firstOf(match(pots, [piece('x', null, { place: '1' })]), 'x').potId).toBe('a')
  })
})

test('no pot is two pieces: what is sure of one leaves the other', () => {
  const pots = [pot('a', 100, { stackId: 'red' }), pot('b', 100, { stackId: 'blue' })]
  const found = match(pots, [piece('x', 95, { stackId: 'red' }), piece('y', 95)])
  expect(firstOf(found, 'y').potId).toBe('b')
  const all = found.pieces.flatMap(({ options }) => options.filter(({ potId }) => potId === 'a'))
  expect(all.reduce((sum, { sureness }) => sum + sureness, 0)).toBeLessThan(1.0001)
})

test('what nothing tells apart stays open, with three drawings at most', () => {
  const pots = ['a', 'b', 'c', 'd', 'e'].map((id) => pot(id, 100))
  const [matched] = match(pots, [piece('x', 95)]).pieces
  expect(matched!.sure).toBe(false)
  expect(matched!.options).toHaveLength(3)
  for (const { sureness } of matched!.options) expect(sureness).toBeLessThan(0.35)
})

test('a load teaches its shrinkage, and the same question has the same answer', () => {
  const sizes = [60, 75, 90, 110, 130, 155, 180, 210]
  const pots = sizes.map((size) => pot(`${size}`, size))
  const pieces = sizes.map((size) => piece(`${size}`, size * 0.92))
  const found = match(pots, pieces)
  expect(found.shrinkage.mean).toBeCloseTo(0.08, 2)
  expect(found.shrinkage.sd).toBeLessThan(SHRINKAGE.sd / 2)
  expect(match(pots, pieces)).toEqual(found)
})

test('bad sizes and more pieces than pots are refused', () => {
  expect(() => match([pot('a', 100)], [piece('x', Number.NaN)])).toThrow(
    'x.heightMm is NaN: must be from 1 to 5000',
  )
  expect(() => match([pot('a', 100)], [piece('x', 95), piece('y', 95)])).toThrow('pieces.length is 2')
  expect(() => matching([], [], -1, SHRINKAGE, 1)).toThrow('stepMm is -1')
})
