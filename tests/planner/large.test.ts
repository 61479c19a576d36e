import { describe, expect, it } from 'vitest'
import { byHabit, type Plan, type PlanInput, plan } from '../../src/planner/index.ts'
import { aims, compare, FRESH_SEED, FULL, longestChainS, mean, percent } from './figures.ts'
import { generate } from './generate.ts'
import { relaxedFinish } from './relax.ts'
import { faults } from './verify.ts'

/** Boards of `pots` pots of 3 coats without a deadline: there lateness would come before finish. */
function* boards(pots: number, count: number, gridS: number): Generator<readonly [number, PlanInput]> {
  for (let seed = FRESH_SEED, k = 0; k < count; seed++) {
    const input = generate(seed, { pots: [pots, pots], coats: [3, 3], gridS })
    if (input.deadline) continue
    k++
    yield [seed, input]
  }
}

const over = (found: Plan) => found.finishS / found.bound.finishS - 1

describe('8 pots of 3 coats against the best known', () => {
  it('is 0.5 % over on average and never over 3 %', () => {
    const gaps: number[] = []
    for (const [, input] of boards(8, FULL ? 40 : 6, 1)) {
      const found = plan(input)
      const again = FULL ? [2, 3, 4] : [2]
      const long = again.map((seed) => plan({ ...input, seed }, FULL ? 6_000_000 : 1_000_000).finishS)
      gaps.push(found.finishS / Math.min(found.finishS, ...long) - 1)
    }
    console.log(`8 x 3: ${percent(mean(gaps))} over the best known, at most ${percent(Math.max(...gaps))}`)
    expect(mean(gaps)).toBeLessThanOrEqual(0.005)
    expect(Math.max(...gaps)).toBeLessThanOrEqual(0.03)
  }, 7_200_000)
})

/**
 * A board works more than it waits where the longest chain of a single pot is at most this part of the bound. On
 * the others finish hangs on how often buckets are opened anew in between, which the planner's bound can't know.
 */
const WAITING = 0.6

describe('large boards against the lower bound', () => {
  it.each([
    { pots: 20, bar: 0.04 },
    { pots: 40, bar: 0.015 },
    { pots: 60, bar: 0.007 },
  ])(
    '$pots pots of 3 coats keep the bar where they work more than they wait, and beat every habit',
    ({ pots, bar }) => {
      const classes = new Map<string, number[]>()
      const habits: number[] = []
      for (const [seed, input] of boards(pots, FULL ? 60 : 4, 1)) {
        const found = plan(input)
        expect([seed, ...faults(input, found)]).toEqual([seed])
        const waits = longestChainS(input) > WAITING * found.bound.finishS ? 'waiting' : 'working'
        const name = `${waits}, ${seed % 2 === 0 ? 'crossed' : 'one order'}`
        classes.set(name, [...(classes.get(name) ?? []), over(found)])
        for (const habit of ['coatByCoat', 'stackByStack', 'potByPot'] as const) {
          const usual = byHabit(input, habit)
          expect(compare(aims(found), aims(usual))).toBeLessThanOrEqual(0)
          if (habit === 'coatByCoat') habits.push(usual.finishS / found.finishS - 1)
        }
      }
      for (const [name, gaps] of [...classes].sort())
        console.log(
          `${pots} x 3, ${name} (${gaps.length}): ${percent(mean(gaps))} over the bound, at most ${percent(Math.max(...gaps))}`,
        )
      const all = [...classes.values()].flat()
      console.log(
        `${pots} x 3, all (${all.length}): ${percent(mean(all))} over the bound; coat by coat ${percent(mean(habits))} longer`,
      )
      const working = [...classes].filter(([name]) => name.startsWith('working')).flatMap(([, gaps]) => gaps)
      if (pots > 20) expect(working.length).toBeGreaterThan(0)
      expect(mean(pots === 20 ? all : working)).toBeLessThanOrEqual(bar)
    },
    7_200_000,
  )
})

/**
 * The evidence for the class whose bound is weak: what a bound of another make still leaves, and what fifteen
 * times the work gains. Prices see set-ups in parts, so that this bound, too, stays below what can be done: at 8 pots,
 * where the search gains nothing any more, by as much.
 */
const CLASSES = [
  { pots: 8, count: FULL ? 12 : 1, bar: 0.25 },
  { pots: 40, count: FULL ? 16 : 0, bar: 0.1 },
]

describe('boards that wait more than they work, against a bound of another make and a longer search', () => {
  it.each(CLASSES.filter(({ count }) => count > 0))(
    '$pots pots of 3 coats',
    ({ pots, count, bar }) => {
      const relaxed: number[] = []
      const bound: number[] = []
      const long: number[] = []
      for (const [seed, input] of boards(pots, count * 4, 60)) {
        if (relaxed.length === count) break
        const found = plan(input)
        if (longestChainS(input) <= WAITING * found.bound.finishS) continue
        const least = relaxedFinish(input, 60, found.finishS, FULL ? 3000 : 300)
        expect([seed, least <= found.finishS]).toEqual([seed, true])
        relaxed.push(found.finishS / least - 1)
        bound.push(over(found))
        if (!FULL) continue
        const longer = plan({ ...input, seed: 2 }, 15_000_000).finishS
        long.push(found.finishS / Math.min(found.finishS, longer) - 1)
      }
      console.log(
        `${pots} x 3, waiting (${count}): ${percent(mean(bound))} over the bound, ${percent(mean(relaxed))} ` +
          `over the relaxed one${FULL ? `, ${percent(mean(long))} over fifteen times the work` : ''}`,
      )
      if (FULL) expect(mean(long)).toBeLessThanOrEqual(0.03)
      expect(mean(relaxed)).toBeLessThanOrEqual(bar)
    },
    7_200_000,
  )
})
