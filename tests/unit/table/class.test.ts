/** A class at one table: one phone hands its plan on, others take their pots of it, and it reads them again. */
import { beforeEach, describe, expect, it } from 'vitest'
import type { Handout } from '../../../shared/nouns.ts'
import { atTable, classOf, forOne, handoutOf, namesIn } from '../../../src/table/entry/handout.ts'
import { twinsOf } from '../../../src/table/meeting/asks.ts'
import { potsOnTable } from '../../../src/table/model/plan.ts'
import type { Table } from '../../../src/table/model/state.ts'
import { type Hall, hall, PhoneAtTable } from '../../fixtures/phones.ts'
import { Play } from './play.ts'

/** The table's pots by their names, as its class page gives them. */
function given(play: Play): Play {
  const give = (number: number, whose: string) => {
    const pot = Object.values(play.table.pots).find(({ facts }) => facts.number === number)
    if (pot) play.act({ do: 'set-pot', pot: { ...pot.facts, whose } })
  }
  for (const [number, whose] of [
    [31, 'Wren'],
    [33, 'Wren'],
    [34, 'Alder'],
    [37, 'Alder'],
  ] as const)
    give(number, whose)
  return play
}
const numbers = (handout: Handout) => handout.class?.pots.map(({ number }) => number)

describe('a class plan', () => {
  const teacher = given(new Play().act({ do: 'lay-demo' }))

  it('holds every pot without a coat, with its name, and none that has one', () => {
    const plan = classOf(teacher.table)
    expect(namesIn(plan.class?.pots ?? [])).toEqual(['Alder', 'Wren'])
    const begun = given(new Play().act({ do: 'lay-demo' }))
    begun.act({ do: 'count-coats', potId: 'demo.31', coats: 1 })
    expect(numbers(classOf(begun.table))).toEqual(numbers(plan)?.filter((number) => number !== 31))
  })

  it('lacks the lid of a jar that has a coat', () => {
    const laid = given(new Play().act({ do: 'lay-demo' }))
    laid.act({
      do: 'set-pot',
      pot: {
        number: 31,
        lidOf: 'demo.31',
        stackId: 'demo.doorstep',
        shape: { form: 'lid', heightMm: 30, rimMm: 80, wallMm: 4, footLineMm: 4 },
      },
    })
    expect(classOf(laid.table).class?.pots.map(({ lidOf }) => lidOf)).toContain('demo.31')
    laid.act({ do: 'count-coats', potId: 'demo.31', coats: 1 })
    expect(classOf(laid.table).class?.pots.map(({ lidOf }) => lidOf)).not.toContain('demo.31')
  })

  it('is taken by name: the pots of one person with lids, own plans, and what all share', () => {
    const laid = given(new Play().act({ do: 'lay-demo' }))
    const lid = {
      number: 31,
      lidOf: 'demo.31',
      stackId: 'demo.doorstep',
      shape: { form: 'lid', heightMm: 30, rimMm: 80, wallMm: 4, footLineMm: 4 },
    } as const
    laid.act({ do: 'set-board', board: { ...laid.table.board, absorption: 0.09 } })
    laid.act({ do: 'set-pot', pot: lid })
    const coats = laid.table.stacks['demo.doorstep']?.coats ?? []
    laid.act({ do: 'set-plan', potId: 'demo.31', coats })
    const own = classOf(laid.table)
    const play = new Play().act({ do: 'take-handout', handout: forOne(own, 'Wren') })
    const pots = Object.values(play.table.pots).map(({ facts }) => facts)
    expect(pots.map(({ number, lidOf }) => [number, lidOf])).toEqual([
      [31, undefined],
      [33, undefined],
      [31, 'demo.31'],
    ])
    expect(play.table.pots['demo.31']?.ownPlan).toEqual(coats)
    expect(play.table.board.absorption).toBe(0.09)
    expect(Object.keys(play.table.stacks).sort()).toEqual(Object.keys(teacher.table.stacks).sort())
    expect(play.try({ do: 'take-handout', handout: forOne(own, 'Wren') })?.code).toBe('nothing-to-do')
  })

  it('is taken beside an own pot of its number or on its place, which is asked about', () => {
    const plan = classOf(teacher.table)
    const [first, second] = plan.class?.pots ?? []
    if (!first || !second) throw new Error('no pots')
    const play = new Play().act({ do: 'take-handout', handout: { ...plan, class: undefined } as Handout })
    const { potId: _, ...pot } = first
    play.act({ do: 'set-pot', pot: { ...pot, potId: 'own', place: second.place } })
    play.act({ do: 'take-handout', handout: plan })
    expect(play.table.pots[first.potId]?.facts).toEqual(first)
    expect(twinsOf(play.table)).toEqual([
      { is: 'number', potIds: [first.potId, 'own'] },
      { is: 'place', potIds: ['own', second.potId] },
    ])
  })

  it('is taken again with pots that changed places, and goes by the last plan', () => {
    const play = new Play().act({ do: 'take-handout', handout: classOf(teacher.table) })
    const places = () => ['demo.31', 'demo.33'].map((potId) => play.table.pots[potId]?.facts.place)
    const [one, other] = places()
    const moved = given(new Play().act({ do: 'lay-demo' }))
    if (!other) throw new Error('no place')
    moved.act({ do: 'move', potId: 'demo.31', place: other })
    play.act({ do: 'take-handout', handout: classOf(moved.table) })
    expect(places()).toEqual([other, one])
    // And once more.
    play.act({ do: 'take-handout', handout: classOf(teacher.table) })
    expect(places()).toEqual([one, other])
    expect(twinsOf(play.table)).toEqual([])
  })

  it('takes back nothing that was said here since', () => {
    const plan = classOf(teacher.table)
    const play = new Play().act({ do: 'take-handout', handout: plan, name: 'Wren' })
    const facts = play.table.pots['demo.31']?.facts
    if (!facts) throw new Error('no pot')
    play.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, wallMm: 9 } } })
    const coats = (play.table.stacks['demo.doorstep']?.coats ?? []).slice(0, 1)
    play.act({ do: 'set-plan', potId: 'demo.33', coats })
    const changed = given(new Play().act({ do: 'lay-demo' }))
    for (const potId of ['demo.31', 'demo.33']) {
      const pot = changed.table.pots[potId]?.facts
      if (pot) changed.act({ do: 'set-pot', pot: { ...pot, shape: { ...pot.shape, wallMm: 6 } } })
    }
    const later = classOf(changed.table)
    expect(play.try({ do: 'take-handout', handout: later, name: 'Wren' })?.code).toBe('nothing-to-do')
    expect(atTable(play.table, later, 'Wren').kept.map(({ number }) => number)).toEqual([31, 33])
    expect(play.table.pots['demo.31']?.facts.shape.wallMm).toBe(9)
    expect(play.table.pots['demo.33']?.ownPlan).toEqual(coats)
  })

  it('takes a pot that is somebody else\u2019s by now off the bench, unless it was waxed there, and gives it back', () => {
    const play = new Play().act({ do: 'take-handout', handout: classOf(teacher.table), name: 'Wren' })
    play.act({ do: 'waxed', potId: 'demo.33' })
    const others = given(new Play().act({ do: 'lay-demo' }))
    for (const potId of ['demo.31', 'demo.33']) {
      const pot = others.table.pots[potId]?.facts
      if (pot) others.act({ do: 'set-pot', pot: { ...pot, whose: 'Alder' } })
    }
    play.act({ do: 'take-handout', handout: classOf(others.table), name: 'Wren' })
    expect(potsOnTable(play.table).map(({ facts }) => facts.number)).toEqual([33])
    play.act({ do: 'take-handout', handout: classOf(teacher.table), name: 'Wren' })
    expect(potsOnTable(play.table).map(({ facts }) => facts.number)).toEqual([31, 33])
  })

  it('leaves out a pot that left this table, and refuses a name of blanks', () => {
    const play = new Play().act({ do: 'take-handout', handout: forOne(classOf(teacher.table), 'Wren') })
    play.act({ do: 'gone', potId: 'demo.31' })
    const again = play.try({ do: 'take-handout', handout: forOne(classOf(teacher.table), 'Wren') })
    expect(again?.code).toBe('nothing-to-do')
    const facts = play.table.pots['demo.33']?.facts
    if (!facts) throw new Error('no pot')
    expect(play.try({ do: 'set-pot', pot: { ...facts, whose: '  ' } })).toMatchObject({
      code: 'missing',
      field: 'whose',
    })
  })
})

