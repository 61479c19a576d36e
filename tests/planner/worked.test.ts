import { describe, expect, it } from 'vitest'
import type { PlanInput } from '../../src/planner/index.ts'
import {
  bucket,
  coat,
  exampleFive,
  exampleFour,
  exampleOne,
  exampleThree,
  exampleTwo,
  MIN,
} from './boards.ts'
import { byHabit } from './plain.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

/** Worked by hand; 2 and 3 by trying every order. Finish in minutes, openings, re-stirs. */
const ANSWERS: [string, () => PlanInput, number, number, number][] = [
  ['1, one pot, overlap', exampleOne, 40, 3, 0],
  ['2, three alike pots', exampleTwo, 19, 2, 0],
  ['3, crossed stacks', exampleThree, 23, 3, 1],
  ['4, twelve pots, four stacks, four buckets', exampleFour, 47, 4, 3],
]

describe.each(ANSWERS)('worked example %s', (_, input, finishMin, openings, restirs) => {
  it.each([1, 2, 3, 4, 5])('comes out as given with seed %i', (seed) => {
    const found = plan({ ...input(), seed })
    expect(faults(input(), found)).toEqual([])
    expect([found.finishS / MIN, found.openings, found.restirs]).toEqual([finishMin, openings, restirs])
  })
})

describe.each([1, 2, 3, 4, 5])('worked example 5, deadline, with seed %i', (seed) => {
  const clock = (text: string) => Number(text.split(':')[0]) * 3600 + Number(text.split(':')[1]) * 60
  it('meets the first deadline with 2 h 50 of slack', () => {
    const input = { ...exampleFive(70, 120), seed }
    const found = plan(input)
    expect(faults(input, found)).toEqual([])
    expect(found).toMatchObject({
      finishS: clock('11:40'),
      dryAtS: clock('13:40'),
      latenessS: 0,
      slackS: 170 * MIN,
    })
  })
  it('is late by 10 min in the second, and says the latest start', () => {
    const input = { ...exampleFive(130, 240), seed }
    const found = plan(input)
    expect(faults(input, found)).toEqual([])
    expect(found).toMatchObject({ finishS: clock('12:40'), dryAtS: clock('16:40'), latenessS: 10 * MIN })
    // The latest start is now and the slack.
    expect(input.nowS + found.slackS!).toBe(clock('10:20'))
  })
  it('has 15 min to spare without its collar round of 25 min', () => {
    const base = exampleFive(130, 240)
    const coats = [coat('X', 100), coat('Y', 24), coat('Z', 0, true)]
    const table = { ...base, buckets: [bucket('X'), bucket('Y'), bucket('Z')], seed }
    const [one] = base.pots
    expect(plan({ ...table, pots: [{ ...one!, coats }] })).toMatchObject({ latenessS: 10 * MIN })
    const without = plan({ ...table, pots: [{ ...one!, coats: coats.slice(0, 2) }] })
    expect(without).toMatchObject({ dryAtS: clock('16:15'), slackS: 15 * MIN })
  })
})

describe('habits on the worked examples', () => {
  it('takes 51 min and 6 openings pot by pot in example 2', () => {
    const found = byHabit(exampleTwo(), 'potByPot')
    expect([found.finishS / MIN, found.openings]).toEqual([51, 6])
  })
  it('takes 114 and 318 min in example 4', () => {
    const stacks = byHabit(exampleFour(), 'stackByStack')
    const pots = byHabit(exampleFour(), 'potByPot')
    expect([stacks.finishS / MIN, stacks.openings]).toEqual([114, 10])
    expect([pots.finishS / MIN, pots.openings]).toEqual([318, 30])
  })
})
