import { describe, expect, test } from 'vitest'
import type { Stamped, TableEvent } from '../../../shared/events.ts'
import type { FiringFacts } from '../../../shared/nouns.ts'
import { FINAL_PASSES, proposeLoad } from '../../../src/engine/kiln/propose.ts'
import { KILN_OFFERS, KILN_SIZES } from '../../../src/table/load/kiln-sizes.ts'
import { levelView, onShelf } from '../../../src/table/load/level-view.ts'
import {
  candled,
  clearSince,
  glassTells,
  isCandled,
  isWarm,
  levelsOf,
  lidWarning,
  stageOf,
} from '../../../src/table/load/loads.ts'
import { loadInput } from '../../../src/table/load/proposal.ts'
import { potsForLoad } from '../../../src/table/load/to-load.ts'
import type { Action } from '../../../src/table/model/action.ts'
import type { InKiln } from '../../../src/table/model/load-state.ts'
import { glazed } from '../../fixtures/glazed.ts'
import { tableOf } from '../../fixtures/seen-by.ts'
import { begun, FIRING, lit, loaded, loadOf, planOf, proposed } from './kiln-play.ts'
import { Play, START_MS } from './play.ts'

const stage = (play: Play) => stageOf(play.table, loadOf(play), play.nowMs)
const refusal = (play: Play, action: Action) => play.try(action)

describe('a load is laid out', () => {
  test.each(KILN_OFFERS)('in a kiln of usual size: %s', (offer) => {
    const play = proposed(1, offer)
    const load = loadOf(play)
    const plan = planOf(play)
    const stands = Object.values(load.things).filter(({ what }) => what === 'pot').length
    expect(stands + plan.leftOut.filter(({ id }) => !id.startsWith('~')).length).toBe(8)
    expect(stands).toBeGreaterThan(3)
    for (const level of levelsOf(load)) expect(levelView(play.table, load, level)?.tight).toEqual([])
  })

  test('half shelves: both halves are built about as high', () => {
    const play = begun(3, 'halves')
    const input = loadInput(play.table, loadOf(play), play.nowMs)
    for (const loadId of ['a', 'b']) {
      const { levels, leftOut } = proposeLoad({ ...input, loadId }, FINAL_PASSES)
      const topOf = (half: string) =>
        Math.max(
          0,
          ...levels
            .filter(({ column }) => column === half)
            .flatMap(({ upMm, items }) => items.map(({ heightMm }) => upMm + heightMm)),
        )
      expect(leftOut).toEqual([])
      expect(Math.abs(topOf('left') - topOf('right'))).toBeLessThan(120)
    }
  })

  test('forty pots: each stands once or is left out by name', () => {
    const play = proposed(5, 'wide')
    const plan = planOf(play)
    const stands = Object.keys(loadOf(play).things)
    const all = potsForLoad(play.table, loadOf(play).loadId).map(({ facts }) => facts.potId)
    expect(all).toHaveLength(40)
    expect(
      [...stands, ...plan.leftOut.map(({ id }) => id)].filter((id) => !id.startsWith('~')).sort(),
    ).toEqual(all.sort())
  })

  test('a pot whose foot nobody checked, that is wet, or may run without a slab is left out by name', () => {
    const play = begun()
    const why = () => Object.fromEntries(planOf(play).leftOut.map(({ id, why: code }) => [id, code]))
    play.act({ do: 'set-slab', potId: 'demo.31', slab: false })
    expect(why()['demo.31']).toBe('noSlab')
    play.append([{ kind: 'washed-off', potId: 'demo.34' }], 'w')
    expect(potsForLoad(play.table, loadOf(play).loadId).map(({ facts }) => facts.number)).not.toContain(34)
    const wet = new Play()
    for (const [i, hit] of glazed(START_MS, 1, 1).entries()) wet.append(hit, `g${i}`)
    wet.append(
      glazed(START_MS, 1, 1)
        .flat()
        .filter((event) => event.kind === 'washed-off'),
      'none',
    )
    wet.act({ do: 'set-kiln', kiln: KILN_SIZES.round })
    wet.act({ do: 'begin-load', kilnId: Object.keys(wet.table.kilns ?? {})[0] ?? '', firing: FIRING })
    expect(planOf(wet).leftOut.filter(({ why: code }) => code === 'wet').length).toBeGreaterThan(4)
    wet.act({ do: 'set-candling', loadId: loadOf(wet).loadId, candle: true })
    expect(planOf(wet).leftOut.filter(({ why: code }) => code === 'wet')).toEqual([])
  })
})

