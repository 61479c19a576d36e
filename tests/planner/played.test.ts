import { describe, expect, it } from 'vitest'
import { clairvoyant } from './clairvoyant.ts'
import { FULL, mean, percent } from './figures.ts'
import { PACES, type PaceProfile } from './hands.ts'
import type { Truth } from './nature.ts'
import { type Outcome, playSitting, type Sitting } from './played.ts'

/** Sittings from this seed on were not looked at while the order of work was tuned. */
const FRESH_SITTING = 7000
/** Sittings a row. */
const COUNT = FULL ? 100 : 1
/** Orders of dips timed a question: a board of twelve pots asks for no more. */
const WORK = FULL ? 60_000 : 6000
/** Part of the dips at which the hands take another pot than the card's. */
const SLIPS = 0.03

interface Row {
  readonly pace: PaceProfile['name']
  readonly truth: Truth
  readonly potters: 1 | 2
  /** Bars of one hundred sittings: finish over the clairvoyant's, and stale cards a sitting. */
  readonly over: number
  readonly stale: number
}

const ROWS: readonly Row[] = [
  { pace: 'quick', truth: 'inside', potters: 1, over: 0.12, stale: 0.2 },
  { pace: 'none', truth: 'inside', potters: 1, over: 0.12, stale: 0.2 },
  { pace: 'brisk', truth: 'inside', potters: 1, over: 0.12, stale: 1.2 },
  { pace: 'normal', truth: 'inside', potters: 1, over: 0.05, stale: 2.4 },
  { pace: 'slow', truth: 'inside', potters: 1, over: 0.1, stale: 7.5 },
  { pace: 'normal', truth: 'faster', potters: 1, over: 0.12, stale: 2.4 },
  { pace: 'normal', truth: 'slower', potters: 1, over: 0.12, stale: 2.4 },
  { pace: 'normal', truth: 'inside', potters: 2, over: 0.4, stale: 4.5 },
]

const paceOf = (name: PaceProfile['name']): PaceProfile => PACES.find((pace) => pace.name === name)!

type Told = 'foreseen' | 'tenth' | 'halfway'

/** Told to the minute: what ends within the one that is said is not before it. */
const MINUTE = 1
const isBefore = (outcome: Outcome, told: Told): boolean =>
  outcome.finishMin < outcome[told]!.finish.lower - MINUTE
const holds = (outcome: Outcome, told: Told): boolean =>
  !isBefore(outcome, told) && outcome.finishMin <= outcome[told]!.finish.upper

const row = (parts: readonly (string | number)[]): string =>
  parts.map((part) => (typeof part === 'number' ? part.toFixed(1) : part).padEnd(9)).join(' ')