describe('when the teacher reads the phones of the class', () => {
  let at: Hall
  let teacher: PhoneAtTable
  let student: PhoneAtTable
  beforeEach(() => {
    at = hall()
    teacher = new PhoneAtTable('t', at)
    student = new PhoneAtTable('s', at, -300_000)
    const laid = given(new Play().act({ do: 'lay-demo' })).table
    const { class: of, ...stacks } = classOf(laid)
    teacher.act({ do: 'take-handout', handout: stacks })
    for (const pot of of?.pots ?? []) teacher.act({ do: 'set-pot', pot })
    // What was entered here is this phone's own word.
    teacher.records = teacher.records.map((record) => {
      const { handed: _, ...event } = record.event
      return { ...record, event }
    })
  })
  const mine = (pots: Table['pots']) => pots['demo.31']

  it('nothing is asked, all coats are there, and a plan on old paper overrules nothing', () => {
    const paper = forOne(classOf(teacher.table), 'Wren')
    const facts = mine(teacher.table.pots)?.facts
    if (!facts) throw new Error('no pot')
    teacher.act({ do: 'set-pot', pot: { ...facts, number: 51 } })
    const stack = teacher.table.stacks['demo.tideline']
    if (!stack) throw new Error('no stack')
    teacher.act({ do: 'set-stack', stack: { ...stack, name: 'Tideline, twice' } })
    at.nowMs += 60_000
    student.act({ do: 'take-handout', handout: paper })
    student.act({ do: 'waxed', potId: 'demo.31' }).act({ do: 'waxed', potId: 'demo.33' })
    // Who has the student's word alone goes by that.
    const other = new PhoneAtTable('o', at).read(student)
    expect(mine(other.table.pots)).toMatchObject({ facts: { number: 31 }, waxedAt: other.now })
    teacher.read(student)
    expect(teacher.asks).toEqual([])
    expect(mine(teacher.table.pots)).toMatchObject({ facts: { number: 51 }, waxedAt: teacher.now })
    expect(teacher.table.stacks['demo.tideline']?.name).toBe('Tideline, twice')
    student.read(teacher)
    expect(student.asks).toEqual([])
    expect(mine(student.table.pots)).toMatchObject({ facts: { number: 51 }, waxedAt: student.now })
  })

  it('a change of its own by the student is asked about', () => {
    student.act({ do: 'take-handout', handout: forOne(classOf(teacher.table), 'Wren') })
    const facts = mine(student.table.pots)?.facts
    if (!facts) throw new Error('no pot')
    student.act({ do: 'set-pot', pot: { ...facts, number: 52 } })
    teacher.read(student)
    expect(teacher.asks.map(({ is }) => is)).toEqual(['changed'])
  })

  it('a pot that left one student\u2019s bench for another\u2019s stands on the teacher\u2019s', () => {
    student.act({ do: 'take-handout', handout: classOf(teacher.table), name: 'Wren' })
    const facts = mine(teacher.table.pots)?.facts
    if (!facts) throw new Error('no pot')
    teacher.act({ do: 'set-pot', pot: { ...facts, whose: 'Alder' } })
    at.nowMs += 1000
    student.act({ do: 'take-handout', handout: classOf(teacher.table), name: 'Wren' })
    expect(mine(student.table.pots)?.gone).toBe(true)
    teacher.read(student)
    expect(mine(teacher.table.pots)?.gone).toBe(false)
    student.read(teacher)
    expect(mine(student.table.pots)?.gone).toBe(true)
  })

  it('a plan taken again says nothing against what the teacher changed since, and asks nothing', () => {
    const set = (wallMm: number) => {
      const facts = mine(teacher.table.pots)?.facts
      if (facts) teacher.act({ do: 'set-pot', pot: { ...facts, shape: { ...facts.shape, wallMm } } })
      at.nowMs += 1000
    }
    const wall = ({ table }: PhoneAtTable) => mine(table.pots)?.facts.shape.wallMm
    student.act({ do: 'take-handout', handout: classOf(teacher.table), name: 'Wren' })
    set(7)
    const paper = classOf(teacher.table)
    set(8)
    student.act({ do: 'take-handout', handout: paper, name: 'Wren' })
    expect(wall(student)).toBe(7)
    at.nowMs += 1000
    teacher.read(student)
    expect(teacher.asks).toEqual([])
    expect(wall(teacher)).toBe(8)
  })

  it('an old plan taken again says nothing against the coats that the teacher gave a stack since', () => {
    const coats = ({ table }: PhoneAtTable) => table.stacks['demo.doorstep']?.coats.map(({ holdS }) => holdS)
    const paper = classOf(teacher.table)
    student.act({ do: 'take-handout', handout: paper, name: 'Wren' })
    at.nowMs += 1000
    const stack = teacher.table.stacks['demo.doorstep']!
    teacher.act({ do: 'set-stack', stack: { ...stack, coats: [{ ...stack.coats[0]!, holdS: 9 }] } })
    at.nowMs += 1000
    student.act({ do: 'take-handout', handout: classOf(teacher.table), name: 'Wren' })
    expect(coats(student)).toEqual([9])
    at.nowMs += 1000
    student.act({ do: 'take-handout', handout: paper, name: 'Wren' })
    at.nowMs += 1000
    teacher.read(student)
    student.read(teacher)
    for (const on of [teacher, student]) {
      expect(coats(on)).toEqual([9])
      expect(on.asks).toEqual([])
    }
    // What the student gave it by its own hand is another thing.
    at.nowMs += 1000
    student.act({ do: 'set-stack', stack: { ...stack, coats: [{ ...stack.coats[0]!, holdS: 4 }] } })
    teacher.read(student)
    expect(coats(teacher)).toEqual([4])
  })

  it('a stack that was removed and taken anew stands again', () => {
    const stacks = handoutOf(teacher.table)
    student.act({ do: 'take-handout', handout: stacks }).read(teacher)
    for (const potId of Object.keys(student.table.pots)) student.act({ do: 'gone', potId })
    at.nowMs += 1000
    student.act({ do: 'remove-stack', stackId: 'demo.doorstep' })
    at.nowMs += 1000
    student.act({ do: 'take-handout', handout: stacks })
    expect(student.table.stacks['demo.doorstep']).toEqual(teacher.table.stacks['demo.doorstep'])
  })

  it('bench alone is of one phone, whoever reads it', () => {
    student.act({ do: 'set-settings', settings: { student: true } })
    teacher.read(student)
    expect(teacher.table.settings.student).toBe(false)
    expect(student.table.settings.student).toBe(true)
  })
})
