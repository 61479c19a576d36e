import { describe, expect, it } from 'vitest'
import type { Stamped, TableEvent } from '../../../shared/events.ts'
import { demoEvents } from '../../../src/table/decide/demo.ts'
import { fold, step } from '../../../src/table/fold/fold.ts'
import { reduce } from '../../../src/table/fold/reduce.ts'
import { EMPTY_TABLE } from '../../../src/table/model/defaults.ts'
import { potsOnTable } from '../../../src/table/model/plan.ts'
import { hall, laidOn, PhoneAtTable } from '../../fixtures/phones.ts'
import { season } from '../../fixtures/season.ts'
import { tableOf } from '../../fixtures/seen-by.ts'

const EVENTS = season(600)

/** The latest hit that can be named, taken back or put back a second later. */
const about = (kind: 'taken-back' | 'put-back', hit: string, after: Stamped): Stamped => ({
  id: `${kind} ${hit}`,
  hit: `${kind} ${hit}`,
  at: after.at + 1000,
  event: { kind, hit },
})

describe('the fold of a history', () => {
  it('is what event after event gives, its line of hits among it', () => {
    expect(fold(EVENTS)).toEqual(EVENTS.reduce(reduce, EMPTY_TABLE))
    expect(step(fold(EVENTS.slice(0, 400)), EVENTS.slice(0, 400), EVENTS.slice(400))).toEqual(fold(EVENTS))
  })

  it('leaves out a hit that was taken back, remembers which until the next, and puts it back exactly', () => {
    const before = EVENTS.slice(0, 300)
    const last = before.at(-1)!
    const { hit } = fold(before).hits.at(-1)!
    const back = about('taken-back', hit, last)
    const without = fold([...before, back])
    expect(without.hits.map((line) => line.hit)).not.toContain(hit)
    expect(without.takenBack).toMatchObject({ hit, at: back.at })
    const again = fold([...before, back, about('put-back', hit, last)])
    expect(again).toEqual(fold(before))
    const [next] = EVENTS.slice(300).filter((each) => each.hit !== hit)
    expect(step(without, [...before, back], [next!])).toEqual(fold([...before, back, next!]))
    expect(fold([...before, back, next!]).takenBack).toBeUndefined()
  })
})

it('pots on the table are those that are there by the end, though a bucket was taken off long before', () => {
  const at = hall()
  const on = laidOn(new PhoneAtTable('a', at))
  const facts = on.table.buckets['a-bucket']!.facts
  const spare = { ...facts, bucketId: 'spare', name: 'Fen', letter: 'F', pattern: 'dots' } as const
  on.act({ do: 'set-bucket', bucket: spare }).act({ do: 'remove-bucket', bucketId: 'spare' })
  const pot = on.table.pots['a-0']!.facts
  on.act({ do: 'set-pot', pot: { ...pot, potId: 'a-2', number: 33, place: { board: 'A', spot: 3 } } })
  on.act({ do: 'waxed', potId: 'a-0' })
  const { table } = on
  expect(potsOnTable(table)).toEqual(['a-0', 'a-1', 'a-2'].map((potId) => table.pots[potId]))
  expect(potsOnTable(table)[0]?.waxedAt).toBeDefined()
})