describe('hands move what was proposed', () => {
  test('a place is fixed when its shelf is loaded, and nothing there moves any more', () => {
    const play = proposed()
    const { loadId } = loadOf(play)
    const [first] = levelsOf(loadOf(play))
    if (!first) throw new Error('no level')
    const places = levelView(play.table, loadOf(play), first)?.things.flatMap(({ key, place }) =>
      place ? [[key, place]] : [],
    )
    play.act({ do: 'load-shelf', loadId, column: first.column, storey: first.storey })
    const fixed = Object.entries(loadOf(play).things).flatMap(([key, { place }]) =>
      place ? [[key, place]] : [],
    )
    expect(fixed.sort()).toEqual(places?.sort())
    const [key = ''] = fixed[0] ?? []
    const at = { column: first.column, storey: first.storey, xMm: 0, yMm: 0 }
    expect(refusal(play, { do: 'stand', loadId, key, at })).toMatchObject({
      field: 'loaded',
      facts: { number: 1 },
    })
    const before = loadOf(play).things[key]
    // Nothing may be left to propose.
    refusal(play, { do: 'lay-out', loadId, plan: planOf(play) })
    expect(loadOf(play).things[key]).toEqual(before)
  })

  test('shelves are loaded from below, and a pot of a loaded one goes on no other', () => {
    const play = proposed(3)
    const { loadId } = loadOf(play)
    const [lowest, next] = levelsOf(loadOf(play))
    if (!lowest || !next) throw new Error('two levels are wanted')
    const { column, storey, number } = next
    expect(refusal(play, { do: 'load-shelf', loadId, column, storey })).toMatchObject({
      field: 'shelf-below',
      facts: { number },
    })
    expect(levelsOf(loadOf(play)).some(({ loadedAt }) => loadedAt !== undefined)).toBe(false)
    const [key = '', pot] =
      Object.entries(loadOf(play).things).find(
        ([, thing]) => thing.what === 'pot' && thing.storey === lowest.storey,
      ) ?? []
    play.act({ do: 'load-shelf', loadId, column: lowest.column, storey: lowest.storey })
    expect(refusal(play, { do: 'stand', loadId, key, at: { column, storey, xMm: 0, yMm: 0 } })).toMatchObject(
      { field: 'loaded', facts: { number: lowest.number } },
    )
    expect(loadOf(play).things[key]).toMatchObject({ storey: lowest.storey, xMm: pot?.xMm, yMm: pot?.yMm })
  })

  test('a pot put by hand stays where it is when the rest is proposed anew', () => {
    const play = proposed()
    const { loadId } = loadOf(play)
    const spot = loadOf(play).things['demo.38']
    if (!spot) throw new Error('38 is out')
    play.act({ do: 'stand', loadId, key: 'demo.38', at: { ...spot, xMm: 0, yMm: 0 } })
    play.act({ do: 'lay-out', loadId, plan: planOf(play) })
    expect(loadOf(play).things['demo.38']).toMatchObject({ xMm: 0, yMm: 0, pinned: true })
  })

  test('two pots swap, one left out waits for a later firing, and either is taken back', () => {
    const play = proposed()
    const { loadId, things } = loadOf(play)
    play.act({ do: 'swap', loadId, keys: ['demo.31', 'demo.38'] })
    expect(loadOf(play).things['demo.31']).toMatchObject({ storey: things['demo.38']?.storey })
    play.act({ do: 'lift-out', loadId, key: 'demo.31' })
    expect(loadOf(play).things['demo.31']).toBeUndefined()
    expect(play.table.pots['demo.31']?.later).toBe(true)
    play.act({ do: 'take-back' })
    expect(loadOf(play).things['demo.31']).toBeDefined()
    expect(play.table.pots['demo.31']?.later).toBeFalsy()
  })

  test('what two phones put in two places is in both until somebody says', () => {
    const play = loaded()
    const { loadId, things } = loadOf(play)
    const spot = things['demo.31']
    if (!spot) throw new Error('31 is out')
    const named = { loadId, what: 'pot', potId: 'demo.31', column: 'whole', slab: false } as const
    const history = play.events.map((event): Stamped => ({ ...event, writer: 'a.1' }))
    const other: TableEvent = { kind: 'placed', ...named, storey: 2, xMm: 5, yMm: 5 }
    const both = [...history, { id: 'z', hit: 'z', at: play.nowMs, writer: 'b.1', event: other }]
    const table = tableOf(both, 'a')
    expect(table.loads?.[loadId]?.things['demo.31']).toMatchObject({
      place: spot.place,
      orHere: { storey: 2 },
    })
    const settled: TableEvent = { ...other, settled: true }
    const after = tableOf(
      [...both, { id: 'y', hit: 'y', at: play.nowMs, writer: 'a.1', event: settled }],
      'a',
    )
    expect(after.loads?.[loadId]?.things['demo.31']).toMatchObject({ storey: 2, xMm: 5 })
    expect(after.loads?.[loadId]?.things['demo.31']).not.toHaveProperty('orHere')
  })

  test('a foot comes to lie on the shelf, wherever it was put', () => {
    const shelf = { id: 's', kind: 'round', widthMm: 400, depthMm: 400, thickMm: 16, count: 1 } as const
    const at = onShelf(shelf, 'whole', 40, { xMm: 900, yMm: -900 })
    expect(Math.hypot(at.xMm, at.yMm)).toBeCloseTo(155, 5)
    const half = onShelf({ ...shelf, kind: 'halfBox' }, 'left', 40, { xMm: 50, yMm: 0 })
    expect(half.xMm).toBe(-45)
  })

  test('a pot on a slab, a tile and cones are put with all that lies under them on the shelf', () => {
    const play = proposed()
    const before = loadOf(play)
    const [slabbed = ''] = Object.entries(before.things).flatMap(([key, { what, slab }]) =>
      what === 'pot' && slab ? [key] : [],
    )
    for (const key of [slabbed, '~tile', '~cones']) {
      const { column, storey } = before.things[key]!
      play.act({ do: 'stand', loadId: before.loadId, key, at: { column, storey, xMm: 900, yMm: 0 } })
      const load = loadOf(play)
      const level = levelsOf(load).find((one) => one.storey === storey && one.column === column)!
      const { against = [] } = levelView(play.table, load, level) ?? {}
      expect(against.filter(({ kind, one }) => kind === 'edge' && one.key === key)).toEqual([])
    }
  })
})

