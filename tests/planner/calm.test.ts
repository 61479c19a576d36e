import { describe, expect, it } from 'vitest'
import type { DipAction, Plan, PlanInput, Pot, SetUpAction } from '../../src/planner/index.ts'
import { bucket, exampleFour, MIN, pot, twoHands } from './boards.ts'
import { chance, generate } from './generate.ts'
import { replan } from './plain.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

const WORK = 60_000

/** The table after everything that starts before `atS` went as told; hands may still be at it. */
function playedUntil(input: PlanInput, told: Plan, atS: number): PlanInput {
  const done = told.actions.filter((action) => action.startS < atS)
  const hands = input.hands.map((each, potter) => {
    const mine = done.filter((action) => action.potter === potter)
    const setUps = mine.filter(
      (action): action is SetUpAction => action.kind === 'open' || action.kind === 'restir',
    )
    const last = setUps.at(-1)
    const begun = setUps.map((action) => action.kind).lastIndexOf('open')
    const open = last
      ? {
          bucketId: last.bucketId,
          stirEndS: last.endS,
          decanted: setUps.slice(Math.max(0, begun)).some((action) => action.decant),
        }
      : each.open
    return { freeAtS: Math.max(atS, ...mine.map((action) => action.endS)), open }
  })
  const pots = input.pots.flatMap((each): Pot[] => {
    const steps = done.filter((action) => 'potId' in action && action.potId === each.id)
    const dips = steps.filter((action): action is DipAction => action.kind === 'dip')
    const last = dips.at(-1)
    const coats = each.coats.slice(dips.length)
    if (coats.length === 0) return []
    const wiped = steps.filter((action) => action.kind !== 'dip').at(-1)
    const prep = each.prep.slice(steps.length - dips.length)
    const readyAtS = last
      ? last.outS + each.coats[last.coat]!.waitAfterS
      : wiped
        ? wiped.endS + each.prep[steps.length - 1]!.waitAfterS
        : each.readyAtS
    return [{ ...each, prep, coats, readyAtS }]
  })
  return { ...input, nowS: atS, hands: hands.length === 2 ? [hands[0]!, hands[1]!] : [hands[0]!], pots }
}

describe('calm re-plan', () => {
  it('tells the same order again when nothing went differently', () => {
    for (const seed of [3, 4, 5, 8]) {
      const input = generate(seed, { pots: [6, 12], coats: [2, 3], gridS: 1, prep: seed % 2 === 0 })
      const told = plan(input, WORK)
      const atS = told.actions[4]!.startS
      const now = playedUntil(input, told, atS)
      const { plan: again, kept, finishGainS } = replan(now, told, WORK)
      expect(faults(now, again)).toEqual([])
      if (kept) {
        const rest = told.actions.filter((action) => action.startS >= atS)
        expect(again.actions.map((action) => [action.kind, action.startS])).toEqual(
          rest.map((action) => [action.kind, action.startS]),
        )
      } else expect(finishGainS).toBeGreaterThanOrEqual(MIN)
    }
  })

  it('never takes the card out of the hands, and keeps the old order for less than a minute', () => {
    let rearranged = 0
    for (let seed = 1; seed <= 40; seed++) {
      const input = generate(seed, { pots: [4, 10], coats: [2, 3], gridS: 1 })
      const next = chance(seed)
      const told = plan(input, 20_000)
      const atS = told.actions[1 + Math.floor(next() * (told.actions.length - 2))]!.startS
      const now = playedUntil(input, told, atS)
      // One of the pots that dry needs longer than thought.
      const slow = now.pots.filter((each) => each.readyAtS > atS)[0]
      const slipped: PlanInput = {
        ...now,
        pots: now.pots.map((each) => (each === slow ? { ...each, readyAtS: each.readyAtS + 900 } : each)),
      }
      const first = told.actions.find((action) => action.startS >= atS)!
      const { plan: again, kept, latenessGainS, finishGainS } = replan(slipped, told, WORK)
      expect(faults(slipped, again)).toEqual([])
      const broke = 'potId' in first && first.potId === slow?.id
      const begun = first.startS <= slipped.hands[0].freeAtS + MIN
      if (begun && !broke && first.kind === 'dip') {
        const now0 = again.actions.filter((action) => 'potId' in action)[0]!
        expect(now0).toMatchObject({ kind: 'dip', potId: first.potId, bucketId: first.bucketId })
      }
      if (begun && !broke && first.kind !== 'dip' && 'bucketId' in first && slow) {
        const bucketNow = again.actions[0]!
        const follow = told.actions.find((action) => action.startS >= first.endS)!
        if ('potId' in follow && follow.potId !== slow.id)
          expect(bucketNow).toMatchObject({ bucketId: first.bucketId })
      }
      if (!kept) {
        rearranged++
        expect(Math.max(latenessGainS, finishGainS)).toBeGreaterThanOrEqual(MIN)
      }
    }
    expect(rearranged).toBeGreaterThan(0)
  })

  it('lets the card go when a hard rule broke: the touch check said not yet', () => {
    const input = exampleFour()
    const told = plan(input, WORK)
    const card = told.actions.find((action) => action.kind === 'dip' && action.coat === 1)! as DipAction
    const now = playedUntil(input, told, card.startS)
    const wet = {
      ...now,
      pots: now.pots.map((each) =>
        each.id === card.potId ? { ...each, readyAtS: card.startS + 600 } : each,
      ),
    }
    const { plan: again } = replan(wet, told, WORK)
    expect(faults(wet, again)).toEqual([])
    const dip = again.actions.find((action) => action.kind === 'dip' && action.potId === card.potId)!
    expect(dip.startS).toBeGreaterThanOrEqual(card.startS + 600)
  })

  it('takes in a pot that is new and lets one go that is gone', () => {
    const input = exampleFour()
    const told = plan(input, WORK)
    const pots = [...input.pots.filter((each) => each.id !== 'S2-1'), pot('new', ['B', 'H'], [10])]
    const changed = { ...input, pots }
    const { plan: again } = replan(changed, told, WORK)
    expect(faults(changed, again)).toEqual([])
    expect(again.actions.some((action) => 'potId' in action && action.potId === 'new')).toBe(true)
  })

  it('finds the old coats again when one is dropped from a stack or a bucket is replaced', () => {
    const input = exampleFour()
    const told = plan(input, WORK)
    const changed: PlanInput = {
      ...input,
      buckets: [...input.buckets, bucket('N')],
      pots: input.pots.map((each, k) => (k === 0 ? pot(each.id, ['N', 'H'], [12]) : each)),
    }
    expect(faults(changed, replan(changed, told, WORK).plan)).toEqual([])
  })

  it('keeps both cards of two people', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const input = {
        ...generate(seed, { pots: [6, 10], coats: [2, 3], gridS: 1, prep: true }),
        hands: twoHands(),
      }
      const told = plan(input, 20_000)
      const { plan: again } = replan(input, told, WORK)
      expect(faults(input, again)).toEqual([])
      for (const potter of [0, 1]) {
        const was = told.actions.find((action) => action.potter === potter)
        const is = again.actions.find((action) => action.potter === potter)
        if (was && was.startS <= MIN)
          expect(is).toMatchObject('potId' in was ? { potId: was.potId } : { bucketId: was.bucketId })
      }
    }
  })
})
