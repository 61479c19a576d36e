/** What was said of a load by mistake can be put right, however long ago it was said. */
import { describe, expect, test } from 'vitest'
import type { Stamped } from '../../../shared/events.ts'
import { decide } from '../../../src/table/decide/decide.ts'
import { hotInKiln } from '../../../src/table/load/before-fire.ts'
import { conesTaught } from '../../../src/table/load/cones-taught.ts'
import { coneAhead } from '../../../src/table/load/fire.ts'
import { KILN_SIZES } from '../../../src/table/load/kiln-sizes.ts'
import { levelView } from '../../../src/table/load/level-view.ts'
import { levelsOf, stageOf } from '../../../src/table/load/loads.ts'
import { potsLeftOut } from '../../../src/table/load/to-load.ts'
import type { Action } from '../../../src/table/model/action.ts'
import type { Table } from '../../../src/table/model/state.ts'
import { tableOf } from '../../fixtures/seen-by.ts'
import { FIRING, lit, loaded, loadOf, planOf, proposed } from './kiln-play.ts'
import { type Play, setting } from './play.ts'

const HOUR_S = 3600
/** But for which hits there were, and that one was taken back. */
const plain = ({ takenBack: _mark, hits: _hits, ...table }: Table): Partial<Table> => table
const read = (play: Play, tempC: number, sure = false) =>
  play.act({ do: 'read-heat', loadId: loadOf(play).loadId, tempC, sure })
const stage = (play: Play) => stageOf(play.table, loadOf(play), play.nowMs).is

describe('a deed that was none', () => {
  test('the kiln was not off: it goes on to its cone and its true off hour, as if nobody had said so', () => {
    const sitting = (slips: boolean) => {
      const play = lit()
      const { loadId } = loadOf(play)
      const slip = (then: () => unknown) => (slips ? then() : play.hits++)
      read(play.wait(7 * HOUR_S), 1050)
      slip(() => play.act({ do: 'switch-off', loadId, sure: true }))
      slip(() => play.wait(0).act({ do: 'pull-bung', loadId }))
      play.wait(2700)
      if (slips) expect(play.try({ do: 'read-heat', loadId, tempC: 1110 })).toBeDefined()
      else play.hits++
      slip(() => play.act({ do: 'unsay', loadId, kind: 'kiln-off' }))
      read(play, 1110)
      expect(coneAhead(play.table, loadOf(play))).toBeDefined()
      play.wait(HOUR_S).act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
      return play.act({ do: 'switch-off', loadId, agoMin: 5, sure: true })
    }
    const [slipped, right] = [sitting(true), sitting(false)]
    expect(plain(slipped.table)).toEqual(plain(right.table))
    expect(loadOf(slipped).bungAt).toBeUndefined()
  })

  test('what went with it comes back with it, of one phone or of two', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    play.wait(HOUR_S).act({ do: 'switch-off', loadId, sure: true })
    play.wait(60).act({ do: 'pull-bung', loadId })
    const off = plain(play.table)
    play.wait(60).act({ do: 'unsay', loadId, kind: 'kiln-off' })
    expect(loadOf(play).offAt).toBeUndefined()
    expect(play.table.takenBack?.kind).toBe('kiln-off')
    play.act({ do: 'put-back' })
    expect(plain(play.table)).toEqual(off)
    // Another phone has the kiln off as well, an hour later.
    const at = play.nowMs + HOUR_S * 1000
    const event = { kind: 'kiln-off' as const, loadId }
    const both = [...play.events, { id: 'b.1', hit: 'b.1', at, writer: 'b', event }]
    const decided = (of: Table, action: Action, hit: string): readonly Stamped[] => {
      const decision = decide(of, action, { at: at + 1000, hit }, setting)
      if ('refusal' in decision) throw new Error(JSON.stringify(decision.refusal))
      return decision.events.map((one, i) => ({ id: `${hit}.${i}`, hit, at: at + 1000, event: one }))
    }
    const then = [...both, ...decided(tableOf(both, 'a'), { do: 'unsay', loadId, kind: 'kiln-off' }, 'u')]
    expect(tableOf(then, 'a').loads?.[loadId]?.offAt).toBeUndefined()
    const again = [...then, ...decided(tableOf(then, 'a'), { do: 'put-back' }, 'v')]
    expect(plain(tableOf(again, 'a'))).toEqual(plain(tableOf(both, 'a')))
  })

  test('the kiln was not on yet, the lid not shut, a shelf not loaded: back to where it was, and never later', () => {
    const play = proposed()
    const { loadId } = loadOf(play)
    for (const { column, storey } of levelsOf(loadOf(play))) {
      const before = plain(play.table)
      play.act({ do: 'load-shelf', loadId, column, storey })
      play.wait(600).act({ do: 'unsay', loadId, kind: 'shelf-loaded' })
      expect(plain(play.table)).toEqual(before)
      play.act({ do: 'load-shelf', loadId, column, storey })
    }
    play.act({ do: 'shut-lid', loadId })
    expect(play.try({ do: 'unsay', loadId, kind: 'shelf-loaded' })?.field).toBe('not-back')
    const shut = plain(play.table)
    play.act({ do: 'light', loadId }).wait(600).act({ do: 'unsay', loadId, kind: 'kiln-lit' })
    expect(plain(play.table)).toEqual(shut)
    play.act({ do: 'unsay', loadId, kind: 'lid-shut' })
    expect(stage(play)).toBe('lid')
    play.act({ do: 'shut-lid', loadId }).act({ do: 'light', loadId })
    read(play.wait(HOUR_S), 80)
    expect(play.try({ do: 'unsay', loadId, kind: 'kiln-lit' })?.field).toBe('not-back')
  })

  test('the lid was not up, unless a pot was in hand since', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    play.wait(8 * HOUR_S).act({ do: 'switch-off', loadId, sure: true })
    play.wait(20 * HOUR_S).act({ do: 'open-lid', loadId, tempC: 58 })
    play.act({ do: 'unsay', loadId, kind: 'lid-opened' })
    expect(loadOf(play)).toMatchObject({ readings: [] })
    expect(loadOf(play).openedAt).toBeUndefined()
    play.act({ do: 'open-lid', loadId, tempC: 58 })
    play.act({ do: 'match', loadId, potId: 'demo.31', sureness: 1 })
    expect(play.try({ do: 'unsay', loadId, kind: 'lid-opened' })?.field).toBe('not-back')
  })
})