describe('bad input is named by field, value and range, and nothing of it is kept', () => {
  const small = {
    ...KILN_SIZES.round,
    shelves: [{ ...KILN_SIZES.round.shelves[0]!, widthMm: 600, depthMm: 600 }],
  }
  test('a shelf larger than the chamber, posts fewer than three, no number', () => {
    const play = new Play()
    expect(refusal(play, { do: 'set-kiln', kiln: small })).toMatchObject({
      field: 'shelfMm',
      facts: { value: 600, least: 80, most: 460 },
    })
    const posts = [{ lengthMm: 100, count: 2 }]
    expect(refusal(play, { do: 'set-kiln', kiln: { ...KILN_SIZES.round, posts } })).toMatchObject({
      field: 'postCount',
      facts: { value: 2, least: 3 },
    })
    const chamber = { kind: 'round', diameterMm: Number.NaN, heightMm: 500 } as const
    expect(refusal(play, { do: 'set-kiln', kiln: { ...KILN_SIZES.round, chamber } })?.field).toBe('chamberMm')
    expect(play.table.kilns).toBeUndefined()
  })

  test('a pot on two loads, fired already, or gone', () => {
    const play = lit()
    const first = loadOf(play).loadId
    const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
    play.wait(60).act({ do: 'begin-load', kilnId, firing: FIRING })
    const second = loadOf(play).loadId
    play.append(
      [
        {
          kind: 'shelf-set',
          loadId: second,
          column: 'whole',
          storey: 1,
          number: 1,
          shelfId: 's1',
          postMm: [],
          posts: [],
        },
      ],
      'level',
    )
    const put = (key: string) =>
      refusal(play, { do: 'stand', loadId: second, key, at: { column: 'whole', storey: 1, xMm: 0, yMm: 0 } })
    expect(put('demo.31')).toMatchObject({ field: 'on-other-load', facts: { number: 31 } })
    play
      .act({ do: 'switch-off', loadId: first, sure: true })
      .wait(60)
      .act({ do: 'open-lid', loadId: first, tempC: 50 })
    expect(put('demo.31')).toMatchObject({ field: 'already-fired' })
    expect(put('nobody')?.code).toBe('unknown-pot')
    expect(refusal(play, { do: 'open-lid', loadId: first })?.field).toBe('open-already')
  })

  test('a pot taller than the chamber', () => {
    const play = begun(1, 'small')
    const { loadId } = loadOf(play)
    const facts = play.table.pots['demo.35']?.facts
    if (!facts) throw new Error('no 35')
    play.append([{ kind: 'pot-set', pot: { ...facts, shape: { ...facts.shape, heightMm: 400 } } }], 'tall')
    play.act({ do: 'lay-out', loadId, plan: planOf(play) })
    expect(
      refusal(play, {
        do: 'stand',
        loadId,
        key: 'demo.35',
        at: { column: 'whole', storey: 1, xMm: 0, yMm: 0 },
      }),
    ).toMatchObject({ field: 'too-tall', facts: { number: 35, value: 400, most: 324 } })
  })

  test('a pot wider at its foot than the shelf, one that nobody shelves, one twice', () => {
    const play = new Play()
    for (const [i, hit] of glazed(START_MS).entries()) play.append(hit, `g${i}`)
    const small = { ...KILN_SIZES.round.shelves[0]!, widthMm: 80, depthMm: 80 }
    play.act({ do: 'set-kiln', kiln: { ...KILN_SIZES.round, shelves: [small] } })
    const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
    play.act({ do: 'begin-load', kilnId, firing: FIRING })
    const { loadId } = loadOf(play)
    const facts = play.table.pots['demo.35']?.facts
    if (!facts) throw new Error('no 35')
    play.append([{ kind: 'pot-set', pot: { ...facts, shape: { ...facts.shape, footMm: 95 } } }], 'wide')
    const level = { column: 'whole', storey: 1, number: 1, shelfId: 's1', postMm: [], posts: [] } as const
    play.append([{ kind: 'shelf-set', loadId, ...level }], 'level')
    const at = { column: 'whole', storey: 1, xMm: 0, yMm: 0 } as const
    const put = (key: string, where: InKiln = at) => refusal(play, { do: 'stand', loadId, key, at: where })
    expect(put('demo.35')).toMatchObject({ field: 'too-wide', facts: { number: 35, value: 95, most: 80 } })
    expect(loadOf(play).things).toEqual({})
    expect(put('demo.38', { ...at, storey: 2 })?.field).toBe('no-shelf')
    expect(put('demo.38', { ...at, xMm: Number.NaN })?.field).toBe('no-place')
    expect(put('demo.38')).toBeUndefined()
    expect(put('demo.38', { ...at, xMm: 1 })).toBeUndefined()
    expect(Object.keys(loadOf(play).things)).toEqual(['demo.38'])
  })

  test('a hold of more than ten hours, a cone of the other make, no number', () => {
    const play = begun()
    const [kilnId = ''] = Object.keys(play.table.kilns ?? {})
    const begin = (firing: Partial<FiringFacts>) =>
      refusal(play, { do: 'begin-load', kilnId, firing: { ...FIRING, ...firing } })
    expect(begin({ holdMin: 601 })).toMatchObject({
      field: 'fireHoldMin',
      facts: { value: 601, least: 0, most: 600 },
    })
    expect(begin({ riseCPerH: Number.NaN })?.field).toBe('riseCPerH')
    expect(begin({ cone: '6a' })?.field).toBe('cone')
    expect(Object.keys(play.table.loads ?? {})).toHaveLength(1)
  })

  test('readings back in time, twice a minute, out of range, of the other unit, and a cone of the other make', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const read = (tempC: number, agoMin = 0, sure = false) =>
      refusal(play, { do: 'read-heat', loadId, tempC, agoMin, sure })
    play.wait(600)
    expect(read(60, 30)).toMatchObject({ field: 'agoMin', facts: { value: 30, least: 0, most: 10 } })
    expect(read(60)).toBeUndefined()
    expect(read(61)?.field).toBe('same-minute')
    play.wait(3600)
    expect(read(1500)).toMatchObject({ field: 'readC', facts: { value: 1500, least: -50, most: 1400 } })
    expect(read(-60)?.field).toBe('readC')
    expect(read(Number.NaN)?.field).toBe('readC')
    play.wait(7 * 3600)
    expect(read(1000)).toBeUndefined()
    play.wait(600)
    expect(read(1330)).toMatchObject({ field: 'leap' })
    expect(read(1330, 0, true)).toBeUndefined()
    play.act({ do: 'take-back' }).wait(3600)
    expect(refusal(play, { do: 'see-cone', loadId, cone: '6a', is: 'down' })).toMatchObject({
      code: 'not-a-cone',
      facts: { value: '6a', least: '022', most: '10' },
    })
    play.act({ do: 'switch-off', loadId, sure: true }).wait(6 * 3600)
    expect(read(500)).toBeUndefined()
    play.wait(3600)
    expect(read(842)).toMatchObject({ field: 'fahrenheit', facts: { value: 842, asC: 450 } })
    expect(loadOf(play).readings.map(({ tempC }) => tempC)).toEqual([60, 1000, 500])
  })

  test('degF over the range is asked about in degC, and degC in degF', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const read = (tempC: number, sure = false) => refusal(play, { do: 'read-heat', loadId, tempC, sure })
    play.wait(8 * 3600)
    expect(read(2192)).toMatchObject({ field: 'fahrenheit', facts: { value: 2192, asC: 1200 } })
    expect(read(2192, true)).toMatchObject({ field: 'readC', facts: { value: 2192, most: 1400 } })
    expect(read(1200)).toBeUndefined()
    play.wait(600)
    play.act({ do: 'set-settings', settings: { units: 'us' } })
    // 1205 of a thermometer in degC, typed as degF.
    expect(read((1205 - 32) / 1.8)).toMatchObject({ field: 'fahrenheit', facts: { value: 651.7, asC: 1205 } })
    expect(loadOf(play).readings.map(({ tempC }) => tempC)).toEqual([1200])
  })
})

