/** What a meeting of two phones means, case by case, and that it means the same in whatever order they meet. */

import fc from 'fast-check'
import { beforeEach, describe, expect, test } from 'vitest'
import type { TableEvent } from '../../shared/events.ts'
import { createRecords, type JournalRecord } from '../../shared/record.ts'
import { contentFault } from '../../src/store/events-schema.ts'
import { loadJournal } from '../../src/store/journal.ts'
import { SCHEMA } from '../../src/store/marks.ts'
import { unite } from '../../src/store/union.ts'
import { doubtfulDips } from '../../src/table/decide/decide-card.ts'
import { seenFrom } from '../../src/table/fold/seen.ts'
import { forecastOf } from '../../src/table/forecast/forecast.ts'
import { asksOf } from '../../src/table/meeting/asks.ts'
import type { Ask } from '../../src/table/model/ask.ts'
import type { Table } from '../../src/table/model/state.ts'
import { SETTING_IS } from '../../src/table/model/whose-setting.ts'
import { panAsk } from '../../src/table/steps/wax-pan.ts'
import { actionOf, deeds } from '../fixtures/any-action.ts'
import { histories } from '../fixtures/any-record.ts'
import { type Hall, hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import { runsOf } from '../fixtures/runs.ts'
import { tableOf } from '../fixtures/seen-by.ts'
import { phone } from '../unit/store/memory.ts'
import { START_MS } from '../unit/table/play.ts'
import '../../src/table/forecast/walls.ts'

const MIN_MS = 60_000
const patient = { timeout: 7_200_000 }

let at: Hall
let a: PhoneAtTable
let b: PhoneAtTable
const wait = (seconds: number) => {
  at.nowMs += seconds * 1000
}

/** A pot is waxed, wiped and dipped by the bar, to OUT. */
function dip(on: PhoneAtTable, potId: string): void {
  if (on.table.pots[potId]?.waxedAt === undefined) on.act({ do: 'waxed', potId }).act({ do: 'wiped', potId })
  wait(600)
  const bucketId = `${potId[0]}-bucket`
  on.act({ do: 'stirred', bucketId }).act({ do: 'start', potId, again: false, unstirred: false })
  wait(20)
}

const pots = ({ pots: all }: Table) =>
  Object.values(all)
    .filter(({ gone }) => !gone)
    .map(({ facts }) => facts.potId)
    .sort()

const knowledge = { schema: SCHEMA, isEvent: () => true, content: async () => contentFault }
const asked = (asks: readonly Ask[]) => asks.map(({ is }) => is)

beforeEach(() => {
  at = hall()
  a = new PhoneAtTable('a', at)
  b = new PhoneAtTable('b', at, 10 * MIN_MS)
})

describe('when two phones meet whose clocks are ten minutes apart', () => {
  test('one that clears its table or lays the demo empties nothing of the other', () => {
    laidOn(a)
    laidOn(b, 41)
    a.read(b)
    dip(a, 'b-0')
    b.act({ do: 'clear-table' }).act({ do: 'lay-demo' })
    a.read(b)
    expect(pots(a.table)).toEqual(['a-0', 'a-1', 'b-0'])
    expect(Object.keys(a.table.buckets)).toEqual(expect.arrayContaining(['a-bucket', 'b-bucket']))
    // One that only read it keeps buckets and stacks, and none of its pots.
    const c = new PhoneAtTable('c', at).read(b)
    expect(pots(c.table)).toEqual([])
    expect(Object.keys(c.table.stacks)).toEqual(['b-stack'])
  })

  test('a value that this program does not know is set aside, an order beyond any clock and a pot without facts too', async () => {
    const journal = await loadJournal<TableEvent>(phone().ports('a', knowledge))
    await journal.append([{ kind: 'held' }], { at: START_MS, tz: 0 }).saved
    const forged = [
      { kind: 'settings-set', settings: { hand: 'both' } },
      { kind: 'pot-set' },
    ] as unknown as TableEvent[]
    const ahead = createRecords<TableEvent>(
      [{ kind: 'held' }],
      { writer: 'b.2', seq: 1, order: 4_102_444_799_999 },
      { at: START_MS, tz: 0 },
    )
    const records = createRecords(forged, { writer: 'b.1', seq: 1, order: START_MS }, { at: START_MS, tz: 0 })
    const report = await journal.merge([...records, ...ahead], START_MS)
    expect(report).toMatchObject({ added: 0, waiting: 2, ahead: 1 })
    await journal.append([{ kind: 'resumed' }], { at: START_MS + 1000, tz: 0 }).saved
    expect(journal.records.at(-1)?.order).toBe(START_MS + 1000)
  })

  test('a wait is as long on both, before and after the clock of one is set', () => {
    laidOn(b)
    a.read(b)
    dip(b, 'b-0')
    const lone = b.table
    const left = (on: PhoneAtTable) => {
      const pot = on.table.pots['b-0']
      const ready = pot && forecastOf(on.table, pot)?.ready.likely
      return (ready ?? 0) - on.now
    }
    const before = left(b)
    expect(before).toBeGreaterThan(0)
    a.read(b)
    expect(left(a)).toBe(before)
    b.aheadMs -= 50 * MIN_MS
    b.act({ do: 'clock-moved', byMs: -50 * MIN_MS })
    b.act({ do: 'set-air', air: { tempC: 21, rh: 0.5, draught: 'room' } })
    a.read(b)
    expect(a.now - (a.table.air.at(-1)?.at ?? 0)).toBe(0)
    expect(a.table.pots['b-0']?.dips[0]?.outAt).toBe((lone.pots['b-0']?.dips[0]?.outAt ?? 0) - 10 * MIN_MS)
    dip(a, 'b-1')
    expect(a.table.pots['b-1']?.dips[0]?.tappedAt).toBe(a.now - 20_000)
  })

  test('what happened first comes first, whatever the clocks said', () => {
    laidOn(a)
    b.read(a)
    b.act({ do: 'set-air', air: { tempC: 20, rh: 0.5, draught: 'room' } })
    wait(60)
    a.act({ do: 'set-air', air: { tempC: 25, rh: 0.5, draught: 'room' } })
    a.read(b)
    b.read(a)
    for (const on of [a, b]) expect(on.table.air.map(({ air }) => air.tempC)).toEqual([20, 25])
  })

  test('a clock compared later moves nothing that lies before an earlier comparison', () => {
    laidOn(b)
    dip(b, 'b-0')
    a.read(b)
    const outAt = a.table.pots['b-0']?.dips[0]?.outAt
    // Set while the app was closed, and never written down.
    b.aheadMs += 7 * MIN_MS
    wait(60)
    a.read(b)
    expect(a.table.pots['b-0']?.dips[0]?.outAt).toBe(outAt)
  })

  test('the hot pan is asked about after five minutes, whatever the other phone does', () => {
    laidOn(a)
    b.read(a)
    a.act({ do: 'wax-pan', is: 'on' })
    wait(200)
    b.act({ do: 'waxed', potId: 'a-1' }).act({ do: 'wax-pan', is: 'watched' })
    b.act({ do: 'stirred', bucketId: 'a-bucket' })
    a.read(b)
    expect(panAsk(a.table, a.now)).toBeUndefined()
    wait(101)
    expect(panAsk(a.table, a.now)).toBeDefined()
    b.act({ do: 'wax-pan', is: 'off' })
    a.read(b)
    expect(panAsk(a.table, a.now)).toBeDefined()
    expect(a.table.pots['a-1']?.waxedAt).toBe(a.now - 101_000)
  })

  test('take back takes one own hit after another, and none of the other phone', () => {
    laidOn(a)
    b.read(a)
    a.act({ do: 'waxed', potId: 'a-0' })
    wait(5)
    b.act({ do: 'waxed', potId: 'a-1' })
    a.read(b)
    a.act({ do: 'take-back' })
    expect(a.table.pots['a-0']?.waxedAt).toBeUndefined()
    expect(a.table.pots['a-1']?.waxedAt).toBeDefined()
    expect(a.table.hits.map(({ potId }) => potId)).not.toContain('a-1')
    a.act({ do: 'put-back' })
    expect(a.table.pots['a-0']?.waxedAt).toBeDefined()
    // What the other takes back of its own is gone here too, and this phone can put nothing back.
    b.act({ do: 'take-back' })
    a.read(b)
    expect(a.table.pots['a-1']?.waxedAt).toBeUndefined()
    expect(a.try({ do: 'put-back' })?.code).toBe('nothing-to-put-back')
  })

  test('START on one says nothing of the pot in the hands at the other', () => {
    laidOn(a)
    b.read(a)
    b.act({ do: 'waxed', potId: 'a-1' }).act({ do: 'wiped', potId: 'a-1' })
    dip(a, 'a-0')
    b.read(a)
    b.act({ do: 'stirred', bucketId: 'a-bucket' })
    b.act({ do: 'start', potId: 'a-1', again: false, unstirred: false })
    a.read(b)
    expect(a.table.pots['a-0']?.dips[0]).not.toHaveProperty('spongedAt')
    expect(a.card).toMatchObject({ kind: 'drip', potId: 'a-0' })
    // And the other way round its own foot, drip and count are the other phone's business.
    expect(b.card).toMatchObject({ kind: 'count', potId: 'a-1' })
    expect(b.table.pots['a-0']?.dips[0]?.hands).toBe(2)
  })

  test('a count at the other is no count here, holds up no START and is never doubted', () => {
    laidOn(a)
    b.read(a)
    for (const potId of ['a-0', 'a-1']) a.act({ do: 'waxed', potId }).act({ do: 'wiped', potId })
    wait(600)
    b.read(a)
    b.act({ do: 'stirred', bucketId: 'a-bucket' })
    b.act({ do: 'start', potId: 'a-0', again: false, unstirred: false })
    wait(3)
    a.read(b)
    expect(a.card.kind).not.toBe('count')
    expect(doubtfulDips(a.table, a.now - 60_000, a.now + 60_000)).toEqual([])
    a.act({ do: 'stirred', bucketId: 'a-bucket' })
    a.act({ do: 'start', potId: 'a-1', again: false, unstirred: false })
    expect(a.card).toMatchObject({ kind: 'count', potId: 'a-1' })
  })

  test('hold, choice, open bucket, collar and personal settings are those of each phone, the room is the same', () => {
    laidOn(a)
    b.read(a)
    a.act({ do: 'set-settings', settings: { hand: 'left', theme: 'dim', staleMin: 7 } })
    a.act({ do: 'stirred', bucketId: 'a-bucket', decantLitres: 1 }).act({ do: 'pick', potId: 'a-0' })
    wait(5)
    b.act({ do: 'set-settings', settings: { hand: 'right', theme: 'paper', sound: 'tones', wax: 'water' } })
    b.act({ do: 'stirred', bucketId: 'a-bucket', decantLitres: 2 }).act({
      do: 'returned',
      bucketId: 'a-bucket',
    })
    b.act({ do: 'pick', potId: 'a-1' }).act({ do: 'hold' })
    const { settings, openBucket, collar, picked } = a.table
    a.read(b)
    expect(a.table).toMatchObject({ openBucket, collar, picked })
    expect(a.table.settings).toEqual({ ...settings, wax: 'water' })
    expect(a.table.heldSince).toBeUndefined()
    expect(a.table.buckets['a-bucket']?.stirredAt).toBe(a.now)
    b.read(a)
    expect(b.table.settings).toMatchObject({ hand: 'right', staleMin: 7 })
    expect(b.table.heldSince).toBeDefined()
  })

  test('every setting is the phone\u2019s or the table\u2019s', () => {
    expect(Object.keys(SETTING_IS).sort()).toEqual(Object.keys(a.table.settings).sort())
  })

  test('under its lid a bucket is open to nobody, at either', () => {
    laidOn(a)
    b.read(a)
    a.act({ do: 'stirred', bucketId: 'a-bucket' })
    wait(5)
    b.act({ do: 'lid-on', bucketId: 'a-bucket' })
    a.read(b)
    expect(a.table.openBucket).toBeUndefined()
  })

  test('tables set up apart ask of each number, place and letter that stands twice, until all are told apart', () => {
    laidOn(a)
    laidOn(b)
    a.read(b)
    expect(asked(a.asks)).toEqual(['number', 'number', 'place', 'place', 'letter'])
    for (let left = 5; left > 0; left--) {
      expect(a.asks).toHaveLength(left)
      const [ask] = a.asks
      if (ask?.is === 'letter') a.act({ do: 'settle', answer: { is: 'letter', bucketId: ask.bucketIds[1] } })
      else if (ask?.is === 'number' || ask?.is === 'place')
        a.act({ do: 'settle', answer: { is: ask.is, potId: ask.potIds[1] } })
      wait(2)
    }
    expect(pots(a.table)).toHaveLength(4)
    expect(a.table.pots['a-0']?.facts).toMatchObject({ number: 31, place: { board: 'A', spot: 1 } })
    b.read(a)
    expect(b.asks).toEqual([])
  })

  test('one coat dipped on both is asked about: both, or the one that never was', () => {
    laidOn(a)
    b.read(a)
    dip(a, 'a-0')
    dip(b, 'a-0')
    a.read(b)
    b.read(a)
    for (const on of [a, b]) expect(asked(on.asks)).toEqual(['coat'])
    const [ask] = a.asks
    if (ask?.is !== 'coat') throw new Error('a coat is asked about')
    const [mine, theirs] = ask.dips
    expect(mine.from).toBeUndefined()
    expect(theirs).toMatchObject({ from: 'b' })
    wait(2)
    const c = new PhoneAtTable('c', at).read(a)
    expect(asked(c.asks)).toEqual(['coat'])
    c.act({ do: 'settle', answer: { is: 'both', dipIds: [mine.dipId, theirs.dipId] } })
    expect(c.asks).toEqual([])
    a.act({ do: 'settle', answer: { is: 'never', dipId: theirs.dipId, wentOn: mine.dipId } })
    expect(a.asks).toEqual([])
    expect(a.table.pots['a-0']?.dips.map(({ dipId }) => dipId)).toEqual([mine.dipId])
    b.read(a)
    expect(b.asks).toEqual([])
    expect(b.table.pots['a-0']?.dips).toHaveLength(1)
    // A second coat that somebody dips who knew of the first is nothing to ask about.
    wait(3 * 3600)
    b.act({ do: 'touched', potIds: ['a-0'], dry: true })
    dip(b, 'a-0')
    a.read(b)
    expect(a.asks).toEqual([])
    expect(a.table.pots['a-0']?.dips).toHaveLength(2)
  })

  test('two changes of one thing are asked about with both values, and the answer stands on both', () => {
    laidOn(a)
    b.read(a)
    a.read(b)
    wait(5)
    const facts = a.table.pots['a-0']!.facts
    a.act({ do: 'set-pot', pot: { ...facts, number: 35 } })
    wait(5)
    b.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, wallMm: 7 } } })
    a.read(b)
    b.read(a)
    for (const on of [a, b]) expect(asked(on.asks)).toEqual(['changed'])
    const [ask] = a.asks
    if (ask?.is !== 'changed') throw new Error('a change is asked about')
    expect(ask.ways.map(({ from, facts: said }) => [from, (said as typeof facts).number])).toEqual(
      expect.arrayContaining([
        [undefined, 35],
        ['b', 31],
      ]),
    )
    wait(2)
    const [way] = ask.ways.filter(({ from }) => from === undefined)
    if (!way) throw new Error('one of them is own')
    a.act({ do: 'settle', answer: { is: 'so', thing: way } })
    expect(a.asks).toEqual([])
    wait(2)
    b.read(a)
    expect(b.asks).toEqual([])
    expect(b.table.pots['a-0']?.facts).toMatchObject({ number: 35, shape: { wallMm: 5 } })
    // Who knows of the other's word and says another asks nobody.
    b.act({ do: 'set-pot', pot: { ...b.table.pots['a-0']!.facts, number: 36 } })
    a.read(b)
    expect(a.asks).toEqual([])
  })

  test('a caution that one phone knows stays on both, whichever way of the bucket is taken', () => {
    laidOn(a)
    b.read(a)
    const facts = a.table.buckets['a-bucket']!.facts
    b.act({ do: 'set-bucket', bucket: { ...facts, cautions: ['manganese'] } })
    wait(5)
    a.act({ do: 'set-bucket', bucket: { ...facts, litres: 9 } })
    a.read(b)
    b.read(a)
    const cautions = (on: PhoneAtTable) => on.table.buckets['a-bucket']?.facts.cautions
    for (const on of [a, b]) expect(cautions(on)).toEqual(['manganese'])
    for (const litres of [9, 12]) {
      const c = new PhoneAtTable('c', at).read(a)
      const [ask] = c.asks
      if (ask?.is !== 'changed') throw new Error('a change is asked about')
      const way = ask.ways.find((one) => one.is === 'bucket' && one.facts.litres === litres)
      if (!way) throw new Error('both values are offered')
      c.act({ do: 'settle', answer: { is: 'so', thing: way } })
      expect(c.table.buckets['a-bucket']?.facts).toMatchObject({ litres, cautions: ['manganese'] })
    }
    // Whoever knows of it takes it off on purpose.
    wait(5)
    b.act({ do: 'set-bucket', bucket: { ...facts, cautions: [] } })
    wait(5)
    a.read(b)
    for (const on of [a, b]) expect(cautions(on)).toEqual([])
  })

  test('three changes of one thing are asked about in one question', () => {
    laidOn(a)
    const c = new PhoneAtTable('c', at, -3 * MIN_MS)
    b.read(a)
    c.read(a)
    const facts = a.table.pots['a-0']!.facts
    for (const [i, on] of [a, b, c].entries()) {
      wait(5)
      on.act({ do: 'set-pot', pot: { ...facts, number: 41 + i } })
    }
    a.read(b, c)
    const [ask, ...more] = a.asks
    expect(more).toEqual([])
    if (ask?.is !== 'changed') throw new Error('a change is asked about')
    expect(ask.ways.map(({ facts: said }) => (said as typeof facts).number)).toEqual([41, 42, 43])
    const [, way] = ask.ways
    if (!way) throw new Error('three ways')
    wait(5)
    a.act({ do: 'settle', answer: { is: 'so', thing: way } })
    b.read(a)
    c.read(a)
    for (const on of [a, b, c]) {
      expect(on.asks).toEqual([])
      expect(on.table.pots['a-0']?.facts.number).toBe(42)
    }
  })

  test('own coats of a pot and the clay of the board, changed on both, are asked about', () => {
    laidOn(a)
    b.read(a)
    const { absorption: _, ...board } = a.table.board
    for (const [on, holdS, absorption] of [
      [a, 2, 0.08],
      [b, 5, 0.16],
    ] as const) {
      wait(5)
      const coats = [{ bucketId: 'a-bucket', cover: { kind: 'full' }, holdS }] as const
      on.act({ do: 'set-plan', potId: 'a-0', coats })
      on.act({ do: 'set-board', board: { ...board, absorption } })
    }
    a.read(b)
    expect(a.asks.map((ask) => ask.is === 'changed' && ask.ways.map(({ is }) => is))).toEqual([
      ['plan', 'plan'],
      ['board', 'board'],
    ])
    for (let left = 2; left > 0; left--) {
      const [ask] = a.asks
      const [way] = ask?.is === 'changed' ? ask.ways : []
      if (!way) throw new Error('asked')
      wait(2)
      a.act({ do: 'settle', answer: { is: 'so', thing: way } })
    }
    b.read(a)
    for (const on of [a, b]) {
      // Its own word on the board was overruled: that is told.
      expect(asked(on.asks)).toEqual(on === b ? ['heard'] : [])
      expect(on.table.pots['a-0']?.ownPlan?.map(({ holdS }) => holdS)).toEqual([2])
      expect(on.table.board.absorption).toBe(0.08)
    }
  })

  test.each(['off', 'there'] as const)(
    'a pot taken off on one and dipped on the other is asked about: %s',
    (is) => {
      laidOn(a)
      b.read(a)
      wait(5)
      a.act({ do: 'gone', potId: 'a-1' })
      dip(b, 'a-1')
      a.read(b)
      b.read(a)
      for (const on of [a, b]) expect(asked(on.asks)).toEqual(['gone'])
      const [ask] = b.asks
      if (ask?.is !== 'gone') throw new Error('asked')
      wait(2)
      b.act({ do: 'settle', answer: { is, potId: 'a-1', hits: ask.hits } })
      a.read(b)
      for (const on of [a, b]) {
        expect(on.asks).toEqual([])
        expect(pots(on.table)).toEqual(is === 'off' ? ['a-0'] : ['a-0', 'a-1'])
        expect(on.table.pots['a-1']?.dips).toHaveLength(1)
      }
    },
  )

  test('one that clears its table takes no pot with a coat or wax on from another', () => {
    laidOn(b)
    dip(b, 'b-0')
    a.read(b)
    a.act({ do: 'waxed', potId: 'b-1' })
    b.act({ do: 'clear-table' })
    a.read(b)
    expect(pots(a.table)).toEqual(['b-0', 'b-1'])
  })

  test('a clock more than a day off is not compared: the field and its range are named', () => {
    expect(a.try({ do: 'meet', phone: 'b', upTo: 1, aheadMs: -86_400_001 })).toMatchObject({
      code: 'out-of-range',
      field: 'aheadMs',
      facts: { value: -86_400_001, least: -86_400_000, most: 86_400_000 },
    })
    expect(contentFault({ kind: 'met', phone: 'b', upTo: 1, aheadMs: 86_400_001 } as never)).toBe(
      'met.aheadMs',
    )
  })
})

