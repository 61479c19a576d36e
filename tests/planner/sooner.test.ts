import { describe, expect, it } from 'vitest'
import { firstPlan, type Plan, type PlanInput } from '../../src/planner/index.ts'
import { exampleFour, MIN } from './boards.ts'
import { replan } from './plain.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

const WORK = 200_000
const DRIES_S = 150 * MIN

/** Example 4 with its first bucket open and stirred, and `washed`, if any, too wet to be dipped for hours. */
const table = (washed?: string): PlanInput => {
  const input = exampleFour()
  return {
    ...input,
    hands: [{ freeAtS: 0, open: { bucketId: 'G', stirEndS: 0, decanted: false } }],
    pots: input.pots.map((pot) => (pot.id === washed ? { ...pot, readyAtS: DRIES_S } : pot)),
  }
}

/** When the pots get their first coat, but for one. */
const firstDips = (found: Plan, but: string): readonly number[] =>
  found.actions.flatMap((action) =>
    action.kind === 'dip' && action.coat === 0 && action.potId !== but ? [action.startS] : [],
  )

describe.each(['S1-1', 'S2-1'])('%s was washed off and drinks again in hours', (washed) => {
  const input = table(washed)
  const told = plan(table(), WORK)

  it.each([
    ['told anew', () => plan(input, WORK)],
    ['at once', () => firstPlan(input)],
    ['told again', () => replan(input, told, WORK).plan],
    ['told again at once', () => firstPlan(input, told)],
  ])('no other pot waits for it beside an open bucket: %s', (_, tell) => {
    const found = tell()
    expect(faults(input, found)).toEqual([])
    const dips = firstDips(found, washed)
    expect(dips).toHaveLength(11)
    // Eleven dips, four set-ups and a wait for the second bucket.
    expect(Math.max(...dips)).toBeLessThan(45 * MIN)
  })
})