describe('sittings of twelve pots by the cards alone', () => {
  console.log(
    row([
      'hands',
      'truth',
      'potters',
      'order',
      'simple',
      'knowing',
      'over %',
      'openings',
      'stale',
      'wet',
      'held %',
      'tenth hit',
      'half-way',
      'wide',
      'tenth hit',
      'half-way',
    ]),
  )
  it.each(ROWS)(
    '$pace hands, truth $truth, potters $potters',
    ({ pace, truth, potters, over, stale }) => {
      const outcomes: Outcome[] = []
      const knowing: number[] = []
      const known: number[] = []
      const simple: number[] = []
      for (let seed = FRESH_SITTING; seed < FRESH_SITTING + COUNT; seed++) {
        const sitting: Sitting = {
          seed,
          pace: paceOf(pace),
          truth,
          potters,
          planned: true,
          slips: SLIPS,
          work: WORK,
        }
        const outcome = playSitting(sitting)
        // A card changes under one pair of hands only where a hard rule broke: the stir is too old.
        if (potters === 1) expect([seed, outcome.jumped]).toEqual([seed, 0])
        // Nobody hits twice: once a coat, a touch and a stir, and a foot where no dip follows.
        expect(outcome.hits).toBeLessThanOrEqual(
          outcome.dips + outcome.openings + outcome.restirs + outcome.others,
        )
        outcomes.push(outcome)
        const best = clairvoyant(sitting, outcome)
        knowing.push(best.finishMin)
        known.push(best.openings)
        if (FULL) simple.push(playSitting({ ...sitting, planned: false }).finishMin)
      }
      const of = (part: (outcome: Outcome) => number) => mean(outcomes.map(part))
      const beyond = mean(outcomes.map(({ finishMin }, k) => finishMin / knowing[k]! - 1))
      const wide = (told: Told) => of((outcome) => outcome[told]!.finish.upper / outcome[told]!.finish.lower)
      const held = (told: Told) => of((outcome) => Number(holds(outcome, told)))
      console.log(
        row([
          pace,
          truth,
          `${potters}`,
          of(({ finishMin }) => finishMin),
          mean(simple),
          mean(knowing),
          100 * beyond,
          of(({ openings }) => openings),
          of((outcome) => outcome.stale),
          of(({ wet }) => wet),
          100 * held('foreseen'),
          100 * held('tenth'),
          100 * held('halfway'),
          wide('foreseen'),
          wide('tenth'),
          wide('halfway'),
        ]),
      )
      // From hands that do all at once to unhurried ones: a promise as wide as these until hands have shown their pace.
      expect(wide('foreseen')).toBeLessThanOrEqual(potters === 1 ? 2.4 : 2.8)
      // Of two potters, each waits on what the other does: their promise is wider.
      expect(wide('halfway')).toBeLessThanOrEqual(potters === 2 ? 2 : FULL ? 1.6 : 1.8)
      // Of a few sittings the means say little.
      if (!FULL) return
      expect(beyond).toBeLessThanOrEqual(over)
      const more = mean(outcomes.map(({ openings }, k) => openings - known[k]!))
      expect(more).toBeLessThanOrEqual(0.5)
      expect(of((outcome) => outcome.stale)).toBeLessThanOrEqual(stale)
      if (pace !== 'normal' || truth !== 'inside' || potters === 2) return
      expect(wide('tenth')).toBeLessThanOrEqual(1.6)
      for (const told of ['foreseen', 'tenth', 'halfway'] as const) {
        expect(held(told)).toBeGreaterThanOrEqual(0.7)
        expect(held(told)).toBeLessThanOrEqual(0.92)
      }
    },
    7_200_000,
  )

  it.each(FULL ? (['quick', 'normal', 'slow'] as const) : (['normal'] as const))(
    '%s hands that had a sitting the day before are told a narrow end before a hit, and after ten',
    (pace) => {
      const outcomes = Array.from({ length: COUNT }, (_, k) =>
        playSitting({
          seed: FRESH_SITTING + k,
          pace: paceOf(pace),
          truth: 'inside',
          potters: 1,
          planned: true,
          again: true,
          slips: SLIPS,
          work: WORK,
        }),
      )
      for (const told of ['foreseen', 'tenth'] as const) {
        const wide = mean(
          outcomes.map((outcome) => outcome[told]!.finish.upper / outcome[told]!.finish.lower),
        )
        const held = mean(outcomes.map((outcome) => Number(holds(outcome, told))))
        console.log(`${pace} hands once more, ${told}: ${wide.toFixed(2)} wide, held ${percent(held)}`)
        // Of one sitting the width is its own; of quick hands one interruption is a quarter of it.
        expect(wide).toBeLessThanOrEqual(FULL && pace !== 'quick' ? 1.62 : 1.9)
        if (FULL && pace !== 'quick') expect(held).toBeGreaterThanOrEqual(0.65)
      }
    },
    7_200_000,
  )

  it.each([
    ['twelve pots', {}, FULL ? 20 : 2],
    ['the demo evening', { demo: true }, FULL ? 12 : 3],
  ] as const)(
    '%s: hands that do all at once, and coats that are dry at every call, mostly end within what was told',
    (_name, laid, count) => {
      const outcomes = Array.from({ length: count }, (_, k) =>
        playSitting({
          seed: FRESH_SITTING + k,
          pace: paceOf('none'),
          truth: 'called',
          potters: 1,
          planned: true,
          ...laid,
          slips: 0,
          work: WORK,
        }),
      )
      for (const told of ['foreseen', 'halfway'] as const)
        expect(outcomes.filter((outcome) => isBefore(outcome, told)).length).toBeLessThan(count / 2)
    },
    7_200_000,
  )
})