test('a phone that lost its name, or took its backup into an empty journal, goes on as itself', () => {
  laidOn(a)
  a.act({ do: 'set-settings', settings: { hand: 'left' } }).act({ do: 'waxed', potId: 'a-0' })
  const before = a.table
  const now = new PhoneAtTable('n', at)
  now.records = a.records
  now.write([{ kind: 'was-named', phone: 'a' }])
  expect(now.table).toEqual(before)
  now.act({ do: 'take-back' })
  expect(now.table.pots['a-0']?.waxedAt).toBeUndefined()
  // The old phone that somebody goes on with is another one from then on.
  wait(5)
  a.act({ do: 'hold' }).act({ do: 'waxed', potId: 'a-1' })
  now.read(a)
  expect(now.table.heldSince).toBeUndefined()
  expect(now.table.settings.hand).toBe('left')
  expect(now.table.pots['a-1']?.waxedAt).toBeDefined()
})

test('a phone stays itself, whoever goes on under its name: pan, hand, open bucket and take back', () => {
  laidOn(a)
  a.act({ do: 'set-settings', settings: { hand: 'left' } }).act({ do: 'wax-pan', is: 'on' })
  a.act({ do: 'stirred', bucketId: 'a-bucket' }).act({ do: 'waxed', potId: 'a-0' })
  const before = a.table
  for (const name of ['b', 'c']) {
    const other = new PhoneAtTable(name, at)
    other.records = a.records
    other.write([{ kind: 'was-named', phone: 'a' }])
    wait(5)
    a.read(other)
  }
  const { pan, settings, openBucket, hits } = a.table
  expect({ pan, settings, openBucket, hits }).toEqual({
    pan: before.pan,
    settings: before.settings,
    openBucket: before.openBucket,
    hits: before.hits,
  })
  wait(600)
  expect(panAsk(a.table, a.now)).toBeDefined()
  a.act({ do: 'take-back' })
  expect(a.table.pots['a-0']?.waxedAt).toBeUndefined()
})

