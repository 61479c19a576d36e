/** What a phone that clears its table takes, from itself and from others. */

import { beforeEach, describe, expect, test } from 'vitest'
import type { Action } from '../../src/table/model/action.ts'
import { KILN_ACTIONS } from '../fixtures/any-kiln-action.ts'
import { type Hall, hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'

let at: Hall
let a: PhoneAtTable
let b: PhoneAtTable
const wait = (seconds: number) => {
  at.nowMs += seconds * 1000
}
const pots = (on: PhoneAtTable) =>
  Object.values(on.table.pots)
    .filter(({ gone }) => !gone)
    .map(({ facts, dips }) => `${facts.potId} ${dips.length}`)
    .sort()

function dip(on: PhoneAtTable, potId: string): void {
  if (on.table.pots[potId]?.waxedAt === undefined) on.act({ do: 'waxed', potId }).act({ do: 'wiped', potId })
  wait(600)
  on.act({ do: 'stirred', bucketId: `${potId[0]}-bucket` })
  on.act({ do: 'start', potId, again: false, unstirred: false })
  wait(20)
}

beforeEach(() => {
  at = hall()
  a = new PhoneAtTable('a', at)
  b = new PhoneAtTable('b', at, 600_000)
})

describe('on the phone that clears its table', () => {
  test('what another set up before, unread, comes in whole: pots, coats, bucket, stack, clay and room', () => {
    laidOn(a)
    wait(5)
    laidOn(b, 41)
    const { absorption: _, ...board } = b.table.board
    b.act({ do: 'set-board', board: { ...board, absorption: 0.16 } })
    b.act({ do: 'set-air', air: { tempC: 25, rh: 0.5, draught: 'room' } })
    dip(b, 'b-0')
    wait(60)
    a.act({ do: 'clear-table' })
    wait(60)
    a.read(b)
    expect(pots(a)).toEqual(['b-0 1', 'b-1 0'])
    expect(Object.keys(a.table.buckets)).toEqual(['b-bucket'])
    expect(Object.keys(a.table.stacks)).toEqual(['b-stack'])
    expect(a.table.board.absorption).toBe(0.16)
    expect(a.table.air.map(({ air }) => air.tempC)).toEqual([25])
    wait(7200)
    b.act({ do: 'touched', potIds: ['b-0'], dry: true })
    dip(b, 'b-0')
    a.read(b)
    expect(pots(a)).toEqual(['b-0 2', 'b-1 0'])
    expect(a.table.waiting).toBeUndefined()
    b.read(a)
    expect(pots(b)).toEqual(pots(a))
    // Known by now, it goes with the next one here, and stays where it is at the other.
    a.act({ do: 'clear-table' })
    expect(pots(a)).toEqual([])
    b.read(a)
    expect(pots(b)).toEqual(['b-0 2', 'b-1 0'])
  })

  test('what it knew goes, but what others worked on unread, with the coats that it has', () => {
    laidOn(b, 41)
    dip(b, 'b-0')
    a.read(b)
    wait(7200)
    b.act({ do: 'touched', potIds: ['b-0'], dry: true })
    dip(b, 'b-0')
    a.act({ do: 'clear-table' })
    expect(pots(a)).toEqual([])
    a.read(b)
    expect(pots(a)).toEqual(['b-0 2'])
    expect(Object.keys(a.table.buckets)).toEqual(['b-bucket'])
  })

  test('a kiln and a load of another, unread, stay', () => {
    laidOn(a)
    b.act(KILN_ACTIONS['set-kiln'](b.table, { a: 3, b: 0 }))
    const kilns = Object.keys(b.table.kilns ?? {})
    expect(kilns).toHaveLength(1)
    b.act(KILN_ACTIONS['begin-load'](b.table, { a: 0, b: 0 }))
    wait(5)
    a.act({ do: 'clear-table' })
    wait(5)
    a.read(b)
    expect(Object.keys(a.table.kilns ?? {})).toEqual(kilns)
    expect(Object.keys(a.table.loads ?? {})).toEqual(Object.keys(b.table.loads ?? {}))
  })
})

describe('on another phone', () => {
  test.each<readonly [string, (f: PhoneAtTable) => Action]>([
    [
      'put right',
      ({ table }) => {
        const facts = table.pots['a-0']!.facts
        return { do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, wallMm: 6 } } }
      },
    ],
    ['moved', () => ({ do: 'move', potId: 'a-0', place: { board: 'B', spot: 3 } })],
  ])('a pot of its own that who clears only %s stays', (_, touch) => {
    laidOn(a)
    b.read(a)
    wait(5)
    b.act(touch(b))
    a.read(b)
    wait(5)
    b.act({ do: 'clear-table' })
    a.read(b)
    expect(pots(a)).toEqual(['a-0 0', 'a-1 0'])
  })

  test.each<readonly [string, Action]>([
    [
      'own coats',
      {
        do: 'set-plan',
        potId: 'a-0',
        coats: [{ bucketId: 'a-bucket', cover: { kind: 'full' }, holdS: 2 }],
      },
    ],
    ['its weight', { do: 'weigh', potId: 'a-0', grams: 300, as: 'bisque' }],
    ['a catch slab', { do: 'set-slab', potId: 'a-0', slab: true }],
    ['a coat by eye', { do: 'count-coats', potId: 'a-0', coats: 1 }],
    ['wax', { do: 'waxed', potId: 'a-0' }],
  ])('a pot to which it gave %s stays, read by who clears or not', (_, deed) => {
    for (const read of [false, true]) {
      at = hall()
      a = laidOn(new PhoneAtTable('a', at))
      b = new PhoneAtTable('b', at).read(a)
      wait(5)
      b.act(deed)
      wait(5)
      if (read) a.read(b)
      a.act({ do: 'clear-table' })
      b.read(a)
      expect(pots(b)).toEqual(['a-0 0'])
    }
  })

  test('a pot of a plan that it took stays, the other copies go', () => {
    laidOn(a)
    const { pots: _, stacks, buckets } = a.table
    const handout = {
      stacks: Object.values(stacks),
      buckets: Object.values(buckets).map(({ facts }) => facts),
      class: { board: a.table.board, pots: [a.table.pots['a-0']!.facts], plans: [] },
    }
    b.act({ do: 'take-handout', handout })
    wait(5)
    b.read(a)
    a.read(b)
    wait(5)
    a.act({ do: 'clear-table' })
    b.read(a)
    expect(pots(b)).toEqual(['a-0 0'])
  })
})
