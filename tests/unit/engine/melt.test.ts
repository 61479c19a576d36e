import { describe, expect, test } from 'vitest'
import type { Profile, ZoneForecast } from '../../../src/engine/contract.ts'
import { outlineOf } from '../../../src/engine/geometry.ts'
import { lookAhead, playShares } from '../../../src/engine/lookahead.ts'
import { coatsOf, type FootRoomInput, footRoom, pairsOf, untriedPairs } from '../../../src/engine/melt.ts'
import { findingOfPot, tileTicket } from '../../../src/engine/melt-learn.ts'
import { downToMm, downwards, pathAlong } from '../../../src/engine/melt-path.ts'
import { runRemedies } from '../../../src/engine/melt-remedy.ts'
import {
  carriedDose,
  doseOfStripe,
  doseOfTile,
  doseOfTiles,
  type FlowTile,
  runOfStripe,
} from '../../../src/engine/melt-tile.ts'
import { wellPool } from '../../../src/engine/melt-well.ts'
import { coat, straightPot } from '../../fixtures/melt.ts'

const mug = straightPot(90, 40, 6)
const input = (coats: FootRoomInput['coats'], more: Partial<FootRoomInput> = {}): FootRoomInput => ({
  profile: mug,
  coats,
  footLineMm: 6,
  marginFactor: 2,
  provedPairs: pairsOf(coats),
  ...more,
})
const full = (glazeId: string, mm: number, dose: number | null, edge = 6) => coat(glazeId, edge, 90, mm, dose)

