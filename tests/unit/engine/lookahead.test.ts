import { describe, expect, test } from 'vitest'
import { footRoom } from '../../../src/engine/melt/melt.ts'
import { lookAhead, playShares } from '../../../src/engine/melt/melt-preview.ts'
import { coat, full, input, mug, wellPool } from '../../fixtures/melt.ts'

describe('the well', () => {
  test('gathers more the longer the firing', () => {
    const coats = [coat('a', 0, 90, 0.8, 30, { face: 'inside' })]
    const depths = [0, 0.5, 1, 2].map((share) => wellPool(mug, coats, share).depthMm)
    expect(depths[0]).toBeCloseTo(0.4, 9)
    expect(depths.every((d, i) => i === 0 || d > depths[i - 1]!)).toBe(true)
  })
  test('without glaze inside it is dry', () => {
    expect(wellPool(mug, [full('a', 1, 60)], 1)).toEqual({ poolMl: 0, depthMm: 0 })
  })
})

describe('look-ahead', () => {
  const coats = [
    full('a', 0.6, 16),
    coat('b', 60, 90, 0.5, 40),
    coat('a', 0, 90, 0.6, 16, { face: 'inside', dipId: 'in' }),
  ]
  test('shares pass through the planned firing', () => {
    expect(playShares(3, 1.5)).toEqual([0, 1, 1.5])
    const play = playShares(25, 1.5)
    expect(play).toHaveLength(25)
    expect(play).toContain(1)
    expect(play.at(-1)).toBeCloseTo(1.5, 12)
    expect(() => playShares(2, 1.5)).toThrow(/frames/)
    expect(() => playShares(12, 0.5)).toThrow(/overShare/)
  })
  test('the melt goes down frame by frame and ends as the foot room says', () => {
    const { frames, outside, inside } = lookAhead({ profile: mug, coats, shares: playShares(13, 1.84) })
    const fronts = frames.map((f) => f.frontUpMm ?? Number.NaN)
    expect(fronts[0]).toBeCloseTo(6, 6)
    expect(fronts.every((z, i) => i === 0 || z <= fronts[i - 1]!)).toBe(true)
    const planned = frames.find((f) => f.share === 1)!
    expect(planned.frontUpMm).toBeCloseTo(6 - footRoom(input(coats)).runMm, 1)
    expect(planned.poolDepthMm).toBeCloseTo(wellPool(mug, coats, 1).depthMm, 2)
    for (const frame of frames) {
      expect(frame.outsideMm).toHaveLength(outside.length)
      expect(frame.insideMm).toHaveLength(inside.length)
    }
  })
  test('an upper coat slides over the one below, and its upper end stays', () => {
    const { frames } = lookAhead({ profile: mug, coats, shares: [0, 1, 2] })
    const upper = frames.map(({ edges }) => edges.find(({ dipId }) => dipId === 'b')!)
    expect(upper[0]).toEqual({ dipId: 'b', glazeId: 'b', fromMm: 60, toMm: 90 })
    expect(upper[1]!.fromMm).toBeCloseTo(60 - footRoom(input(coats)).overlapSlideMm, 1)
    expect(upper[2]!.fromMm).toBeLessThan(upper[1]!.fromMm)
    expect(frames[1]!.edges.map(({ dipId }) => dipId)).toEqual(['a', 'b'])
  })
  test('what has no dose stays where it was put', () => {
    const { frames } = lookAhead({ profile: mug, coats: [full('z', 0.6, null)], shares: [0, 1] })
    expect(frames[1]!.edges).toEqual([{ dipId: 'z', glazeId: 'z', fromMm: 6, toMm: 90 }])
  })
  test('frames are their own: a later one does not change an earlier', () => {
    const [first] = lookAhead({ profile: mug, coats, shares: [0, 1] }).frames
    expect(Math.max(...first!.outsideMm)).toBeCloseTo(0.55, 9)
  })
  test('an untested glaze is named, and a bare outside has no front', () => {
    const bare = lookAhead({
      profile: mug,
      coats: [coat('z', 0, 90, 0.6, null, { face: 'inside' })],
      shares: [0, 1],
    })
    expect(bare.untestedGlazes).toEqual(['z'])
    expect(bare.frames[1]!.frontUpMm).toBeNull()
  })
  test('shares that fall are refused', () => {
    expect(() => lookAhead({ profile: mug, coats, shares: [0, 1, 0.5] })).toThrow(/shares\[2\]/)
    expect(() => lookAhead({ profile: mug, coats, shares: [] })).toThrow(/shares.length/)
  })
})
