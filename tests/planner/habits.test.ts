import { describe, expect, it } from 'vitest'
import { aims, compare, FRESH_SEED, FULL, mean, percent } from './figures.ts'
import { generate } from './generate.ts'
import { byHabit } from './plain.ts'
import { plan } from './plan.ts'
import { played, RULES } from './rules.ts'
import { faults } from './verify.ts'

const KINDS = [
  { coats: [3, 3] },
  { coats: [2, 4] },
  { coats: [2, 3], prep: true },
  { coats: [2, 4], midway: true },
] as const
const SIZES = [8, 12, 20, 40, 60]

/** Orders timed a question. The least at all: nothing that a search would mend may be wrong before it. */
const WORK = 1

describe('an order of work against what hands do by habit', () => {
  it('is never worse than any rule, nor than any habit, by lateness and finish, before it is searched', () => {
    const gains: number[] = []
    for (let k = 0; k < (FULL ? 3000 : 150); k++) {
      const size = SIZES[k % SIZES.length]!
      const input = generate(FRESH_SEED + k, { pots: [size, size], gridS: 1, ...KINDS[k % KINDS.length]! })
      const found = plan(input, WORK)
      expect([k, ...faults(input, found)]).toEqual([k])
      const told = [found.latenessS, found.finishS]
      const rules = RULES.map((rule) => ({ rule, aims: played(input, rule) }))
      expect([k, rules.filter((each) => compare(told, each.aims) > 0)]).toEqual([k, []])
      for (const habit of ['coatByCoat', 'stackByStack', 'potByPot'] as const)
        expect([k, habit, compare(aims(found), aims(byHabit(input, habit))) <= 0]).toEqual([k, habit, true])
      if (!input.deadline) gains.push(Math.min(...rules.map((each) => each.aims[1])) / found.finishS - 1)
    }
    console.log(
      `without a deadline the soonest rule ends ${percent(mean(gains))} later than the order does before it is searched`,
    )
  }, 7_200_000)
})
