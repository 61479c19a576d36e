import { describe, expect, it } from 'vitest'
import { FINAL_WORK } from '../../src/planner/index.ts'
import { twoHands } from './boards.ts'
import { aims, compare, FRESH_SEED, FULL } from './figures.ts'
import { generate } from './generate.ts'
import { plan } from './plan.ts'
import { faults } from './verify.ts'

/** Orders timed a question; a slice has less. */
const WORK = FULL ? FINAL_WORK : 30_000

describe('two potters at one table', () => {
  it('are never told a worse plan than one', () => {
    const sooner: number[] = []
    for (let seed = FRESH_SEED, k = 0; k < (FULL ? 60 : 6); seed++) {
      const input = generate(seed, { pots: [10, 40], coats: [2, 3], gridS: 1 })
      // With an hour of the kiln lateness comes before all else: there two lost most.
      if (k % 2 === 0 && !input.deadline) continue
      k++
      const alone = plan(input, WORK)
      const both = { ...input, hands: twoHands() }
      const together = plan(both, WORK)
      expect([seed, ...faults(both, together)]).toEqual([seed])
      expect([seed, compare(aims(together), aims(alone)) <= 0]).toEqual([seed, true])
      sooner.push(1 - together.finishS / alone.finishS)
    }
    console.log(`two finish ${(100 * sooner.reduce((a, b) => a + b, 0)) / sooner.length} % sooner than one`)
  }, 7_200_000)
})
