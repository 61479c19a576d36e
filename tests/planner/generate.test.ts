import { describe, expect, it } from 'vitest'
import type { PlanInput } from '../../src/planner/index.ts'
import { FRESH_SEED, longestChainS } from './figures.ts'
import { generate } from './generate.ts'

const orders = (ids: readonly string[]): string[][] =>
  ids.length === 0
    ? [[]]
    : ids.flatMap((id) => orders(ids.filter((other) => other !== id)).map((rest) => [id, ...rest]))

/** Some order of the buckets serves every stack with one visit a bucket. */
const hasOneOrder = (input: PlanInput): boolean =>
  orders(input.buckets.map((bucket) => bucket.id)).some((order) =>
    input.pots.every((pot) =>
      pot.coats.every(
        (coat, k) => k === 0 || order.indexOf(pot.coats[k - 1]!.bucketId) <= order.indexOf(coat.bucketId),
      ),
    ),
  )

describe('generated boards', () => {
  const boards = Array.from({ length: 300 }, (_, k) =>
    generate(FRESH_SEED + k, { pots: [2, 20], coats: [1, 4], gridS: 1 }),
  )

  it('have 2 to 6 buckets, 1 to 4 coats and waits of 2 to 90 min, all of them', () => {
    const seen = <T>(of: (input: PlanInput) => readonly T[]) => new Set(boards.flatMap(of))
    expect([...seen((input) => [input.buckets.length])].sort()).toEqual([2, 3, 4, 5, 6])
    expect([...seen((input) => input.pots.map((pot) => pot.coats.length))].sort()).toEqual([1, 2, 3, 4])
    const waits = [...seen((input) => input.pots.flatMap((pot) => pot.coats.map((coat) => coat.waitAfterS)))]
    expect(Math.min(...waits)).toBeGreaterThanOrEqual(120)
    expect(Math.min(...waits)).toBeLessThan(180)
    expect(Math.max(...waits)).toBe(5400)
    const mixed = boards.filter(
      (input) => input.pots.length > 4 && new Set(input.pots.map((pot) => pot.coats[0]!.waitAfterS)).size > 2,
    )
    expect(mixed.length).toBeGreaterThan(150)
  })

  it('have no common order of buckets in at least half of them', () => {
    const crossed = boards.filter((input) => !hasOneOrder(input)).length
    expect(crossed / boards.length).toBeGreaterThanOrEqual(0.5)
  })

  it("have a deadline that can't be met in a third of them", () => {
    const late = boards.filter(
      ({ deadline, pots, buckets }) =>
        deadline &&
        pots.some(
          (pot) =>
            Math.min(...buckets.map((bucket) => bucket.openS)) +
              longestChainS({ pots: [pot] }) +
              pot.kilnDryS >
            deadline.loadStartS,
        ),
    ).length
    expect(late / boards.length).toBeGreaterThanOrEqual(1 / 3)
  })

  it('are the same for the same seed', () => {
    const again = generate(FRESH_SEED + 7, { pots: [2, 20], coats: [1, 4], gridS: 1 })
    expect(again).toEqual(boards[7])
    expect(again).not.toEqual(boards[6])
  })
})
