import { describe, expect, it } from 'vitest'
import { layProblem } from '../../src/planner/problem/problem.ts'
import { emptyOrder } from '../../src/planner/search/by-rule.ts'
import { makeMove } from '../../src/planner/search/moves.ts'
import { makeRandom } from '../../src/planner/search/random.ts'
import { bestStart, copyOrder } from '../../src/planner/search/search.ts'
import { makeTimer } from '../../src/planner/timing/timing.ts'
import { twoHands } from './boards.ts'
import { generate } from './generate.ts'

describe('timing of an order', () => {
  it.each([1, 2].flatMap((people) => [1, 2, 3, 4, 5, 6].map((seed) => [people, seed] as const)))(
    'gives the same when it goes on from a common beginning (%i at the buckets, problem %i)',
    (people, seed) => {
      const alone = generate(seed + 40, {
        pots: [5, 20],
        coats: [2, 4],
        gridS: 1,
        prep: seed % 2 === 0,
        midway: seed % 3 === 0,
      })
      const problem = layProblem(people === 2 ? { ...alone, hands: [alone.hands[0], twoHands()[1]] } : alone)
      const timer = makeTimer(problem)
      const whole = makeTimer(problem)
      const random = makeRandom(seed)
      const move = makeMove(problem, random)
      const current = emptyOrder(problem)
      const other = emptyOrder(problem)
      copyOrder(bestStart(problem, timer).order, current)
      timer.run(current, Number.POSITIVE_INFINITY)
      timer.take(current)
      let compared = 0
      for (let k = 0; k < 4000; k++) {
        copyOrder(current, other)
        if (!move(other)) continue
        const part = timer.retry(other, Number.POSITIVE_INFINITY)
        const full = whole.run(other, Number.POSITIVE_INFINITY)
        expect(part).toBe(full)
        if (full === Number.POSITIVE_INFINITY || random.int(3) > 0) continue
        compared++
        copyOrder(other, current)
        timer.take(current)
      }
      expect(compared).toBeGreaterThan(300)
    },
  )
})