describe('a lid that is lifted at a number of the other unit is asked about', () => {
  const lifts = (play: Play, tempC: number, sure = false) =>
    refusal(play, { do: 'open-lid', loadId: loadOf(play).loadId, tempC, sure })
  const off = () => {
    const play = lit().wait(10 * 3600)
    return play.act({ do: 'switch-off', loadId: loadOf(play).loadId, sure: true }).wait(14 * 3600)
  }

  test('where nothing was read since the kiln is off', () => {
    const play = off()
    expect(lifts(play, 240)).toMatchObject({ field: 'hot-lid', facts: { value: 240, asC: 115.6 } })
    expect(loadOf(play).openedAt).toBeUndefined()
    expect(lifts(play, 240, true)).toBeUndefined()
    expect(loadOf(play).readings.at(-1)?.tempC).toBe(240)
  })

  test('not where it is hardly off, and was on for hours', () => {
    const play = lit().wait(10 * 3600)
    play.act({ do: 'switch-off', loadId: loadOf(play).loadId, sure: true }).wait(60)
    expect(lifts(play, 212)).toBeUndefined()
  })

  test('where it is more than the last reading, or than any kiln has', () => {
    const play = off()
    play.act({ do: 'read-heat', loadId: loadOf(play).loadId, tempC: 118 }).wait(600)
    expect(lifts(play, 240)).toMatchObject({ field: 'fahrenheit', facts: { value: 240, asC: 115.6 } })
    expect(lifts(play, 400)).toMatchObject({ field: 'leap', facts: { value: 400 } })
    expect(lifts(play, 1500)).toMatchObject({ field: 'readC', facts: { value: 1500, most: 1400 } })
    expect(lifts(play, 117)).toBeUndefined()
  })

  test('not where the readings have the kiln as hot as that', () => {
    const play = off()
    const { loadId } = loadOf(play)
    play.act({ do: 'read-heat', loadId, tempC: 330 }).wait(3600)
    play.act({ do: 'read-heat', loadId, tempC: 290 }).wait(5400)
    expect(lifts(play, 240)).toBeUndefined()
  })
})

