/** A pot, bucket or stack whose setting up one phone takes back while another works with it. */

import { beforeEach, describe, expect, test } from 'vitest'
import { type Hall, hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import '../../src/table/forecast/walls.ts'

let at: Hall
let a: PhoneAtTable
let b: PhoneAtTable
const wait = (seconds: number) => {
  at.nowMs += seconds * 1000
}

function dip(on: PhoneAtTable, potId: string, bucketId: string): void {
  on.act({ do: 'waxed', potId }).act({ do: 'wiped', potId })
  wait(600)
  on.act({ do: 'stirred', bucketId }).act({ do: 'start', potId, again: false, unstirred: false })
  wait(60)
}

/** Pots, each with how many coats it has and its stack; buckets and stacks. */
const shown = ({ table }: PhoneAtTable) => ({
  pots: Object.values(table.pots).map(({ facts, dips, gone }) => [
    facts.potId,
    dips.length,
    facts.stackId,
    gone,
  ]),
  buckets: Object.keys(table.buckets).sort(),
  stacks: Object.keys(table.stacks).sort(),
  waiting: table.waiting,
})
const asked = (on: PhoneAtTable) => on.asks.map(({ is }) => is)
/** Both read all of each other, and show the same. */
function meet(): void {
  for (const [on, other] of [
    [a, b],
    [b, a],
    [a, b],
  ] as const) {
    wait(5)
    on.read(other)
  }
  expect(shown(a)).toEqual(shown(b))
  expect(asked(a)).toEqual(asked(b))
}
const coats = (on: PhoneAtTable, potId: string) => on.table.pots[potId]?.dips.length

function newBucket(on: PhoneAtTable): void {
  const { facts } = on.table.buckets['a-bucket']!
  on.act({
    do: 'set-bucket',
    bucket: { ...facts, bucketId: 'fen', name: 'Fen', letter: 'F', pattern: 'dots' },
  })
}
function newStack(on: PhoneAtTable, bucketId: string): void {
  const coat = { bucketId, cover: { kind: 'full' }, holdS: 3 } as const
  on.act({ do: 'set-stack', stack: { stackId: 'other', name: 'Other', coats: [coat] } })
}

beforeEach(() => {
  at = hall()
  a = laidOn(new PhoneAtTable('a', at))
  b = new PhoneAtTable('b', at, 600_000)
  wait(5)
})

describe('taken back while the other, who had read of it, works with it', () => {
  test('a pot is asked about with its coat: still there, or off the table', () => {
    b.read(a)
    dip(b, 'a-1', 'a-bucket')
    a.act({ do: 'take-back' })
    expect(a.table.pots['a-1']).toBeUndefined()
    meet()
    expect(shown(a).waiting).toBeUndefined()
    expect(coats(a, 'a-1')).toBe(1)
    const [ask] = a.asks
    if (ask?.is !== 'gone') throw new Error('not asked')
    expect(ask).toMatchObject({ potId: 'a-1', used: { from: 'b' } })
    a.act({ do: 'settle', answer: { is: 'there', potId: ask.potId, hits: ask.hits } })
    expect(a.asks).toEqual([])
    meet()
    expect(shown(b).pots).toContainEqual(['a-1', 1, 'a-stack', false])
    expect(asked(b)).toEqual([])
  })

  test('a pot that is said to be off is off on both', () => {
    b.read(a)
    dip(b, 'a-1', 'a-bucket')
    a.act({ do: 'take-back' })
    meet()
    b.act({ do: 'settle', answer: { is: 'off', potId: 'a-1' } })
    meet()
    expect(asked(a)).toEqual([])
    expect(shown(a).pots).toContainEqual(['a-1', 1, 'a-stack', true])
  })

  test('a bucket stays with its coat, and is asked about', () => {
    newBucket(a)
    b.read(a)
    newStack(b, 'fen')
    b.act({ do: 'restack', potId: 'a-1', stackId: 'other' })
    dip(b, 'a-1', 'fen')
    a.act({ do: 'take-back' })
    expect(a.table.buckets.fen).toBeUndefined()
    meet()
    expect(asked(a)).toEqual(['removed'])
    expect(shown(a)).toMatchObject({ buckets: ['a-bucket', 'fen'], waiting: undefined })
    expect(coats(b, 'a-1')).toBe(1)
    const [ask] = b.asks
    if (ask?.is !== 'removed') throw new Error('not asked')
    b.act({ do: 'settle', answer: { is: 'so', thing: ask.thing } })
    meet()
    expect(asked(a)).toEqual([])
    expect(shown(a).buckets).toEqual(['a-bucket', 'fen'])
  })

  test('a stack stays under the pot that got it, and is asked about', () => {
    newStack(a, 'a-bucket')
    b.read(a)
    b.act({ do: 'restack', potId: 'a-1', stackId: 'other' })
    a.act({ do: 'take-back' })
    meet()
    expect(asked(a)).toEqual(['removed'])
    expect(shown(b).stacks).toEqual(['a-stack', 'other'])
  })

  test('what the pot stands on stays for it, though that was taken back as well', () => {
    newStack(a, 'a-bucket')
    wait(1)
    a.act({
      do: 'set-pot',
      pot: {
        ...a.table.pots['a-1']!.facts,
        potId: 'a-2',
        number: 33,
        place: { board: 'A', spot: 3 },
        stackId: 'other',
      },
    })
    b.read(a)
    dip(b, 'a-2', 'a-bucket')
    a.act({ do: 'take-back' })
    wait(1)
    a.act({ do: 'take-back' })
    expect(shown(a).stacks).toEqual(['a-stack'])
    meet()
    const [ask] = a.asks
    if (ask?.is !== 'gone') throw new Error('not asked')
    a.act({ do: 'settle', answer: { is: 'there', potId: ask.potId, hits: ask.hits } })
    meet()
    expect(shown(b).pots).toContainEqual(['a-2', 1, 'other', false])
    expect(shown(b).stacks).toEqual(['a-stack', 'other'])
  })

  test('a pot that the other\u2019s dip was moved onto is asked about', () => {
    b.read(a)
    dip(b, 'a-0', 'a-bucket')
    const [made] = b.table.pots['a-0']!.dips
    b.act({ do: 'was-other-pot', dipId: made!.dipId, potId: 'a-1' })
    a.act({ do: 'take-back' })
    meet()
    expect(asked(a)).toEqual(['gone'])
    expect(coats(a, 'a-1')).toBe(1)
  })
})

describe('taken back otherwise', () => {
  test('by who knows of the other\u2019s coat it is off the table with it, unasked, and put back with it', () => {
    b.read(a)
    dip(b, 'a-1', 'a-bucket')
    a.read(b)
    wait(5)
    const before = a.records
    a.act({ do: 'take-back' })
    expect(a.stepped(before, a.records.slice(before.length))).toEqual(a.table)
    meet()
    expect(asked(a)).toEqual([])
    expect(shown(b).pots).toContainEqual(['a-1', 1, 'a-stack', true])
    const gone = a.records
    a.act({ do: 'take-back' })
    expect(a.stepped(gone, a.records.slice(gone.length))).toEqual(a.table)
    meet()
    expect(shown(b).pots).toContainEqual(['a-1', 1, 'a-stack', false])
  })

  test('what nobody worked with is as if it had never been', () => {
    b.read(a)
    a.act({ do: 'take-back' })
    meet()
    expect(asked(b)).toEqual([])
    expect(b.table.pots['a-1']).toBeUndefined()
  })

  test('a change of what was there before takes nothing off', () => {
    const { facts } = a.table.pots['a-1']!
    a.act({ do: 'set-pot', pot: { ...facts, number: 50 } })
    b.read(a)
    dip(b, 'a-1', 'a-bucket')
    a.act({ do: 'take-back' })
    meet()
    expect(shown(b).pots).toContainEqual(['a-1', 1, 'a-stack', false])
    expect(b.table.pots['a-1']?.facts.number).toBe(32)
  })
})