/** Records of every kind by three phones, as their journals have them, each by a clock of its own. */
const ofThree = fc.tuple(
  histories,
  fc.tuple(
    fc.constant(0),
    fc.integer({ min: -600_000, max: 600_000 }),
    fc.integer({ min: -600_000, max: 600_000 }),
  ),
)

test(
  'any records of three phones are the same table to each, in whatever order and pieces they come',
  patient,
  () => {
    fc.assert(
      fc.property(
        ofThree,
        fc.array(fc.nat()),
        fc.integer({ min: 1, max: 9 }),
        ([drawn, offMs], cuts, piece) => {
          const seqs = new Map<string, number>()
          const records = drawn.map(({ event, at: atMs, writer = 'a.1' }, i): JournalRecord<TableEvent> => {
            const by = i % 5 === 4 ? 'c.1' : writer
            const seq = (seqs.get(by) ?? 0) + 1
            seqs.set(by, seq)
            const clockMs = atMs + (offMs['abc'.indexOf(by[0] ?? 'a')] ?? 0)
            return createRecords(
              [event],
              { writer: by, seq, order: Math.max(1, clockMs + i) },
              { at: clockMs, tz: 0 },
            )[0]!
          })
          const whole = unite<JournalRecord<TableEvent>>([], records).records
          const shuffled = [...records].sort(
            (one, two) =>
              (cuts[one.seq % (cuts.length || 1)] ?? 0) - (cuts[two.seq % (cuts.length || 1)] ?? 0),
          )
          let pieces: readonly JournalRecord<TableEvent>[] = []
          for (let from = 0; from < shuffled.length; from += piece)
            pieces = unite(pieces, shuffled.slice(from, from + piece)).records
          for (const name of ['a', 'b', 'c']) {
            expect(tableOf(pieces, name)).toEqual(tableOf(whole, name))
            const asks = (all: typeof whole) => asksOf(tableOf(all, name), seenFrom(all, name))
            expect(asks(pieces)).toEqual(asks(whole))
          }
        },
      ),
      { numRuns: runsOf(150, 0.5) },
    )
  },
)

test('a hit among the records of others goes on from the table that shows, to the same one', patient, () => {
  let gone = 0
  fc.assert(
    fc.property(
      deeds(4, 14),
      fc.integer({ min: -600_000, max: 600_000 }),
      fc.array(fc.boolean(), { minLength: 14, maxLength: 14 }),
      (done, offMs, reads) => {
        const room = hall()
        const one = laidOn(new PhoneAtTable('a', room))
        const two = new PhoneAtTable('b', room, offMs)
        for (const [i, deed] of done.entries()) {
          room.nowMs += deed.afterS * 1000
          const [on, other] = i % 2 ? [one, two] : [two, one]
          if (reads[i]) on.read(other)
          const before = on.records
          const action = actionOf(on.table, deed, on.now)
          if (!action || action.do === 'meet' || on.try(action)) continue
          const next = on.records.slice(before.length)
          expect(on.stepped(before, next)).toEqual(on.table)
          gone++
        }
      },
    ),
    { numRuns: runsOf(60, 0.2) },
  )
  expect(gone).toBeGreaterThan(20)
})