describe('the bar follows the load', () => {
  test('from the proposal to where the pots come out', () => {
    const play = begun()
    expect(stage(play).is).toBe('propose')
    const { loadId } = loadOf(play)
    play.act({ do: 'lay-out', loadId, plan: planOf(play) })
    for (let now = stage(play); now.is === 'shelf'; now = stage(play))
      play.act({ do: 'load-shelf', loadId, column: now.level.column, storey: now.level.storey })
    expect(stage(play).is).toBe('lid')
    play.act({ do: 'shut-lid', loadId })
    expect(stage(play).is).toBe('light')
    play.act({ do: 'light', loadId })
    expect(stage(play).is).toBe('fire')
    expect(stageOf(play.table, loadOf(play), play.nowMs, play.nowMs - 1).is).toBe('cone')
    play.wait(8 * 3600).act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(stage(play).is).toBe('off')
    play.act({ do: 'switch-off', loadId, sure: true })
    expect(stage(play).is).toBe('cool')
    play.wait(15 * 3600).act({ do: 'read-heat', loadId, tempC: 119 })
    expect(stage(play).is).toBe('open')
    play.act({ do: 'open-lid', loadId })
    expect(stage(play)).toEqual({ is: 'unload', cold: false })
    play.wait(7200).act({ do: 'read-heat', loadId, tempC: 59 })
    expect(stage(play)).toEqual({ is: 'unload', cold: true })
  })

  test('a reading from before the kiln was off is none of its cooling', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    play.wait(300).act({ do: 'read-heat', loadId, tempC: 25 })
    play.wait(8 * 3600).act({ do: 'switch-off', loadId, sure: true })
    expect(stage(play).is).toBe('cool')
    expect(lidWarning(loadOf(play))).toBe('unread')
    play.act({ do: 'open-lid', loadId })
    expect(stage(play)).toEqual({ is: 'unload', cold: false })
    const warm = () => isWarm(loadOf(play), play.nowMs)
    expect(warm()).toBe(true)
    play.wait(6 * 3600).act({ do: 'read-heat', loadId, tempC: 130, sure: true })
    expect(lidWarning(loadOf(play))).toBe('hot')
    play.wait(6 * 3600).act({ do: 'read-heat', loadId, tempC: 55 })
    expect(lidWarning(loadOf(play))).toBeUndefined()
    // Nobody knows how hot it was as the lid came up: one look is not enough.
    expect(stage(play)).toEqual({ is: 'unload', cold: false })
    play.wait(20 * 60).act({ do: 'read-heat', loadId, tempC: 54 })
    expect(warm()).toBe(false)
    expect(stage(play)).toEqual({ is: 'unload', cold: true })
  })

  test('a kiln that candles stays at it until the glass was clear twice, 20 minutes apart', () => {
    const play = begun()
    const { loadId } = loadOf(play)
    play.act({ do: 'set-candling', loadId, candle: true })
    play.act({ do: 'light', loadId }).wait(60)
    const glass = (fogged: boolean) => play.act({ do: 'hold-glass', loadId, fogged })
    // In a cold kiln nothing steams: a clear glass there tells nothing.
    glass(false).wait(1320)
    glass(false).wait(2220)
    expect(isCandled(loadOf(play))).toBe(false)
    expect(clearSince(loadOf(play))).toBeUndefined()
    glass(false).wait(600)
    glass(false)
    expect(isCandled(loadOf(play))).toBe(false)
    glass(true).wait(1200)
    glass(false).wait(1200)
    expect(stage(play).is).toBe('candle')
    glass(false)
    expect(stage(play).is).toBe('fire')
    // Who sees it fog again candles on; once it has climbed the glass tells nothing.
    const tells = () => glassTells(play.table, loadOf(play), play.nowMs)
    expect(tells()).toBe(true)
    glass(true)
    expect(stage(play).is).toBe('candle')
    play.wait(1200)
    glass(false).wait(1200)
    glass(false).wait(7260)
    expect([stage(play).is, tells()]).toEqual(['fire', false])
    glass(true)
    expect([stage(play).is, tells()]).toEqual(['candle', true])
    play.act({ do: 'read-heat', loadId, tempC: 130 })
    expect([stage(play).is, tells()]).toEqual(['fire', false])
  })

  test('a load is candled or not by itself; one of an older record as the setting has it', () => {
    const play = begun()
    const [{ loadId }, says] = [loadOf(play), () => candled(play.table, loadOf(play))]
    play.act({ do: 'set-settings', settings: { candle: true } })
    expect(says()).toBe(false)
    play.act({ do: 'set-candling', loadId, candle: true })
    play.act({ do: 'set-settings', settings: { candle: false } })
    expect(says()).toBe(true)
    expect(play.try({ do: 'set-candling', loadId, candle: true })).toEqual({ code: 'nothing-to-do' })
    play.act({ do: 'light', loadId })
    expect(play.try({ do: 'set-candling', loadId, candle: false })?.field).toBe('lit-already')
    const kilnId = loadOf(play).kiln.kilnId
    play.append([{ kind: 'load-begun', loadId: 'older', kilnId, firing: FIRING }], 'older')
    expect(says()).toBe(false)
    play.act({ do: 'set-settings', settings: { candle: true } })
    expect(says()).toBe(true)
    play.act({ do: 'begin-load', kilnId, firing: FIRING })
    play.act({ do: 'set-settings', settings: { candle: false } })
    expect(says()).toBe(true)
  })
})