describe('a look that was none', () => {
  test('a cone and a glass were not so: as if nobody had said it, and the kiln was not on either', () => {
    const sitting = (slips: boolean) => {
      const play = lit()
      const { loadId } = loadOf(play)
      const slip = (then: () => unknown) => (slips ? then() : play.hits++)
      const seen = () => loadOf(play).cones.at(-1)?.hit ?? ''
      slip(() => play.act({ do: 'hold-glass', loadId, fogged: true }))
      slip(() => play.act({ do: 'drop-look', loadId, hit: loadOf(play).glass.at(-1)?.hit ?? '' }))
      read(play.wait(7 * HOUR_S), 1050)
      slip(() => play.act({ do: 'see-cone', loadId, cone: '5.5', is: 'down' }))
      play.act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
      slip(() => play.act({ do: 'drop-look', loadId, hit: loadOf(play).cones[0]?.hit ?? '' }))
      expect(loadOf(play).cones.map(({ cone }) => cone)).toEqual(['6'])
      expect(play.try({ do: 'drop-look', loadId, hit: 'nobody' })?.code).toBe('nothing-to-do')
      play.act({ do: 'drop-look', loadId, hit: seen() })
      play.act({ do: 'drop-reading', loadId, readId: loadOf(play).readings[0]?.id ?? '' })
      play.act({ do: 'unsay', loadId, kind: 'kiln-lit' })
      expect(stage(play)).toBe('light')
      return play
    }
    expect(plain(sitting(true).table)).toEqual(plain(sitting(false).table))
  })

  test('an offset that was taken is dropped: the kiln is as it was before it', () => {
    const play = lit()
    const { kilnId } = loadOf(play).kiln
    expect(play.try({ do: 'drop-offset', kilnId })?.code).toBe('nothing-to-do')
    play.act({ do: 'take-offset', kilnId, offsetC: 7.5, of: 1 })
    const before = plain(play.table)
    play.act({ do: 'take-offset', kilnId, offsetC: 99.9, of: 1 })
    play.wait(HOUR_S).act({ do: 'drop-offset', kilnId })
    expect(plain(play.table)).toEqual(before)
    play.act({ do: 'drop-offset', kilnId })
    expect(play.table.offsets ?? {}).toEqual({})
  })
})

describe('what is said late', () => {
  test('a kiln can have been put on and off a day ago, and no longer', () => {
    const play = loaded()
    const { loadId } = loadOf(play)
    play.act({ do: 'shut-lid', loadId }).wait(30 * HOUR_S)
    expect(play.try({ do: 'light', loadId, agoMin: 1441 })).toMatchObject({
      field: 'agoMin',
      facts: { value: 1441, least: 0, most: 1440 },
    })
    play.act({ do: 'light', loadId, agoMin: 1440 }).act({ do: 'switch-off', loadId, agoMin: 840, sure: true })
    expect(loadOf(play)).toMatchObject({
      litAt: play.nowMs - 24 * HOUR_S * 1000,
      offAt: play.nowMs - 14 * HOUR_S * 1000,
    })
  })
})