describe('records of two phones', () => {
  const HOUR_MS = 3_600_000
  const at = EVENTS.at(-1)!.at + HOUR_MS
  const of = (writer: string, name: string, ms: number, event: TableEvent): Stamped => ({
    id: name,
    hit: name,
    at: at + ms,
    writer,
    event,
  })
  const stirred = (bucketId: string): TableEvent => ({ kind: 'stirred', bucketId })

  it('a clock that jumps moves what its own phone wrote, and nothing that another did', () => {
    const jump = of('a.one', 'jump', 1000, { kind: 'clock-moved', byMs: HOUR_MS })
    const events = [
      ...EVENTS,
      jump,
      of('b.one', 'theirs', 2000, stirred('demo.gatepost')),
      of('a.two', 'own', HOUR_MS + 3000, stirred('demo.heather')),
    ]
    for (const [phone, skewMs] of [
      ['a', HOUR_MS],
      ['b', 0],
    ] as const) {
      const table = tableOf(events, phone)
      expect(table.skewMs).toBe(skewMs)
      expect(table.buckets['demo.gatepost']!.stirredAt).toBe(at + 2000)
      expect(table.buckets['demo.heather']!.stirredAt).toBe(at + 3000)
    }
  })

  const own = EVENTS.filter(({ hit }) => hit === EVENTS[0]!.hit)
  const ownTable = own.map((stamped): Stamped => ({ ...stamped, writer: 'a.one' }))
  const potsOf = (events: readonly Stamped[], phone: string) =>
    Object.values(tableOf(events, phone).pots)
      .filter(({ gone }) => !gone)
      .map(({ facts }) => facts.potId)
  const ownPots = potsOf(ownTable, 'a')
  const facts = own.map(({ event }) => event).find((event) => event.kind === 'pot-set')!
  const theirs = (name: string, ms: number, potId: string) =>
    of('b.one', name, ms, { kind: 'pot-set', pot: { ...facts.pot, potId, number: 90 } })

  it('a phone that clears its table takes its own pots from the others, and none of theirs', () => {
    expect(ownPots.length).toBeGreaterThan(3)
    const set = [...ownTable, theirs('set', 1000, 'b.one-pot')]
    expect(potsOf(set, 'a')).toEqual([...ownPots, 'b.one-pot'])
    const cleared = of('b.one', 'clear', 2000, { kind: 'table-cleared' })
    expect(potsOf([...set, cleared], 'a')).toEqual(ownPots)
    expect(potsOf([...set, cleared], 'b')).toEqual([])
    // What this phone changed is its own.
    const changed = { ...theirs('change', 1500, 'b.one-pot'), writer: 'a.one' }
    expect(potsOf([...set, changed, cleared], 'a')).toEqual([...ownPots, 'b.one-pot'])
    // Nor do buckets and stacks go that were set up before any pot.
    const setUp = ownTable.filter(({ event }) => event.kind !== 'pot-set')
    const { buckets, stacks } = tableOf(setUp, 'a')
    expect(Object.keys(buckets).length).toBeGreaterThan(0)
    expect(tableOf([...setUp, cleared], 'a')).toMatchObject({ buckets, stacks })
    expect(tableOf([...setUp, cleared], 'b').buckets).toEqual({})
    // A phone that took another's records in has that one's table, cleared where it was.
    expect(potsOf([...set, cleared], 'c')).toEqual(ownPots)
    expect(potsOf([...ownTable, { ...cleared, writer: 'a.two' }], 'c')).toEqual([])
  })

  it('a demo laid beside what was there, here or on another phone, folds nothing away and adds nothing', () => {
    for (const writer of ['a.two', 'b.one']) {
      const demo = demoEvents().map(
        (event, i): Stamped => ({ id: `demo ${i}`, hit: 'demo', at, writer, event }),
      )
      const pot = { ...theirs('own', -1000, 'a.one-pot'), writer: 'a.one' }
      const before = [pot, { ...theirs('later', 500, 'a.two-pot'), writer: 'a.one' }]
      for (const events of [
        [before[0]!, ...demo, before[1]!],
        [...(writer === 'b.one' ? demo : []), ...before],
      ]) {
        expect(potsOf(events, 'a')).toEqual(['a.one-pot', 'a.two-pot'])
      }
    }
  })
})

describe('a record that names what is not known', () => {
  const laid = EVENTS.filter(({ hit }) => hit === EVENTS[0]!.hit)
  const rest = EVENTS.slice(laid.length, 110)
  const pots = laid.filter(({ event }) => event.kind === 'pot-set')
  const without = laid.filter((each) => !pots.includes(each))

  it('waits for it without effect, and folds in when it is there', () => {
    const early = fold([...without, ...rest])
    expect(early.pots).toEqual({})
    const late = fold([...without, ...rest, ...pots])
    const { hits: _hits, openedAt: _opened, ...said } = fold([...laid, ...rest])
    expect(late.waiting).toBeUndefined()
    expect(Object.keys(late.pots)).toHaveLength(pots.length)
    for (const [potId, pot] of Object.entries(said.pots)) {
      expect(late.pots[potId]!.dips.map(({ dipId, coat }) => [dipId, coat])).toEqual(
        pot.dips.map(({ dipId, coat }) => [dipId, coat]),
      )
      expect(late.pots[potId]!.touches).toEqual(pot.touches)
    }
    expect(step(early, [...without, ...rest], pots)).toEqual(late)
  })
})
