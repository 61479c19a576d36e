import { describe, expect, it } from 'vitest'
import {
  cutGains,
  freeUntil,
  latestStart,
  type PlanInput,
  pauseCost,
  plan,
  withFewerCoats,
  withoutCollars,
} from '../../src/planner/index.ts'
import { board, bucket, coat, exampleFive, exampleFour, exampleTwo, MIN, pot } from './boards.ts'
import { faults } from './verify.ts'

const clock = (text: string) => Number(text.split(':')[0]) * 3600 + Number(text.split(':')[1]) * 60

/** Example 5, case two, with a collar round of 25 min at the end: 105 min of work, then 20 of wait, stir, dip. */
const withCollarRound = (): PlanInput => {
  const base = exampleFive(130, 240)
  const coats = [coat('X', 100), coat('Y', 24), coat('Z', 0, true)]
  return { ...base, buckets: [bucket('X'), bucket('Y'), bucket('Z')], pots: [{ ...base.pots[0]!, coats }] }
}

describe('ways out of a deadline that can not be met', () => {
  it('names what each gains, as worked example 5 does', () => {
    const input = withCollarRound()
    const told = plan(input)
    expect([told.finishS, told.latenessS]).toEqual([clock('12:40'), 10 * MIN])
    expect(latestStart(input.nowS, told)).toBe(clock('10:20'))
    const faster = (part: number): PlanInput => ({
      ...input,
      pots: input.pots.map((each) => ({
        ...each,
        kilnDryS: each.kilnDryS * part,
        coats: each.coats.map((one) => ({ ...one, waitAfterS: one.waitAfterS * part })),
      })),
    })
    const gains = cutGains(told, [
      { cut: 'skipCollar', input: withoutCollars(input) },
      { cut: 'fewerCoats', input: withFewerCoats(input, 1) },
      { cut: 'fan', input: faster(0.75) },
      {
        cut: 'nextFiring',
        input: { ...input, deadline: { loadStartS: input.deadline!.loadStartS + 86_400 } },
      },
    ])
    const by = new Map(gains.map((gain) => [gain.cut, gain]))
    expect(by.get('skipCollar')!.plan.dryAtS).toBe(clock('16:15'))
    expect(by.get('skipCollar')).toMatchObject({ gainS: 25 * MIN, meetsDeadline: true })
    expect(by.get('skipCollar')!.plan.slackS).toBe(15 * MIN)
    // 94 min of waits and 240 to kiln-dry, a quarter off: 31 + 60 min.
    expect(by.get('fan')).toMatchObject({ gainS: 91 * MIN, meetsDeadline: true })
    expect(by.get('fewerCoats')).toMatchObject({ gainS: 126 * MIN })
    expect(by.get('nextFiring')).toMatchObject({ gainS: 86_400 })
    expect(gains.map((gain) => gain.gainS)).toEqual(
      [...gains.map((gain) => gain.gainS)].sort((a, b) => b - a),
    )
  })

  it('refuses to compare without a deadline', () => {
    const input = exampleTwo()
    expect(() => cutGains(plan(input), [])).toThrow(/slackS is null/)
    expect(() => withFewerCoats(input, 0)).toThrow(/most is 0/)
  })

  it('counts pots that need no more coats but are not dry yet', () => {
    const input = { ...exampleTwo(), deadline: { loadStartS: 3600, doneDryAtS: 4000 } }
    const found = plan(input)
    expect(faults(input, found)).toEqual([])
    expect(found).toMatchObject({ latenessS: 400, slackS: -400, dryAtS: 4000 })
  })
})

describe('spare time', () => {
  it('says until when hands are free: what a pause costs before and after', () => {
    // All wet until minute 20; the opening takes 3: hands may be away until minute 17.
    const input = board([bucket('X')], [pot('P1', ['X'], [], { readyAtS: 20 * MIN })])
    const told = plan(input)
    expect(freeUntil(input, told)).toBe(17 * MIN)
    expect(pauseCost(input, told, 17 * MIN)).toEqual({ latenessS: 0, finishS: 0 })
    expect(pauseCost(input, told, 27 * MIN)).toEqual({ latenessS: 0, finishS: 10 * MIN })
    expect(() => pauseCost(input, told, -1)).toThrow(/pauseS is -1/)
  })

  it('has no minute to give where the first dip is on the longest path', () => {
    const input = exampleFour()
    const told = plan(input)
    expect(freeUntil(input, told)).toBe(0)
    expect(pauseCost(input, told, 600).finishS).toBe(600)
  })
})

describe('holding on purpose', () => {
  it('keeps a ready pot back where that saves a stir and costs nothing', () => {
    // A is ready at once, B at 20 min: stirring late serves both with one stir.
    const input = board([bucket('X')], [pot('A', ['X'], []), pot('B', ['X'], [], { readyAtS: 20 * MIN })])
    const found = plan(input)
    expect(found).toMatchObject({ finishS: 21 * MIN, openings: 1, restirs: 0, proven: true })
    const held = found.actions.find((action) => action.kind === 'dip' && action.potId === 'A')
    expect(held).toMatchObject({ reason: 'heldSavesStir' })
  })
})