describe('a kiln that is off', () => {
  test('before readings that rise is asked about; before those that fall it is not', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const off = (agoMin: number) => ({ do: 'switch-off', loadId, agoMin }) as const
    read(play.wait(7 * HOUR_S), 1050)
    read(play.wait(1800), 1080)
    read(play.wait(1800), 1110)
    play.wait(600)
    expect(play.try(off(75))).toMatchObject({ field: 'rose', facts: { value: 1080 } })
    expect(play.try(off(35))).toMatchObject({ field: 'rose', facts: { value: 1110 } })
    expect(play.try(off(5))).toMatchObject({ field: 'unfired', facts: { number: '6', value: 1110 } })
    expect(play.try({ ...off(5), sure: true })).toBeUndefined()
    play.act({ do: 'unsay', loadId, kind: 'kiln-off' })
    expect(play.try({ ...off(75), sure: true })).toBeUndefined()
    play.act({ do: 'unsay', loadId, kind: 'kiln-off' })
    read(play.wait(3000), 960)
    expect(play.try(off(55))).toMatchObject({ field: 'unfired' })
  })

  test('is asked about where neither its cone nor a reading says that it was fired', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    const off = { do: 'switch-off', loadId } as const
    expect(play.wait(600).try(off)).toMatchObject({ field: 'unfired', facts: { number: '6', onMin: 10 } })
    expect(loadOf(play).offAt).toBeUndefined()
    read(play.wait(7 * HOUR_S), 640)
    expect(play.wait(HOUR_S).try(off)).toMatchObject({ field: 'unfired', facts: { value: 640 } })
    expect(play.try({ ...off, sure: true })).toBeUndefined()
    play.act({ do: 'unsay', loadId, kind: 'kiln-off' })
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'bending' })
    expect(play.try(off)).toMatchObject({ field: 'unfired' })
    play.wait(60).act({ do: 'see-cone', loadId, cone: '6', is: 'down' })
    expect(play.try(off)).toBeUndefined()
    play.act({ do: 'unsay', loadId, kind: 'kiln-off' })
    play.act({ do: 'drop-look', loadId, hit: loadOf(play).cones.at(-1)?.hit ?? '' })
    read(play.wait(10 * HOUR_S), 1180)
    expect(play.try(off)).toBeUndefined()
  })

  test.each([5, 15, 25])(
    'is held against a reading %d degC higher alike, whichever was said first',
    (risenC) => {
      const at1200 = () => {
        const play = lit()
        read(play.wait(9 * HOUR_S), 1200)
        return play
      }
      const { loadId } = loadOf(at1200())
      const first = at1200().act({ do: 'switch-off', loadId }).wait(600)
      const last = at1200().wait(600)
      const odd = first.try({ do: 'read-heat', loadId, tempC: 1200 + risenC })
      last.act({ do: 'read-heat', loadId, tempC: 1200 + risenC })
      const rose = last.try({ do: 'switch-off', loadId, agoMin: 10 })
      expect([odd?.field, rose?.field]).toEqual(risenC > 10 ? ['leap', 'rose'] : [undefined, undefined])
    },
  )

  test('can have been so before its cone was seen, and a cone seen once it is off teaches nothing', () => {
    const play = lit()
    const { loadId } = loadOf(play)
    read(play.wait(8 * HOUR_S), 1150)
    read(play.wait(HOUR_S), 1210)
    play.act({ do: 'see-cone', loadId, cone: '6', is: 'down' }).wait(HOUR_S)
    expect(stage(play)).toBe('off')
    play.act({ do: 'switch-off', loadId, agoMin: 55 }).wait(20 * HOUR_S)
    play.act({ do: 'open-lid', loadId, tempC: 50 })
    const taught = conesTaught(loadOf(play))
    expect(taught).toHaveLength(1)
    play.act({ do: 'see-cone', loadId, cone: '7', is: 'down' })
    expect(loadOf(play).cones).toHaveLength(2)
    expect(conesTaught(loadOf(play))).toEqual(taught)
  })
})