describe('foot room of a straight mug', () => {
  // Volumes on the shelf that a separate second-order program gave for this wall, mL (regression, not a reference).
  test.each([
    [2, 4.2, 3, 0.31],
    [1, 16.9, 3, 0.15],
    [1.5, 16.9, 3, 1.23],
    [1.5, 16.9, 6, 0.66],
    [2, 16.9, 3, 3.49],
    [2, 16.9, 6, 2.74],
    [2, 16.9, 10, 1.73],
    [1, 67.2, 3, 1.74],
    [1, 67.2, 6, 1.36],
    [1, 67.2, 10, 0.86],
    [1.5, 67.2, 3, 6.3],
    [1.5, 67.2, 10, 5],
    [2, 67.2, 6, 11],
  ])('%d mm dry at dose %d over %d mm bare: %d mL on the shelf', (mm, dose, bare, ml) => {
    const room = footRoom(input([coat('a', bare, 90, mm, dose)], { footLineMm: bare }))
    expect(room.verdict).toBe('over')
    expect(Math.abs(room.onShelfMl - ml)).toBeLessThan(0.05 + 0.03 * ml)
  })

  test.each([
    [0.5, 4.2, 'clear'],
    [1, 16.9, 'over'],
    [0.8, 10, 'near'],
    [0.5, 16.9, 'near'],
    [0.5, 2, 'clear'],
  ] as const)('%d mm dry at dose %d with 6 mm bare is %s', (mm, dose, verdict) => {
    expect(footRoom(input([full('a', mm, dose)])).verdict).toBe(verdict)
  })

  test('the run of a lone coat is dose times melt squared, and the margin doubles it', () => {
    const room = footRoom(input([full('a', 0.6, 20)]))
    expect(room.runMm).toBeCloseTo(20 * 0.3 ** 2, 3)
    expect(room.marginRunMm).toBeCloseTo(2 * 20 * 0.3 ** 2, 2)
    expect(room.roomMm).toBeCloseTo(6, 9)
    expect(room.pastFootMl).toBeCloseTo((2 * Math.PI * 40 * 1.8 * 0.3) / 1000, 5)
    expect(room.onShelfMl).toBe(0)
  })

  test('the upper estimate alone can bring it near', () => {
    const wide = { ...full('a', 0.4, 20), upperMm: 0.8, dose: { likelyPerMm: 20, highPerMm: 40 } }
    expect(footRoom(input([full('a', 0.3, 20)])).verdict).toBe('clear')
    expect(footRoom(input([{ ...wide, likelyMm: 0.3 }])).verdict).toBe('near')
  })

  test('no glaze outside: clear with all the wall as room', () => {
    const room = footRoom(input([{ ...full('a', 1, 60), face: 'inside' }]))
    expect(room).toMatchObject({ verdict: 'clear', runMm: 0, marginRunMm: 0, doubts: [], onShelfMl: 0 })
    expect(room.roomMm).toBeCloseTo(90, 9)
  })

  test('glazed to the very shelf is over at any run', () => {
    expect(footRoom(input([coat('a', 0, 90, 0.3, 3)], { footLineMm: 0 })).verdict).toBe('over')
  })

  test('glaze below the foot line is never clear', () => {
    expect(footRoom(input([coat('a', 3, 90, 0.2, 1)])).verdict).toBe('near')
  })

  test('a coat of no thickness is no coat', () => {
    expect(footRoom(input([full('a', 0, 60)])).verdict).toBe('clear')
  })

  test("the tile's own drip factor moves the verdict", () => {
    const coats = [full('a', 0.8, 14)]
    expect(footRoom(input(coats, { marginFactor: 1.5 })).verdict).toBe('near')
    expect(footRoom(input(coats, { marginFactor: 3 })).verdict).toBe('over')
  })

  test('a narrow thick band keeps the margin it has alone when a thin coat is laid below it', () => {
    const band = coat('a', 40, 50, 2, 50)
    const below = coat('b', 8, 40, 0.1, 50)
    const at = (coats: FootRoomInput['coats']) =>
      footRoom(input(coats, { profile: straightPot(50, 40, 8), footLineMm: 8 }))
    expect(at([band]).verdict).toBe('over')
    expect(at([band]).onShelfMl).toBe(0)
    expect(at([band, below]).verdict).toBe('over')
  })

  test('the margin also runs on to what a slab must hold', () => {
    const room = footRoom(input([full('a', 0.9, 26)]))
    expect(room.onShelfMl).toBeLessThan(1e-3)
    expect(room.marginShelfMl).toBeCloseTo((2 * Math.PI * 40 * (2 * 26 * 0.45 ** 2 - 6) * 0.45) / 1000, 2)
  })

  test('a thick collar slides over the base, thins the rim and can reach the shelf alone', () => {
    const base = full('a', 0.5, 67.2)
    const collar = (mm: number) => footRoom(input([base, coat('b', 60, 90, mm, 67.2)]))
    expect(collar(0.5).overlapSlideMm).toBeGreaterThan(20)
    expect(collar(1).overlapSlideMm).toBeGreaterThan(collar(0.5).overlapSlideMm)
    expect(collar(1).rimMeltMm).toBeLessThan(0.16)
    expect(collar(1.5).onShelfMl).toBeCloseTo(0.85, 0)
  })

  test('where two glazes overlap the larger dose holds', () => {
    const fluidBelow = footRoom(input([full('a', 0.4, 60), full('b', 0.4, 2)])).runMm
    const fluidAbove = footRoom(input([full('b', 0.4, 2), full('a', 0.4, 60)])).runMm
    expect(fluidBelow).toBeCloseTo(60 * 0.4 ** 2, 1)
    expect(fluidAbove).toBeCloseTo(fluidBelow, 9)
  })

  test('a fluid coat that stops high does not make the stiff one below it run', () => {
    const room = footRoom(input([full('a', 0.4, 4), coat('b', 70, 90, 0.3, 30)]))
    expect(room.runMm).toBeCloseTo(4 * 0.2 ** 2, 2)
    expect(room.overlapSlideMm).toBeGreaterThan(2)
  })

  test('melt hanging under a belly is reported, none on an upright wall', () => {
    const bottle = outlineOf({
      form: 'bottle',
      heightMm: 180,
      rimMm: 45,
      bellyMm: 120,
      wallMm: 5,
      footLineMm: 8,
    })
    const coats = [coat('a', 8, 180, 0.8, 40)]
    expect(footRoom(input(coats, { profile: bottle, footLineMm: 8 })).hangingMm).toBeGreaterThan(0.3)
    expect(footRoom(input([full('a', 0.8, 40)])).hangingMm).toBe(0)
  })
})

