/** A plan that was handed on, taken by a phone that has a word of its own on what stands in it. */

import { beforeEach, expect, test } from 'vitest'
import { atTable, classOf } from '../../src/table/entry/handout.ts'
import { type Hall, hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import '../../src/table/forecast/walls.ts'

let at: Hall
let a: PhoneAtTable
let b: PhoneAtTable
let c: PhoneAtTable
const wait = (seconds: number) => {
  at.nowMs += seconds * 1000
}
const facts = (on: PhoneAtTable) => on.table.pots['a-1']!.facts
const setWall = (on: PhoneAtTable, wallMm: number) =>
  on.act({ do: 'set-pot', pot: { ...facts(on), shape: { ...facts(on).shape, wallMm } } })
const keptOf = (on: PhoneAtTable, from: PhoneAtTable) =>
  atTable(on.table, classOf(from.table)).kept.map(({ potId }) => potId)
const take = (on: PhoneAtTable, from: PhoneAtTable) =>
  on.try({ do: 'take-handout', handout: classOf(from.table) })
function meet(): void {
  for (let round = 0; round < 2; round++)
    for (const on of [a, b, c]) {
      wait(2)
      on.read(...[a, b, c].filter((other) => other !== on))
    }
  for (const on of [b, c]) {
    expect(on.table.stacks).toEqual(a.table.stacks)
    expect(facts(on)).toEqual(facts(a))
    expect(on.asks.map(({ is }) => is)).toEqual(a.asks.map(({ is }) => is))
  }
}

beforeEach(() => {
  at = hall()
  a = laidOn(new PhoneAtTable('a', at))
  b = new PhoneAtTable('b', at, 600_000)
  c = new PhoneAtTable('c', at, -180_000)
  wait(5)
})

test('its own word on a pot that it read of stays, is told, and is the word on all', () => {
  b.read(a)
  wait(5)
  setWall(b, 3)
  expect(keptOf(b, a)).toEqual(['a-1'])
  take(b, a)
  expect(facts(b).shape.wallMm).toBe(3)
  meet()
  expect(facts(a).shape.wallMm).toBe(3)
  expect(a.asks).toEqual([])
})

test('its own word stays beside the plan of a third phone, which had read of the pot before', () => {
  b.read(a)
  c.read(b)
  wait(5)
  setWall(b, 3)
  take(b, c)
  meet()
  expect(facts(a).shape.wallMm).toBe(3)
})

test('own coats of a pot stay', () => {
  b.read(a)
  wait(5)
  const coats = [{ bucketId: 'a-bucket', cover: { kind: 'full' }, holdS: 5 }] as const
  b.act({ do: 'set-plan', potId: 'a-1', coats })
  take(b, a)
  meet()
  for (const on of [a, b, c]) expect(on.table.pots['a-1']?.ownPlan).toEqual(coats)
})

test('who set a pot up keeps its new number beside an older plan of it', () => {
  take(b, a)
  wait(5)
  a.act({ do: 'set-pot', pot: { ...facts(a), number: 50 } })
  wait(5)
  expect(keptOf(a, b)).toEqual(['a-1'])
  take(a, b)
  expect(facts(a).number).toBe(50)
  meet()
  expect(facts(b).number).toBe(50)
})

test('a pot that is known of the other phone alone is taken as the plan has it', () => {
  b.read(a)
  wait(5)
  setWall(a, 4)
  expect(keptOf(b, a)).toEqual([])
  take(b, a)
  expect(facts(b).shape.wallMm).toBe(4)
  meet()
  expect(a.asks).toEqual([])
})

test('coats of a stack that it said itself, taken otherwise of a plan, are its word to all', () => {
  b.read(a)
  wait(5)
  const stack = b.table.stacks['a-stack']!
  b.act({ do: 'set-stack', stack: { ...stack, coats: stack.coats.slice(0, 1) } })
  expect(atTable(b.table, classOf(a.table)).stacks).toMatchObject([{ is: 'other' }])
  take(b, a)
  expect(b.table.stacks['a-stack']).toEqual(stack)
  meet()
  expect(a.table.stacks['a-stack']).toEqual(stack)
  expect(a.asks).toEqual([])
})

test('and are asked about where another changed that stack unread', () => {
  b.read(a)
  wait(5)
  const stack = b.table.stacks['a-stack']!
  const [coat] = stack.coats
  b.act({ do: 'set-stack', stack: { ...stack, coats: stack.coats.slice(0, 1) } })
  const older = classOf(a.table)
  a.act({ do: 'set-stack', stack: { ...stack, coats: [{ ...coat!, holdS: 7 }] } })
  wait(5)
  b.act({ do: 'take-handout', handout: older })
  meet()
  expect(b.asks.map(({ is }) => is)).toEqual(['changed'])
})

test('two stacks of one name in a plan stay two', () => {
  b.read(a)
  wait(5)
  const { coats } = a.table.stacks['a-stack']!
  a.act({ do: 'set-stack', stack: { stackId: 'second', name: 'Plain', coats: coats.slice(0, 1) } })
  const { facts: pail } = a.table.buckets['a-bucket']!
  a.act({ do: 'set-bucket', bucket: { ...pail, bucketId: 'pail', letter: 'P', pattern: 'dots' } })
  const coat = { bucketId: 'pail', cover: { kind: 'full' }, holdS: 4 } as const
  a.act({ do: 'set-stack', stack: { stackId: 'third', name: 'Third', coats: [coat] } })
  take(b, a)
  expect(b.table.stacks).toEqual(a.table.stacks)
  meet()
  expect(Object.keys(c.table.stacks).sort()).toEqual(['a-stack', 'second', 'third'])
})

test('a plan with a word that its author took back stays on no phone beside what stands', () => {
  c.read(a)
  b.read(a)
  wait(5)
  setWall(b, 3)
  wait(5)
  a.read(b)
  const older = classOf(a.table)
  wait(5)
  b.act({ do: 'take-back' })
  wait(5)
  c.read(b)
  wait(5)
  c.act({ do: 'take-handout', handout: older })
  expect(facts(c).shape.wallMm).toBe(5)
  meet()
  expect(facts(c).shape.wallMm).toBe(5)
})

test('a plan taken onto a stack of that name, before its own was read, leaves the pot on its own', () => {
  laidOn(b, 41)
  const wide = (on: PhoneAtTable) => {
    const pot = on.table.pots['b-0']!.facts
    on.act({ do: 'set-pot', pot: { ...pot, shape: { ...pot.shape, wallMm: 7 } } })
  }
  take(a, b)
  expect(a.table.pots['b-0']?.facts.stackId).toBe('a-stack')
  wait(5)
  wide(b)
  wait(5)
  take(a, b)
  expect(a.table.pots['b-0']?.facts).toMatchObject({ stackId: 'a-stack', shape: { wallMm: 7 } })
  meet()
  for (const on of [a, b, c]) expect(on.table.pots['b-0']?.facts).toEqual(b.table.pots['b-0']!.facts)
  expect(a.table.pots['b-0']?.facts.stackId).toBe('b-stack')
})

test('who clears its table says anew what it takes by a plan then, to all', () => {
  laidOn(b, 41)
  wait(5)
  a.read(b)
  wait(5)
  const plan = classOf(a.table)
  b.act({ do: 'clear-table' })
  wait(5)
  b.act({ do: 'take-handout', handout: plan })
  const letters = (on: PhoneAtTable) =>
    ['a-bucket', 'b-bucket'].map((id) => on.table.buckets[id]?.facts.letter).join()
  const there = letters(b)
  for (const on of [a, c, b]) {
    wait(2)
    on.read(...[a, b, c].filter((other) => other !== on))
  }
  expect(there).toBe('G,A')
  expect([a, b, c].map(letters)).toEqual([there, there, there])
})
