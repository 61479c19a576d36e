/** What is asked and told after a meeting of what is the table's, and of what one phone took away while another used it. */

import fc from 'fast-check'
import { beforeEach, describe, expect, test } from 'vitest'
import { seenFrom } from '../../src/table/fold/seen.ts'
import { asksOf } from '../../src/table/meeting/asks.ts'
import type { Action } from '../../src/table/model/action.ts'
import type { Answer, Ask } from '../../src/table/model/ask.ts'
import { type Hall, hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import { runsOf } from '../fixtures/runs.ts'

let at: Hall
let a: PhoneAtTable
let b: PhoneAtTable
let c: PhoneAtTable
const wait = (seconds: number) => {
  at.nowMs += seconds * 1000
}
const kinds = (on: PhoneAtTable) => on.asks.map(({ is }) => is)
const firstOf = <K extends Ask['is']>(on: PhoneAtTable, is: K): Extract<Ask, { is: K }> => {
  const ask = on.asks.find((one) => one.is === is)
  if (!ask) throw new Error(`${on.name} is not asked: ${is}`)
  return ask as Extract<Ask, { is: K }>
}
/** All read all, twice, so that each knows what each knew. */
const meet = (...phones: readonly PhoneAtTable[]) => {
  for (let round = 0; round < 2; round++)
    for (const on of phones) {
      wait(1)
      on.read(...phones.filter((other) => other !== on))
    }
}

beforeEach(() => {
  at = hall()
  a = laidOn(new PhoneAtTable('a', at))
  b = new PhoneAtTable('b', at, 600_000).read(a)
  c = new PhoneAtTable('c', at, -180_000).read(a)
  meet(a, b, c)
})

describe('settings of the table', () => {
  test('one that two changed apart is asked about with both values, until it is answered, on every phone', () => {
    a.act({ do: 'set-settings', settings: { wax: 'water' } })
    wait(5)
    b.act({ do: 'set-settings', settings: { wax: 'hot' } })
    meet(a, b, c)
    for (const on of [a, b, c]) {
      const { ways } = firstOf(on, 'changed')
      expect(ways.map(({ facts }) => facts)).toEqual([{ wax: 'water' }, { wax: 'hot' }])
    }
    const [way] = firstOf(c, 'changed').ways
    if (!way) throw new Error('two ways')
    wait(5)
    c.act({ do: 'settle', answer: { is: 'so', thing: { is: way.is, facts: way.facts } as never } })
    meet(a, b, c)
    for (const on of [a, b, c]) {
      expect(kinds(on)).not.toContain('changed')
      expect(on.table.settings.wax).toBe('water')
    }
  })

  test('two that are changed apart are two questions, one after the other', () => {
    for (const [on, wax, readyMeans] of [
      [a, 'water', 'thirsty'],
      [b, 'hot', 'clock'],
    ] as const)
      on.act({ do: 'set-settings', settings: { wax } }).act({ do: 'set-settings', settings: { readyMeans } })
    meet(a, b)
    expect(a.asks.filter(({ is }) => is === 'changed')).toHaveLength(2)
    for (let left = 2; left > 0; left--) {
      const [way] = firstOf(a, 'changed').ways
      if (!way) throw new Error('asked')
      wait(2)
      a.act({ do: 'settle', answer: { is: 'so', thing: way } })
      expect(a.asks.filter(({ is }) => is === 'changed')).toHaveLength(left - 1)
    }
    expect(a.table.settings).toMatchObject({ wax: 'water', readyMeans: 'thirsty' })
  })

  test('the same said on both, and what is one phone\u2019s own, is nothing to ask or tell', () => {
    for (const on of [a, b]) on.act({ do: 'set-settings', settings: { wax: 'water', hand: 'left' } })
    b.act({ do: 'set-settings', settings: { dripS: 20, units: 'us' } })
    meet(a, b)
    for (const on of [a, b]) expect(on.asks).toEqual([])
  })

  test('the firing that two planned apart is asked about', () => {
    for (const [on, cone] of [
      [a, '6'],
      [b, '10'],
    ] as const)
      on.act({ do: 'plan-firing', firing: { cone, make: 'american', riseCPerH: 60, holdMin: 0 } })
    meet(a, b)
    for (const on of [a, b]) {
      const { ways } = firstOf(on, 'changed')
      expect(ways.map(({ facts }) => 'cone' in facts && facts.cone)).toEqual(['6', '10'])
    }
  })

  test('a kiln and a pair of glazes that two changed apart are asked about, a new one is no news', () => {
    const kiln = {
      kilnId: 'k',
      chamber: { kind: 'round', diameterMm: 450, heightMm: 560 },
      shelves: [{ id: 's', kind: 'round', widthMm: 390, depthMm: 390, thickMm: 16, count: 4 }],
      posts: [{ lengthMm: 125, count: 6 }],
      spyHoles: [],
    } as const
    const pair = { overId: 'spare', underId: 'a-bucket', proved: 1, wrong: 0 }
    spare()
    a.write([{ kind: 'kiln-set', kiln }])
    a.write([{ kind: 'pair-set', pair }])
    meet(a, b, c)
    for (const on of [b, c]) expect(on.asks).toEqual([])
    a.write([{ kind: 'kiln-set', kiln: { ...kiln, posts: [{ lengthMm: 125, count: 9 }] } }])
    a.write([{ kind: 'pair-set', pair: { ...pair, proved: 2 } }])
    b.write([{ kind: 'kiln-set', kiln: { ...kiln, posts: [] } }])
    b.write([{ kind: 'pair-set', pair: { ...pair, wrong: 1 } }])
    meet(a, b, c)
    for (const on of [a, b, c])
      expect(on.asks.map((ask) => ask.is === 'changed' && ask.ways.map(({ is }) => is))).toEqual([
        ['kiln', 'kiln'],
        ['pair', 'pair'],
      ])
    for (let left = 2; left > 0; left--) {
      wait(5)
      c.act({ do: 'settle', answer: { is: 'so', thing: firstOf(c, 'changed').ways[0]! } })
    }
    meet(a, b, c)
    for (const on of [a, c]) expect(on.asks).toEqual([])
    for (const on of [a, b, c]) {
      expect(on.table.kilns?.k?.posts).toEqual([{ lengthMm: 125, count: 9 }])
      expect(Object.values(on.table.pairs)).toEqual([{ ...pair, proved: 2 }])
    }
    // Whose own word was overruled is told.
    expect(firstOf(b, 'heard').all.map(({ thing }) => thing.is)).toEqual(['kiln', 'pair'])
  })

  test('what one alone changed comes in and is told, with what it was here, until it is read', () => {
    b.act({ do: 'set-settings', settings: { readyMeans: 'thirsty', staleMin: 8 } })
    b.act({ do: 'set-board', board: { ...b.table.board, wallMm: 7 } })
    a.read(b)
    expect(a.table.settings).toMatchObject({ readyMeans: 'thirsty', staleMin: 8 })
    const { all } = firstOf(a, 'heard')
    expect(all.map(({ thing, before, from }) => [thing.facts, before?.facts, from])).toEqual([
      [{ readyMeans: 'thirsty' }, { readyMeans: 'touch' }, 'b'],
      [{ staleMin: 8 }, { staleMin: 5 }, 'b'],
      [expect.objectContaining({ wallMm: 7 }), expect.objectContaining({ wallMm: 5 }), 'b'],
    ])
    // Whoever changed it is told nothing.
    meet(a, b)
    expect(b.asks).toEqual([])
    const read = new Set(all.map(({ key }) => key))
    const left = () => asksOf(a.table, seenFrom(a.records, 'a'), read)
    expect(left()).toEqual([])
    // Read once, it is told again when it changes again, back too, and not when it is said again.
    wait(5)
    b.act({ do: 'set-settings', settings: { readyMeans: 'thirsty' } })
    a.read(b)
    expect(left()).toEqual([])
    b.act({ do: 'set-settings', settings: { readyMeans: 'clock' } })
    a.read(b)
    expect(left()).toMatchObject([{ is: 'heard', all: [{ thing: { facts: { readyMeans: 'clock' } } }] }])
    // Setting it here is an answer too, and stands on both.
    a.act({ do: 'set-settings', settings: { readyMeans: 'touch' } })
    expect(left()).toEqual([])
    b.read(a)
    expect(b.table.settings.readyMeans).toBe('touch')
    expect(firstOf(b, 'heard').all).toMatchObject([
      { thing: { facts: { readyMeans: 'touch' } }, before: { facts: { readyMeans: 'clock' } }, from: 'a' },
    ])
  })

  test('a change that was taken back is neither asked nor told', () => {
    const [set] = b.write([{ kind: 'settings-set', settings: { wax: 'water' } }])
    b.write([{ kind: 'taken-back', hit: set?.hit ?? '' }])
    meet(a, b)
    for (const on of [a, b]) expect(on.asks).toEqual([])
  })
})

/** A second bucket that no stack needs, known to all three, and a stack that no pot has. */
const spare = () => {
  const { bucketId: _, ...facts } = a.table.buckets['a-bucket']!.facts
  a.act({ do: 'set-bucket', bucket: { ...facts, bucketId: 'spare', name: 'Weir', letter: 'W' } })
  const coat = { bucketId: 'a-bucket', cover: { kind: 'full' }, holdS: 3 } as const
  a.act({ do: 'set-stack', stack: { stackId: 'spare', name: 'Once', coats: [coat] } })
  meet(a, b, c)
}

describe.each(['bucket', 'stack'] as const)(
  'a %s taken off on one and used or changed on the other',
  (thing) => {
    beforeEach(spare)
    const remove = (on: PhoneAtTable) =>
      on.act(
        thing === 'bucket'
          ? { do: 'remove-bucket', bucketId: 'spare' }
          : { do: 'remove-stack', stackId: 'spare' },
      )
    const change = (on: PhoneAtTable) =>
      thing === 'bucket'
        ? on.act({ do: 'stirred', bucketId: 'spare' })
        : on.act({ do: 'set-stack', stack: { ...on.table.stacks.spare!, name: 'Twice' } })
    const there = (on: PhoneAtTable) =>
      thing === 'bucket' ? 'spare' in on.table.buckets : 'spare' in on.table.stacks

    test.each([
      ['keep', 'first'],
      ['keep', 'last'],
      ['off', 'first'],
      ['off', 'last'],
    ] as const)('is asked about on all three and kept until then: %s, removed %s', (answer, when) => {
      const deeds = [() => remove(a), () => change(b)]
      for (const deed of when === 'first' ? deeds : deeds.reverse()) {
        deed()
        wait(5)
      }
      expect(there(a)).toBe(false)
      meet(a, b, c)
      for (const on of [a, b, c]) {
        expect(firstOf(on, 'removed')).toMatchObject({ thing: { is: thing } })
        expect(there(on)).toBe(true)
      }
      // Nothing of what goes on answers it.
      wait(60)
      a.act({ do: 'waxed', potId: 'a-0' })
      meet(a, b, c)
      const ask = firstOf(b, 'removed')
      wait(5)
      b.act({
        do: 'settle',
        answer: answer === 'keep' ? { is: 'so', thing: ask.thing } : { is: 'away', thing, id: 'spare' },
      })
      expect(b.asks).toEqual([])
      c.read(b)
      a.read(c)
      for (const on of [a, b, c]) {
        expect(on.asks).toEqual([])
        expect(there(on)).toBe(answer === 'keep')
      }
      expect(asOne(a)).toEqual(asOne(b))
      expect(asOne(c)).toEqual(asOne(b))
    })

    test('answered both ways apart it is asked again, and stays until then', () => {
      remove(a)
      change(b)
      meet(a, b)
      a.act({ do: 'settle', answer: { is: 'away', thing, id: 'spare' } })
      b.act({ do: 'settle', answer: { is: 'so', thing: firstOf(b, 'removed').thing } })
      meet(a, b)
      for (const on of [a, b]) {
        expect(kinds(on)).toEqual(['removed'])
        expect(there(on)).toBe(true)
      }
    })

    test('one that was taken off by somebody who knew of the use is gone, and nobody is asked', () => {
      change(b)
      meet(a, b)
      remove(a)
      meet(a, b, c)
      for (const on of [a, b, c]) {
        expect(on.asks).toEqual([])
        expect(there(on)).toBe(false)
      }
    })

    test('a removal taken back asks nothing', () => {
      remove(a).act({ do: 'take-back' })
      change(b)
      meet(a, b)
      for (const on of [a, b]) {
        expect(on.asks).toEqual([])
        expect(there(on)).toBe(true)
      }
    })
  },
)

test('what pots need by now can only be kept: the stack with its number, the bucket with the stack', () => {
  spare()
  a.act({ do: 'remove-stack', stackId: 'spare' }).act({ do: 'remove-bucket', bucketId: 'spare' })
  const pot = b.table.pots['a-1']!.facts
  b.act({ do: 'set-pot', pot: { ...pot, stackId: 'spare' } })
  const coat = { bucketId: 'spare', cover: { kind: 'full' }, holdS: 3 } as const
  b.act({ do: 'set-stack', stack: { stackId: 'other', name: 'Weirs', coats: [coat] } })
  meet(a, b)
  for (const on of [a, b])
    expect(on.asks).toMatchObject([
      { is: 'removed', thing: { is: 'bucket' }, neededBy: 'Weirs' },
      { is: 'removed', thing: { is: 'stack' }, neededBy: 32 },
    ])
  expect(a.try({ do: 'settle', answer: { is: 'away', thing: 'stack', id: 'spare' } })).toMatchObject({
    code: 'in-use',
    field: 'stack',
    facts: { by: 32 },
  })
  expect(a.try({ do: 'settle', answer: { is: 'away', thing: 'bucket', id: 'spare' } })).toMatchObject({
    code: 'in-use',
    field: 'bucket',
    facts: { by: 'Weirs' },
  })
})

/** The table without what is each phone's own, or told from each one's side. */
const asOne = (on: PhoneAtTable): unknown => {
  const { settings, buckets, stacks, pots, board, firing } = on.table
  const facts = Object.values(buckets).map((bucket) => bucket.facts)
  const { readyMeans, wax, staleMin } = settings
  return {
    facts: facts.sort((x, y) => (x.bucketId < y.bucketId ? -1 : 1)),
    // In no order of their own.
    stacks,
    set: { readyMeans, wax, staleMin, board, firing },
    pots: Object.fromEntries(
      Object.values(pots).map((pot) => [pot.facts.potId, [pot.gone, pot.facts.stackId]]),
    ),
  }
}

/** Something that one of three phones does, or two that meet. */
const deeds = fc.array(
  fc.record({
    by: fc.nat(2),
    what: fc.constantFrom(
      'wax',
      'ready',
      'firing',
      'board',
      'bucket-off',
      'stir',
      'bucket-set',
      'stack-off',
      'stack-set',
      'give',
      'pot-off',
      'meet',
      'meet',
    ),
    value: fc.nat(1),
    afterS: fc.integer({ min: 1, max: 120 }),
  }),
  { minLength: 4, maxLength: 16 },
)

function actionOf(on: PhoneAtTable, what: string, value: number): Action | undefined {
  const { buckets, stacks, pots, board } = on.table
  switch (what) {
    case 'wax':
      return { do: 'set-settings', settings: { wax: value ? 'water' : 'hot' } }
    case 'ready':
      return { do: 'set-settings', settings: { readyMeans: value ? 'thirsty' : 'clock' } }
    case 'firing':
      return {
        do: 'plan-firing',
        firing: { cone: value ? '6' : '9', make: 'american', riseCPerH: 60, holdMin: 0 },
      }
    case 'board':
      return { do: 'set-board', board: { ...board, wallMm: 5 + value } }
    case 'bucket-off':
      return { do: 'remove-bucket', bucketId: 'spare' }
    case 'stir':
      return { do: 'stirred', bucketId: 'spare' }
    case 'bucket-set':
      return buckets.spare && { do: 'set-bucket', bucket: { ...buckets.spare.facts, litres: 8 + value } }
    case 'stack-off':
      return { do: 'remove-stack', stackId: 'spare' }
    case 'stack-set':
      return stacks.spare && { do: 'set-stack', stack: { ...stacks.spare, name: value ? 'Once' : 'Twice' } }
    case 'give':
      return stacks.spare && { do: 'set-pot', pot: { ...pots['a-1']!.facts, stackId: 'spare' } }
    default:
      return { do: 'gone', potId: 'a-1' }
  }
}

/** What is asked, whoever is asked it. */
const questions = (on: PhoneAtTable): readonly string[] =>
  on.asks
    .filter(({ is }) => is !== 'heard')
    .map((ask) => {
      if (ask.is === 'changed') return JSON.stringify(ask.ways.map(({ is, facts }) => [is, facts]).sort())
      return ask.is === 'removed' ? `removed ${ask.thing.is}` : JSON.stringify([ask.is])
    })
    .sort()

const answerTo = (ask: Ask, nth: number): Answer => {
  switch (ask.is) {
    case 'changed':
      return { is: 'so', thing: ask.ways[nth % ask.ways.length]! }
    case 'removed': {
      const { thing, neededBy } = ask
      const id = thing.is === 'bucket' ? thing.facts.bucketId : thing.facts.stackId
      return nth % 2 || neededBy !== undefined ? { is: 'so', thing } : { is: 'away', thing: thing.is, id }
    }
    case 'gone':
      return nth % 2 ? { is: 'off', potId: ask.potId } : { is: 'there', potId: ask.potId, hits: ask.hits }
    default:
      throw new Error(ask.is)
  }
}

test('three phones have the same table and the same questions in any order, and none once all are answered', () => {
  let [settings, removed] = [0, 0]
  fc.assert(
    fc.property(deeds, fc.array(fc.nat(5), { minLength: 6, maxLength: 6 }), (done, turns) => {
      at = hall()
      a = laidOn(new PhoneAtTable('a', at))
      b = new PhoneAtTable('b', at, 600_000)
      c = new PhoneAtTable('c', at, -180_000)
      spare()
      const all = [a, b, c]
      for (const { by, what, value, afterS } of done) {
        wait(afterS)
        const on = all[by]!
        if (what === 'meet') on.read(all[(by + 1 + value) % 3]!)
        else {
          const action = actionOf(on, what, value)
          if (action) on.try(action)
        }
      }
      meet(...all)
      // In whatever order they meet once more, nothing comes of it.
      for (const turn of turns) all[turn % 3]!.read(all[(turn + 1) % 3]!)
      meet(...all)
      const asked = questions(a)
      for (const on of [b, c]) {
        expect(asOne(on)).toEqual(asOne(a))
        expect(questions(on)).toEqual(asked)
      }
      for (const ask of a.asks) {
        if (ask.is === 'changed' && ask.ways[0]?.is === 'settings') settings++
        if (ask.is !== 'removed') continue
        removed++
        for (const { table } of all)
          expect(ask.thing.is === 'bucket' ? table.buckets.spare : table.stacks.spare).toBeDefined()
      }
      for (let nth = 0; nth < 20; nth++) {
        const on = all[(nth + (turns[0] ?? 0)) % 3]!
        const ask = on.asks.find(({ is }) => is !== 'heard')
        if (!ask) break
        wait(2)
        on.act({ do: 'settle', answer: answerTo(ask, turns[nth % 6] ?? 0) })
        meet(...all)
      }
      for (const on of all) {
        expect(questions(on)).toEqual([])
        expect(asOne(on)).toEqual(asOne(a))
      }
    }),
    { numRuns: runsOf(40, 0.2) },
  )
  expect(settings).toBeGreaterThan(3)
  expect(removed).toBeGreaterThan(3)
}, 7_200_000)
