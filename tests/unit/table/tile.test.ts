import { describe, expect, test } from 'vitest'
import type { FiringFacts, StripeFacts, TileFacts } from '../../../shared/nouns.ts'
import { rideAlong } from '../../../src/table/advice/ticket.ts'
import { pairsProved } from '../../../src/table/fired/pairs.ts'
import { USUAL_FIRING } from '../../../src/table/firing/firing.ts'
import { flowOf, meltCoats, runAt } from '../../../src/table/firing/glaze-flow.ts'
import { tilesOf } from '../../../src/table/firing/tiles.ts'
import type { Action } from '../../../src/table/model/action.ts'
import { Play } from './play.ts'

const GATEPOST = 'demo.gatepost'
const BRACKWATER = 'demo.brackwater'
const HEATHER = 'demo.heather'

/** The demo with its glazes and pots, and no tile. */
function bare(): Play {
  const play = new Play().act({ do: 'lay-demo' })
  for (const tileId of Object.keys(play.table.tiles)) play.act({ do: 'remove-tile', tileId })
  return play
}

const stripe = (dryMm: number, runMm: number, longestMm?: number): StripeFacts => ({
  dryMm,
  bandMm: 60,
  runMm,
  ...(longestMm === undefined ? {} : { longestMm }),
})
const tile = (bucketId: string, stripes: readonly StripeFacts[], more: Partial<TileFacts> = {}): Action => ({
  do: 'read-tile',
  tile: { bucketId, firing: USUAL_FIRING, stripes, ...more },
})

describe('a flow tile', () => {
  test('gives the dose by which it ran, and is forgotten when it is removed', () => {
    const play = bare().act(tile(GATEPOST, [stripe(1, 5)]))
    const dose = flowOf(play.table, GATEPOST, null)
    expect(dose?.likelyPerMm).toBeCloseTo(20, 9)
    expect(runAt(dose!.likelyPerMm, 1)).toBeCloseTo(5, 9)
    expect(dose?.highPerMm).toBeGreaterThan(20)
    const [one] = tilesOf(play.table, GATEPOST, undefined)
    play.act({ do: 'remove-tile', tileId: one!.tileId })
    expect(flowOf(play.table, GATEPOST, null)).toBeNull()
    play.act({ do: 'take-back' })
    expect(flowOf(play.table, GATEPOST, null)?.likelyPerMm).toBeCloseTo(20, 9)
  })

  test('a second one that agrees narrows the band', () => {
    const play = bare().act(tile(GATEPOST, [stripe(1, 5)]))
    const before = flowOf(play.table, GATEPOST, null)!
    const after = flowOf(play.act(tile(GATEPOST, [stripe(1, 5)])).table, GATEPOST, null)!
    expect(after.tiles).toBe(2)
    expect(after.highPerMm / after.lowPerMm).toBeLessThan(before.highPerMm / before.lowPerMm)
  })

  test('of a pair counts only where the one lies on the other, and proves that order', () => {
    const play = bare().act(tile(BRACKWATER, [stripe(0.8, 10)]))
    play.act(tile(BRACKWATER, [stripe(0.9, 4)], { underId: GATEPOST }))
    expect(flowOf(play.table, BRACKWATER, null)?.likelyPerMm).toBeCloseTo(10 / 0.16, 9)
    expect(flowOf(play.table, BRACKWATER, GATEPOST)?.likelyPerMm).toBeCloseTo(4 / 0.2025, 9)
    expect(flowOf(play.table, BRACKWATER, HEATHER)).toEqual(flowOf(play.table, BRACKWATER, null))
    expect(pairsProved(play.table)).toContainEqual({ under: GATEPOST, over: BRACKWATER })
    expect(pairsProved(play.table)).not.toContainEqual({ under: BRACKWATER, over: GATEPOST })
  })

  test('a tile of a pair says nothing of the glaze by itself', () => {
    const play = bare().act(tile(BRACKWATER, [stripe(0.9, 4)], { underId: GATEPOST }))
    expect(flowOf(play.table, BRACKWATER, null)).toBeNull()
  })

  test('sets the margin by its longest drip', () => {
    const zone = {
      name: 'body',
      face: 'outside',
      fromMm: 6,
      toMm: 60,
      coats: [{ dipId: 'd', glazeId: GATEPOST, likelyMm: 0.5, lowerMm: 0.4, upperMm: 0.6 }],
      likelyMm: 0.5,
      lowerMm: 0.4,
      upperMm: 0.6,
      filled: 0.3,
    } as const
    const margin = (...drips: StripeFacts[]) =>
      meltCoats(bare().act(tile(GATEPOST, drips)).table, [zone]).marginFactor
    expect(margin(stripe(1, 5))).toBe(2)
    expect(margin(stripe(1, 5, 15))).toBe(3)
    expect(margin(stripe(1, 5, 5))).toBe(1.5)
    expect(meltCoats(bare().table, [zone]).marginFactor).toBe(2)
  })

  test.each<[string, StripeFacts[], Partial<TileFacts>, string]>([
    ['no coat', [stripe(0, 5)], {}, 'dryMm'],
    ['a coat as thick as a wall', [stripe(4, 5)], {}, 'dryMm'],
    ['a run off the tile', [stripe(1, 301)], {}, 'runMm'],
    ['a run upwards', [stripe(1, -1)], {}, 'runMm'],
    ['a drip shorter than the run', [stripe(1, 8, 7)], {}, 'longestMm'],
    ['a band of no height', [{ ...stripe(1, 5), bandMm: 2 }], {}, 'bandMm'],
    ['nothing measured', [], {}, 'stripes'],
    ['four stripes', [1, 2, 3, 4].map(() => stripe(1, 5)), {}, 'stripes'],
    ['a cone that is none', [stripe(1, 5)], { firing: { ...USUAL_FIRING, cone: '66' } }, 'cone'],
    ['a cone of the other make', [stripe(1, 5)], { firing: { ...USUAL_FIRING, cone: '6a' } }, 'cone'],
    ['a rise no kiln has', [stripe(1, 5)], { firing: { ...USUAL_FIRING, riseCPerH: 2000 } }, 'riseCPerH'],
    ['a hold of days', [stripe(1, 5)], { firing: { ...USUAL_FIRING, holdMin: 5000 } }, 'fireHoldMin'],
  ])('with %s is refused and not stored', (_what, stripes, more, field) => {
    const play = bare()
    expect(play.try(tile(GATEPOST, stripes, more))?.field).toBe(field)
    expect(play.table.tiles).toEqual({})
  })

  test('of a bucket that is not there is refused, and so is removing what is not kept', () => {
    const play = bare()
    expect(play.try(tile('nobody', [stripe(1, 5)]))?.code).toBe('unknown-bucket')
    expect(play.try(tile(GATEPOST, [stripe(1, 5)], { underId: 'nobody' }))?.code).toBe('unknown-bucket')
    expect(play.try({ do: 'remove-tile', tileId: 'nothing' })?.code).toBe('unknown-tile')
  })
})

