import { describe, expect, it } from 'vitest'
import { foresee, type Odds } from '../../src/planner/index.ts'
import { board, bucket, exampleFive, exampleFour, exampleOne, MIN, pot, twoHands } from './boards.ts'
import { generate } from './generate.ts'
import { plan } from './plan.ts'

const CERTAIN: Odds = { betweenS: [30], unseen: 0, slackS: 0, meanBetweenS: 30, pauses: 0, pots: {} }
const HANDS: Odds = {
  betweenS: [30, 50, 70, 90],
  unseen: 0,
  slackS: 0,
  meanBetweenS: 30,
  pauses: 0.03,
  pots: {},
}

const WORK = 20_000

describe('how an order may come out', () => {
  it('is the plan itself where nothing can differ', () => {
    for (const input of [exampleOne(), exampleFour(), { ...exampleFour(), hands: twoHands() }]) {
      const told = plan(input, WORK)
      const { finishS, dryAtS } = foresee(input, told, CERTAIN)!
      expect(finishS).toEqual({ lower: told.finishS, likely: told.finishS, upper: told.finishS })
      expect(dryAtS.upper).toBe(told.dryAtS)
    }
    expect(foresee(board([], []), plan(board([], [])), CERTAIN)).toBeNull()
  })

  it('is a band that slower hands and longer waits push out, and the same each time', () => {
    for (let seed = 1; seed <= 5; seed++) {
      const input = { ...generate(seed, { pots: [6, 12], coats: [2, 3], gridS: 1 }), seed: 1 }
      const told = plan(input, WORK)
      const seen = foresee(input, told, HANDS)!
      expect(foresee(input, told, HANDS)).toEqual(seen)
      expect(seen.finishS.lower).toBeLessThan(seen.finishS.likely)
      expect(seen.finishS.likely).toBeLessThan(seen.finishS.upper)
      expect(seen.finishS.lower).toBeGreaterThan(told.finishS)
      const pots = Object.fromEntries(
        input.pots.map(({ id, coats, kilnDryS }) => [
          id,
          {
            readyLateS: 0,
            waitsLateS: coats.map(({ waitAfterS }) => 2 * waitAfterS),
            kilnLateS: 2 * kilnDryS,
          },
        ]),
      )
      expect(foresee(input, told, { ...HANDS, pots })!.dryAtS.upper).toBeGreaterThan(seen.dryAtS.upper)
    }
  })

  it('tells the same hours of the kiln when a coat has gone on as it was told', () => {
    const wide = { readyLateS: 0, waitsLateS: [0], kilnLateS: 1200 * MIN }
    const pots = ['A', 'B', 'C'].map((id) => pot(id, ['X'], [], { kilnDryS: 600 * MIN }))
    const before = board([bucket('X', 3, 1, 60)], pots)
    const told = plan(before)
    const [first] = told.actions.filter((action) => action.kind === 'dip')
    if (first?.kind !== 'dip') throw new Error('no dip')
    const odds = (ids: readonly string[]): Odds => ({
      ...CERTAIN,
      pots: Object.fromEntries(ids.map((id) => [id, wide])),
    })
    const asTold = foresee(before, told, odds(['A', 'B', 'C']))!
    const left = pots.filter(({ id }) => id !== first.potId)
    const open = { bucketId: 'X', stirEndS: first.startS, decanted: false }
    const after = {
      ...before,
      nowS: first.endS,
      pots: left.map((one) => ({ ...one, readyAtS: first.endS })),
      hands: [{ freeAtS: first.endS, open }] as const,
    }
    const done = { [first.potId]: { outAtS: first.endS, dryS: 600 * MIN, dryLateS: 1200 * MIN } }
    const seen = foresee(after, plan(after), { ...odds(left.map(({ id }) => id)), done })!
    expect(seen.dryAtS.upper).toBeGreaterThan(seen.dryAtS.likely + 60 * MIN)
    for (const edge of ['lower', 'likely', 'upper'] as const)
      expect(Math.abs(seen.dryAtS[edge] - asTold.dryAtS[edge])).toBeLessThan(MIN)
  })

  it('says how often the kiln’s hour is missed', () => {
    const odds = (workMin: number, dryMin: number) => {
      const input = exampleFive(workMin, dryMin)
      const waits = { readyLateS: 0, waitsLateS: [workMin * 2 * MIN, 0], kilnLateS: dryMin * 1.2 * MIN }
      return foresee(input, plan(input), { ...CERTAIN, pots: { P1: waits } })!.lateOdds!
    }
    expect(odds(70, 120)).toBeLessThan(0.1)
    // Late by ten minutes as likely as not, and more.
    expect(odds(130, 240)).toBeGreaterThan(0.5)
    expect(odds(115, 230)).toBeGreaterThan(0.1)
    expect(odds(115, 230)).toBeLessThan(0.9)
    const free = exampleFour()
    expect(foresee(free, plan(free, WORK), HANDS)!.lateOdds).toBeNull()
  })

  it('knows what ten minutes more cost: all of it where hands are the last to wait for, nothing in a long wait', () => {
    const busy = board([bucket('X')], [pot('A', ['X'], []), pot('B', ['X'], [])])
    expect(foresee(busy, plan(busy), CERTAIN)!.interruptionS).toEqual([10 * MIN])
    // A is wet for an hour; B can be dipped at any time in it.
    const wide = board(
      [bucket('X')],
      [pot('A', ['X'], [], { readyAtS: 3600 }), pot('B', ['X'], [], { readyAtS: 300 })],
    )
    expect(foresee(wide, plan(wide), CERTAIN)!.interruptionS[0]).toBeLessThan(10 * MIN)
  })
})