describe('no grounds, no green', () => {
  test('an untested glaze is unknown however thin', () => {
    const room = footRoom(input([full('a', 0.05, null)]))
    expect(room).toMatchObject({ verdict: 'unknown', doubts: ['noTest'], untestedGlazes: ['a'] })
  })
  test('what is known to run over stays over beside an untested glaze', () => {
    const room = footRoom(input([full('a', 1.5, 60), coat('b', 60, 90, 0.3, null)]))
    expect(room.verdict).toBe('over')
    expect(room.doubts).toContain('noTest')
  })
  test('a pair never fired takes the green away, and is named in its order', () => {
    const coats = [full('a', 0.3, 4), full('b', 0.2, 4)]
    expect(footRoom(input(coats)).verdict).toBe('clear')
    const reversed = footRoom(input(coats, { provedPairs: [{ under: 'b', over: 'a' }] }))
    expect(reversed.verdict).toBe('unknown')
    expect(reversed.untried).toEqual([{ under: 'a', over: 'b' }])
  })
  test('a flat is not judged', () => {
    const plate = outlineOf({ form: 'plate', heightMm: 28, rimMm: 240, wallMm: 6, footLineMm: 6 })
    const room = footRoom(input([coat('a', 6, 28, 1.5, 60)], { profile: plate }))
    expect(room).toMatchObject({ verdict: 'unknown', doubts: ['flat'] })
  })
  test('a bowl is', () => {
    const bowl = outlineOf({ form: 'bowl', heightMm: 70, rimMm: 150, wallMm: 5.5, footLineMm: 7 })
    expect(footRoom(input([coat('a', 7, 70, 0.5, 6)], { profile: bowl, footLineMm: 7 })).verdict).toBe(
      'clear',
    )
  })
})

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
    coats: glazes.map((glazeId) => ({ dipId: `dip ${glazeId}`, glazeId, likelyMm: 0.4, upperMm: 0.5 })),
    likelyMm: 0.4 * glazes.length,
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

describe('the well', () => {
  test('gathers more the longer the firing', () => {
    const coats = [coat('a', 0, 90, 0.8, 30, { face: 'inside' })]
    const depths = [0, 0.5, 1, 2].map((share) => wellPool(mug, coats, share).depthMm)
    expect(depths[0]).toBeCloseTo(0.4, 9)
    expect(depths.every((d, i) => i === 0 || d > depths[i - 1]!)).toBe(true)
  })
  test('without glaze inside it is dry', () => {
    expect(wellPool(mug, [full('a', 1, 60)], 1)).toEqual({ poolMl: 0, depthMm: 0, thickestWallMm: 0 })
  })
  test('a share out of range is refused', () => {
    expect(() => wellPool(mug, [], -1)).toThrow(/share is -1/)
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

describe('learning from the kiln', () => {
  test('a pot that ran as predicted has the factor one; farther, more', () => {
    const pot = { profile: straightPot(90, 40, 20), coats: [coat('a', 20, 90, 0.8, 20)] }
    expect(findingOfPot(pot, 20 * 0.16)?.doseFactor).toBeCloseTo(1, 2)
    expect(findingOfPot(pot, 20 * 0.16 * 1.5)?.doseFactor).toBeCloseTo(1.5, 1)
    expect(findingOfPot(pot, 20 * 0.16)?.atLeast).toBe(false)
  })
  test('a pot stuck to the shelf gives a lower bound', () => {
    const pot = { profile: mug, coats: [full('a', 0.8, 20)] }
    const stuck = findingOfPot(pot, 40)
    expect(stuck?.atLeast).toBe(true)
    expect(stuck?.doseFactor).toBeCloseTo(6 / 3.2, 1)
  })
  test('nothing to learn without a dose or a run', () => {
    expect(findingOfPot({ profile: mug, coats: [full('a', 0.8, null)] }, 4)).toBeNull()
    expect(findingOfPot({ profile: mug, coats: [full('a', 0.8, 20)] }, 0)).toBeNull()
    expect(() => findingOfPot({ profile: mug, coats: [] }, -2)).toThrow(/runMm/)
  })
  test('the tile that rides along: untested before untried, the thicker and commoner first', () => {
    const pot = (...coats: FootRoomInput['coats']) => ({ profile: mug, coats })
    const pair = pot(full('a', 0.5, 8), full('b', 0.6, 8))
    const other = pot(full('a', 0.3, 8), coat('c', 60, 90, 0.2, 8))
    expect(tileTicket([pair, other], [])).toMatchObject({ under: 'a', over: 'b', pots: 1, dips: [1, 2, 3] })
    expect(tileTicket([pair, other], [])?.weightMm2).toBeCloseTo(1.21, 9)
    expect(tileTicket([pair, other, other, other, other, other, other], [])?.over).toBe('c')
    expect(tileTicket([pair, pot(full('z', 0.1, null))], [])).toMatchObject({ under: null, over: 'z' })
    expect(tileTicket([pair], [{ under: 'a', over: 'b' }])).toBeNull()
  })
})
