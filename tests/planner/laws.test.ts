import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { firstPlan, type Plan, type PlanInput } from '../../src/planner/index.ts'
import { board, twoHands } from './boards.ts'
import { generate } from './generate.ts'
import { byHabit, dispatch, retime } from './plain.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

const RUNS = process.env.PROVE === '1' ? 1500 : 24
const WORK = 8_000

const aims = (found: Plan) => [found.latenessS, found.finishS, found.openings, found.restirs, found.overLongS]

/** Any board: from scratch or in the middle, with or without preparation, one or two pairs of hands. */
const anyBoard: fc.Arbitrary<PlanInput> = fc
  .record({
    seed: fc.integer({ min: 1, max: 1_000_000 }),
    pots: fc.integer({ min: 1, max: 14 }),
    most: fc.integer({ min: 1, max: 4 }),
    prep: fc.boolean(),
    midway: fc.boolean(),
    two: fc.boolean(),
    outS: fc.integer({ min: 5, max: 30 }),
    nowS: fc.integer({ min: 0, max: 1_800_000_000 }),
    longest: fc.boolean(),
  })
  .map(({ seed, pots, most, prep, midway, two, outS, nowS, longest }) => {
    const input = generate(seed, { pots: [pots, pots], coats: [1, most], gridS: 1, prep, midway })
    return {
      ...input,
      nowS,
      hands: two
        ? [{ ...input.hands[0], freeAtS: nowS, open: moved(input.hands[0].open, nowS) }, twoHands(nowS)[1]]
        : [{ freeAtS: nowS, open: moved(input.hands[0].open, nowS) }],
      deadline: input.deadline && { loadStartS: input.deadline.loadStartS + nowS },
      pots: input.pots.map((pot) => ({
        ...pot,
        readyAtS: pot.readyAtS + nowS,
        coats: pot.coats.map((coat) => ({
          ...coat,
          outAtS: outS,
          ...(longest ? { longestWaitS: coat.waitAfterS + 600 } : {}),
        })),
      })),
    }
  })

function moved(open: PlanInput['hands'][0]['open'], nowS: number) {
  return open && { ...open, stirEndS: open.stirEndS + nowS }
}

/** Other names for everything. */
const renamed = (input: PlanInput, name: (id: string) => string): PlanInput => {
  const open = (each: PlanInput['hands'][0]) => ({
    ...each,
    open: each.open && { ...each.open, bucketId: name(each.open.bucketId) },
  })
  const [first, second] = input.hands
  return {
    ...input,
    hands: second ? [open(first), open(second)] : [open(first)],
    buckets: input.buckets.map((bucket) => ({ ...bucket, id: name(bucket.id) })),
    pots: input.pots.map((pot) => ({
      ...pot,
      id: name(pot.id),
      coats: pot.coats.map((coat) => ({ ...coat, bucketId: name(coat.bucketId) })),
    })),
  }
}

describe('laws of a plan', () => {
  it('breaks no rule: no overlap, no wait undercut, no stale dip, every coat once', () => {
    fc.assert(
      fc.property(anyBoard, (input) => {
        for (const found of [
          dispatch(input),
          firstPlan(input),
          plan(input, WORK),
          byHabit(input, 'potByPot'),
        ])
          expect(faults(input, found)).toEqual([])
      }),
      { numRuns: RUNS },
    )
  })

  it('is the same every time', () => {
    fc.assert(
      fc.property(anyBoard, (input) => {
        expect(plan(structuredClone(input), WORK)).toEqual(plan(input, WORK))
      }),
      { numRuns: RUNS / 2 },
    )
  })

  it('does not hang on names', () => {
    fc.assert(
      fc.property(anyBoard, (input) => {
        const back = (id: string) => [...id.slice(1)].reverse().join('')
        const other = plan(
          renamed(input, (id) => `~${[...id].reverse().join('')}`),
          WORK,
        )
        const actions = other.actions.map((action) => ({
          ...action,
          ...('potId' in action ? { potId: back(action.potId) } : {}),
          ...('bucketId' in action ? { bucketId: back(action.bucketId) } : {}),
        }))
        expect(actions).toEqual(plan(input, WORK).actions)
      }),
      { numRuns: RUNS / 2 },
    )
  })

  it('does not hang on the order in which pots are listed, but for ties', () => {
    fc.assert(
      fc.property(anyBoard, (input) => {
        const other = { ...input, pots: [...input.pots].reverse() }
        expect(aims(plan(other, WORK))).toEqual(aims(plan(input, WORK)))
      }),
      { numRuns: RUNS / 2 },
    )
  })

  it('does not hang on the zero of the clock', () => {
    fc.assert(
      fc.property(anyBoard, fc.integer({ min: 1, max: 100_000 }), (input, byS) => {
        const later = (hands: PlanInput['hands'][0]) => ({
          freeAtS: hands.freeAtS + byS,
          open: moved(hands.open, byS),
        })
        const [first, second] = input.hands
        const shifted: PlanInput = {
          ...input,
          nowS: input.nowS + byS,
          hands: second ? [later(first), later(second)] : [later(first)],
          deadline: input.deadline && { loadStartS: input.deadline.loadStartS + byS },
          pots: input.pots.map((pot) => ({ ...pot, readyAtS: pot.readyAtS + byS })),
        }
        const there = plan(shifted, WORK).actions.map((action) => action.startS - byS)
        expect(there).toEqual(plan(input, WORK).actions.map((action) => action.startS))
      }),
      { numRuns: RUNS / 3 },
    )
  })

  it('is never worse than habit or than its own first answer', () => {
    const order = (a: readonly number[], b: readonly number[]) => {
      const k = a.slice(0, 4).findIndex((value, j) => value !== b[j])
      return k < 0 ? 0 : a[k]! - b[k]!
    }
    fc.assert(
      fc.property(anyBoard, (input) => {
        const found = aims(plan(input, WORK))
        expect(order(found, aims(firstPlan(input)))).toBeLessThanOrEqual(0)
        for (const habit of ['coatByCoat', 'stackByStack', 'potByPot'] as const)
          expect(order(found, aims(byHabit(input, habit)))).toBeLessThanOrEqual(0)
      }),
      { numRuns: RUNS / 2 },
    )
  })

  it('comes out no worse when its own order is timed again', () => {
    fc.assert(
      fc.property(anyBoard, (input) => {
        const found = plan(input, WORK)
        const again = retime(input, found)
        expect(again.latenessS).toBeLessThanOrEqual(found.latenessS)
        expect(again.finishS).toBeLessThanOrEqual(found.finishS)
      }),
      { numRuns: RUNS / 2 },
    )
  })

  it('takes any seed and an empty table', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffff_ffff }), (seed) => {
        expect(plan(board([], [], { seed })).actions).toEqual([])
      }),
      { numRuns: 20 },
    )
  })
})