describe('another firing than the tile’s', () => {
  const at = (planned: Partial<FiringFacts>) => {
    const play = bare().act(tile(GATEPOST, [stripe(1, 5)]))
    play.act({ do: 'plan-firing', firing: { ...USUAL_FIRING, ...planned } })
    return flowOf(play.table, GATEPOST, null)!
  }

  test('hotter, longer or slower: more flow, a wider band, a new tile due', () => {
    const same = at({})
    expect(same.carried).toBe(false)
    for (const planned of [{ cone: '7' }, { holdMin: 20 }]) {
      const other = at(planned)
      expect(other.carried).toBe(true)
      expect(other.likelyPerMm).toBeGreaterThan(same.likelyPerMm)
      expect(other.highPerMm / other.lowPerMm).toBeGreaterThan(same.highPerMm / same.lowPerMm)
    }
  })

  test('cooler: less is likely, but the upper edge comes down least', () => {
    const [same, cooler] = [at({}), at({ cone: '5' })]
    expect(cooler.likelyPerMm).toBeLessThan(same.likelyPerMm)
    expect(cooler.highPerMm / same.highPerMm).toBeGreaterThan(cooler.likelyPerMm / same.likelyPerMm)
  })

  test('the same number of another make is another firing', () => {
    expect(at({ cone: '8', make: 'seger' }).likelyPerMm).toBeGreaterThan(at({ cone: '8' }).likelyPerMm)
  })

  test('a tile fired as planned is taken before any that is carried over', () => {
    const play = bare()
      .act(tile(GATEPOST, [stripe(1, 5)]))
      .act(tile(GATEPOST, [stripe(1, 5)]))
    play.act(tile(GATEPOST, [stripe(1, 9)], { firing: { ...USUAL_FIRING, cone: '7' } }))
    play.act({ do: 'plan-firing', firing: { ...USUAL_FIRING, cone: '7' } })
    expect(flowOf(play.table, GATEPOST, null)).toMatchObject({ tiles: 1, carried: false })
  })

  test('while nobody has said a firing, the latest tile’s holds', () => {
    const play = new Play()
    play.append(
      bare()
        .events.map(({ event }) => event)
        .filter(({ kind }) => kind !== 'firing-planned'),
      'earlier',
    )
    play.act(tile(GATEPOST, [stripe(1, 5)], { firing: { ...USUAL_FIRING, cone: '04' } }))
    expect(flowOf(play.table, GATEPOST, null)).toMatchObject({ carried: false, tiles: 1 })
  })
})

describe('the tile that rides along', () => {
  test('on the demo it is the one pair without a tile', () => {
    const { table } = new Play().act({ do: 'lay-demo' })
    expect(rideAlong(table)).toMatchObject({ under: BRACKWATER, over: HEATHER, pots: 5, dips: [1, 2, 3] })
  })

  test('of several it is that which is likeliest to free pots from their slabs, and nothing is left once all are tried', () => {
    const play = new Play().act({ do: 'lay-demo' })
    for (const { tileId } of tilesOf(play.table, HEATHER, undefined)) play.act({ do: 'remove-tile', tileId })
    for (const { tileId } of tilesOf(play.table, HEATHER, GATEPOST)) play.act({ do: 'remove-tile', tileId })
    play.act({
      do: 'set-pair',
      pair: { overId: HEATHER, underId: GATEPOST, proved: 0, wrong: 0 },
    })
    // Over the runny Brackwater most would stay on their slabs whatever a tile shows.
    expect(rideAlong(play.table)).toMatchObject({ under: GATEPOST, over: HEATHER, pots: 3, decides: 3 })
    play.act(tile(HEATHER, [stripe(1, 1)], { underId: GATEPOST }))
    expect(rideAlong(play.table)).toMatchObject({ under: BRACKWATER, over: HEATHER, pots: 5 })
    play.act(tile(HEATHER, [stripe(1, 1)], { underId: BRACKWATER }))
    expect(rideAlong(play.table)).toBeNull()
  })
})