describe('kiln and firing that are changed', () => {
  const warmer = { ...FIRING, cone: '7', riseCPerH: 100 }
  test('are those of the load in hand from then on', () => {
    const play = proposed()
    play.act({ do: 'plan-firing', firing: warmer })
    expect(loadOf(play).firing).toEqual(warmer)
    const { kilnId } = loadOf(play).kiln
    play.act({ do: 'set-kiln', kiln: { ...KILN_SIZES.wide, kilnId } })
    expect(loadOf(play).kiln).toEqual({ ...KILN_SIZES.wide, kilnId })
    expect(planOf(play).levels.length).toBeGreaterThan(0)
  })

  test('are those of the fire once the kiln is on; its own firing is put right for it alone', () => {
    const play = lit()
    const { kiln, loadId } = loadOf(play)
    play.act({ do: 'plan-firing', firing: warmer })
    play.act({ do: 'set-kiln', kiln: { ...KILN_SIZES.wide, kilnId: kiln.kilnId } })
    expect(loadOf(play)).toMatchObject({ kiln, firing: FIRING })
    // Another phone changed it before it knew of the fire.
    const { things } = loadOf(play)
    play.append(
      [{ kind: 'load-changed', loadId, kiln: { ...KILN_SIZES.halves, kilnId: 'k' }, anew: true }],
      'o',
    )
    expect(loadOf(play)).toMatchObject({ kiln, things })
    play.act({ do: 'see-cone', loadId, cone: '5', is: 'down' })
    expect(stage(play)).not.toBe('off')
    play.act({ do: 'change-firing', loadId, firing: { ...FIRING, cone: '5' } })
    expect(stage(play)).toBe('off')
    expect(play.try({ do: 'change-firing', loadId, firing: { ...FIRING, cone: '99' } })?.code).toBe(
      'not-a-cone',
    )
  })

  test('the same kiln said again is the same: it stays hot, and keeps what its cones taught', () => {
    const play = lit()
    const first = loadOf(play)
    const { kilnId } = first.kiln
    play.act({ do: 'take-offset', kilnId, offsetC: 7.5, of: 1 })
    read(play.wait(6 * HOUR_S), 800)
    play.act({ do: 'begin-load', kilnId, firing: FIRING })
    const { couple, ...rest } = KILN_SIZES.round
    // The same measures, told in another order.
    play.act({ do: 'set-kiln', kiln: { ...rest, ...(couple ? { couple } : {}) } })
    expect(loadOf(play).kiln.kilnId).toBe(kilnId)
    expect(Object.keys(play.table.kilns ?? {})).toEqual([kilnId])
    expect(hotInKiln(play.table, loadOf(play), play.nowMs)?.loadId).toBe(first.loadId)
    play.act({ do: 'set-kiln', kiln: KILN_SIZES.wide })
    expect(hotInKiln(play.table, loadOf(play), play.nowMs)).toBeUndefined()
    // Back to it: the one set last is the present one.
    play.act({ do: 'set-kiln', kiln: { ...KILN_SIZES.round, kilnId } })
    expect(Object.keys(play.table.kilns ?? {}).at(-1)).toBe(kilnId)
    expect(play.table.offsets?.[loadOf(play).kiln.kilnId]?.offsetC).toBe(7.5)
  })

  test('a smaller kiln: what stands badly is told, nothing is lost', () => {
    const play = proposed(3, 'wide')
    const before = loadOf(play)
    play.act({ do: 'set-kiln', kiln: { ...KILN_SIZES.small, kilnId: before.kiln.kilnId } })
    const load = loadOf(play)
    expect(load.things).toEqual(before.things)
    const told = levelsOf(load).flatMap((level) => levelView(play.table, load, level)?.against ?? [])
    expect(told.length).toBeGreaterThan(0)
  })

  test('shelves of another kind: asked first, then its pots are in no place, and go in anew', () => {
    const play = proposed()
    const { loadId } = loadOf(play)
    const [lowest] = levelsOf(loadOf(play))
    if (!lowest) throw new Error('no level')
    play.act({ do: 'load-shelf', loadId, column: lowest.column, storey: lowest.storey })
    const before = loadOf(play)
    const standing = Object.keys(before.things).length
    const out = potsLeftOut(play.table, before).length
    expect(play.try({ do: 'set-kiln', kiln: KILN_SIZES.halves })).toMatchObject({
      field: 'other-kiln',
      facts: { number: standing },
    })
    expect(loadOf(play)).toBe(before)
    play.act({ do: 'set-kiln', kiln: KILN_SIZES.halves, sure: true })
    const pots = Object.values(before.things).filter(({ what }) => what === 'pot').length
    expect(potsLeftOut(play.table, loadOf(play))).toHaveLength(out + pots)
    expect(stage(play)).toBe('propose')
    play.act({ do: 'lay-out', loadId, plan: planOf(play) })
    expect(Object.keys(loadOf(play).things).length).toBeGreaterThan(3)
    play.act({ do: 'take-back' }).act({ do: 'take-back' })
    expect(loadOf(play)).toEqual(before)
  })
})

test('a pot that broke is on no shelf of a load that is not on', () => {
  const play = proposed()
  const load = loadOf(play)
  const thing = load.things['demo.38']
  const level = levelsOf(load).find(({ storey }) => storey === thing?.storey)
  if (!level) throw new Error('38 is out')
  const drawn = () => levelView(play.table, loadOf(play), level)?.things.map(({ key }) => key)
  expect(drawn()).toContain('demo.38')
  play.act({ do: 'gone', potId: 'demo.38' })
  expect(drawn()).not.toContain('demo.38')
})
