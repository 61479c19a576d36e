import { describe, expect, it } from 'vitest'
import { readPlan } from '../../src/planner/plan/read.ts'
import { layProblem } from '../../src/planner/problem/problem.ts'
import { bestStart } from '../../src/planner/search/search.ts'
import { ordersByVisits } from '../../src/planner/search/visits.ts'
import { makeTimer } from '../../src/planner/timing/timing.ts'
import { exampleFour, twoHands } from './boards.ts'
import { FRESH_SEED, FULL, mean, percent } from './figures.ts'
import { generate } from './generate.ts'
import { faults } from './verify.ts'

describe('orders made visit by visit', () => {
  it('keep every rule, and without preparation often come out better than the best quick one', () => {
    const gains: number[] = []
    for (let seed = FRESH_SEED, k = 0; k < (FULL ? 60 : 16); seed++) {
      const input = generate(seed, { pots: [12, 12], coats: [3, 3], gridS: 1, prep: seed % 2 === 0 })
      if (input.deadline) continue
      k++
      const problem = layProblem(input)
      const timer = makeTimer(problem)
      const quick = bestStart(problem, timer).finishS
      const [order] = ordersByVisits(problem, timer, problem.n)
      const made = readPlan(problem, timer, order!, false)
      expect([seed, ...faults(input, made)]).toEqual([seed])
      if (seed % 2 === 1) gains.push(1 - made.finishS / quick)
    }
    const better = gains.filter((gain) => gain > 0)
    console.log(
      `visit by visit, 12 x 3: ${better.length} of ${gains.length} better than the best quick order, by ${percent(mean(better))}`,
    )
    expect(better.length).toBeGreaterThan(0)
  })

  it('are not made for two pairs of hands, nor for boards that are too large', () => {
    for (const input of [exampleFour(), { ...exampleFour(), hands: twoHands() }]) {
      const problem = layProblem(input)
      expect(ordersByVisits(problem, makeTimer(problem), problem.potterCount === 2 ? 1000 : 29)).toEqual([])
    }
  })
})
