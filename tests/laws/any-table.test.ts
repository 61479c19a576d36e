/** Whatever is entered within its ranges and done at the table, every card, estimate and warning can be shown. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { AirFacts } from '../../shared/nouns.ts'
import { fitOf } from '../../src/table/advice/fitting-stack.ts'
import { meltPreviewOf } from '../../src/table/advice/melt-preview.ts'
import { remediesFor } from '../../src/table/advice/remedies.ts'
import { outlookOf, warningsOf } from '../../src/table/advice/what-if.ts'
import { outputsOf } from '../../src/table/card/outputs.ts'
import { plannedDip } from '../../src/table/forecast/hypothetical-dip.ts'
import type { Action } from '../../src/table/model/action.ts'
import { planOf } from '../../src/table/model/plan.ts'
import { lookAt } from '../fixtures/look.ts'
import { runsOf } from '../fixtures/runs.ts'
import { airs, BUCKETS, POT, perhaps, spread, tables, typed } from '../fixtures/typed.ts'
import type { Play } from '../unit/table/play.ts'

const DAY_S = 86_400
const deeds = fc.array(
  fc.record({
    what: fc.nat(11),
    afterS: fc.oneof(fc.integer({ min: 0, max: 7200 }), fc.constantFrom(0, 30 * DAY_S, 500 * DAY_S)),
    grams: typed('grams'),
    agoMin: typed('agoMin'),
    gramsPerMl: typed('gramsPerMl'),
    air: airs,
  }),
  { maxLength: 8 },
)

function doing(
  play: Play,
  deed: { what: number; grams: number; agoMin: number; gramsPerMl: number; air: AirFacts },
): Action {
  const pot = play.table.pots[POT]
  const dipId = pot?.dips.at(-1)?.dipId ?? ''
  const all: Action[] = [
    { do: 'waxed', potId: POT },
    { do: 'wiped', potId: POT },
    { do: 'logged', potId: POT, agoMin: deed.agoMin },
    { do: 'logged', potId: POT, agoMin: 0 },
    { do: 'touched', potIds: [POT], dry: deed.agoMin < 700 },
    { do: 'weigh', potId: POT, grams: deed.grams, as: pot?.bisqueG === undefined ? 'bisque' : 'now' },
    { do: 'wash-off', potId: POT },
    { do: 'set-air', air: deed.air },
    { do: 'read-density', bucketId: BUCKETS[0], gramsPerMl: deed.gramsPerMl },
    { do: 'held-longer', dipId, byS: 5 },
    { do: 'stirred', bucketId: BUCKETS[0] },
    { do: 'start', potId: POT, again: true, unstirred: true },
  ]
  return all[deed.what]!
}

function look({ table, nowMs, card }: Play): void {
  expect(card.kind).not.toBe('empty')
  outputsOf(table, nowMs, card)
  lookAt(table, nowMs)
}

const patient = { timeout: 7_200_000 }

test('nothing that was accepted keeps a card, an estimate or a warning from being shown', patient, () => {
  let looked = 0
  fc.assert(
    fc.property(tables, deeds, (setUp, done) => {
      const play = setUp()
      if (!play) return
      looked++
      look(play)
      const { table, nowMs } = play
      const pot = table.pots[POT]!
      const plan = planOf(table, pot)
      warningsOf(table, pot.facts, plan, outlookOf(table, pot.facts, plan, nowMs))
      fitOf(table, pot.facts, plan, nowMs)
      for (const deed of done) {
        play.wait(deed.afterS)
        play.try(doing(play, deed))
        look(play)
      }
    }),
    { numRuns: runsOf(80, 0.05) },
  )
  expect(looked).toBeGreaterThan(20)
})

const firings = fc.record({
  cone: fc.constantFrom('022', '06', '04', '1', '6', '10'),
  make: fc.constantFrom('american' as const, 'seger' as const),
  riseCPerH: typed('riseCPerH'),
  holdMin: typed('fireHoldMin'),
})
const tiles = fc.record({
  over: fc.constantFrom(...BUCKETS),
  pair: fc.boolean(),
  firing: firings,
  stripes: fc.array(
    fc
      .record({
        dryMm: typed('dryMm'),
        bandMm: typed('bandMm'),
        runMm: typed('runMm'),
        longestMm: perhaps(typed('longestMm')),
      })
      .map(spread),
    { minLength: 1, maxLength: 3 },
  ),
})

test('nor does any flow tile or firing keep a run, a remedy or the melt from being shown', patient, () => {
  let looked = 0
  fc.assert(
    fc.property(
      tables,
      fc.array(tiles, { minLength: 1, maxLength: 4 }),
      perhaps(firings),
      (setUp, read, firing) => {
        const play = setUp()
        if (!play) return
        for (const { over, pair, ...tile } of read) {
          const underId = BUCKETS.find((bucketId) => bucketId !== over)!
          play.try({ do: 'read-tile', tile: { bucketId: over, ...(pair ? { underId } : {}), ...tile } })
        }
        if (firing) play.try({ do: 'plan-firing', firing })
        if (Object.keys(play.table.tiles).length === 0) return
        looked++
        look(play)
        const { table, nowMs } = play
        const pot = table.pots[POT]!
        const plan = planOf(table, pot)
        const outlook = outlookOf(table, pot.facts, plan, nowMs)
        meltPreviewOf(table, pot.facts, plan, outlook, 5)
        for (const [i, coat] of plan.entries())
          remediesFor(table, pot, plannedDip(i, coat, table.buckets[coat.bucketId]!.gramsPerMl, nowMs))
      },
    ),
    { numRuns: runsOf(40, 0.02) },
  )
  expect(looked).toBeGreaterThan(5)
})
