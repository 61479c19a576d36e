/** Whatever is entered within its ranges and done at the table, every card, estimate and warning can be shown. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { AirFacts, BucketFacts, CoatFacts, CoverFacts, ShapeFacts } from '../../shared/nouns.ts'
import { DRAUGHTS } from '../../shared/nouns.ts'
import { FORMS, SIZES, sizeSteps } from '../../src/engine/forms.ts'
import type { Action } from '../../src/table/action.ts'
import { fitOf } from '../../src/table/fit.ts'
import { forecastOf } from '../../src/table/forecast.ts'
import { jobsOf } from '../../src/table/jobs.ts'
import { LIMITS, type LimitedField } from '../../src/table/limits.ts'
import { outputsOf } from '../../src/table/outputs.ts'
import { potsOnTable } from '../../src/table/plan.ts'
import { filledAt } from '../../src/table/thirst.ts'
import { rideAlong } from '../../src/table/ticket.ts'
import { warningsFor } from '../../src/table/warnings.ts'
import { outlookOf, warningsOf } from '../../src/table/whatif.ts'
import { runsOf } from '../fixtures/runs.ts'
import { Play } from '../unit/table/play.ts'

/** Anything a field takes, its very ends more often than chance would. */
const typed = (field: LimitedField): fc.Arbitrary<number> => {
  const { least, most } = LIMITS[field]
  return fc.oneof(
    { weight: 5, arbitrary: fc.double({ min: least, max: most, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(least, most) },
  )
}
const perhaps = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined })
const spread = <T extends object>(of: T): T =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as T

const measures: fc.Arbitrary<ShapeFacts> = fc
  .record({
    form: fc.constantFrom(...FORMS),
    heightMm: typed('heightMm'),
    rimMm: typed('rimMm'),
    bellyMm: perhaps(typed('bellyMm')),
    footMm: perhaps(typed('footMm')),
    wallMm: typed('wallMm'),
    footLineMm: typed('footLineMm'),
  })
  .map(spread)
/** Mostly pots of the usual forms, thin or thick; sometimes any measures at all. */
const shapes: fc.Arbitrary<ShapeFacts> = fc.oneof(
  { weight: 3, arbitrary: usualPots() },
  { weight: 1, arbitrary: measures },
)

function usualPots(): fc.Arbitrary<ShapeFacts> {
  return fc
    .record({
      form: fc.constantFrom(...FORMS),
      size: fc.constantFrom(...SIZES),
      wallMm: fc.double({ min: 1, max: 12, noNaN: true }),
      footLineMm: fc.double({ min: 0, max: 15, noNaN: true }),
    })
    .map(({ form, size, ...own }) => ({ ...sizeSteps(form)[size], ...own }))
}

const buckets: fc.Arbitrary<Omit<BucketFacts, 'bucketId' | 'letter' | 'name'>> = fc
  .record({
    pattern: fc.constant('hatch' as const),
    targetGramsPerMl: typed('gramsPerMl'),
    toleranceGramsPerMl: typed('toleranceGramsPerMl'),
    solidsGravity: typed('solidsGravity'),
    insideMm: typed('insideMm'),
    litres: typed('litres'),
    heightMm: typed('bucketHeightMm'),
    limitMm: typed('limitMm'),
    pinMm: perhaps(typed('pinMm')),
    cautions: fc.constant([]),
  })
  .map(spread)

const covers: fc.Arbitrary<CoverFacts> = fc.oneof(
  fc.constantFrom<CoverFacts>({ kind: 'full' }, { kind: 'toSkirt' }, { kind: 'inside' }, { kind: 'side' }),
  typed('edgeUpMm').map((edgeUpMm): CoverFacts => ({ kind: 'downTo', edgeUpMm })),
  typed('edgeUpMm').map((edgeUpMm): CoverFacts => ({ kind: 'upTo', edgeUpMm })),
  typed('depthMm').map((depthMm): CoverFacts => ({ kind: 'collar', depthMm })),
)
const coats: fc.Arbitrary<readonly CoatFacts[]> = fc.array(
  fc.record({ bucketId: fc.constantFrom('b1', 'b2'), cover: covers, holdS: typed('holdS') }),
  { minLength: 1, maxLength: 3 },
)
const airs: fc.Arbitrary<AirFacts> = fc
  .record({
    tempC: typed('tempC'),
    rh: typed('rh'),
    draught: fc.constantFrom(...DRAUGHTS),
    altitudeM: perhaps(typed('altitudeM')),
  })
  .map(spread)

const DAY_S = 86_400
const deeds = fc.array(
  fc.record({
    what: fc.nat(9),
    afterS: fc.oneof(
      fc.double({ min: 0, max: 7200, noNaN: true }),
      fc.constantFrom(0, 30 * DAY_S, 500 * DAY_S),
    ),
    grams: typed('grams'),
    agoMin: typed('agoMin'),
    gramsPerMl: typed('gramsPerMl'),
    air: airs,
  }),
  { maxLength: 8 },
)

const P = 'p'
function doing(
  play: Play,
  deed: { what: number; grams: number; agoMin: number; gramsPerMl: number; air: AirFacts },
): Action {
  const pot = play.table.pots[P]
  const dipId = pot?.dips.at(-1)?.dipId ?? ''
  const all: Action[] = [
    { do: 'waxed', potId: P },
    { do: 'wiped', potId: P },
    { do: 'told', potId: P, agoMin: deed.agoMin },
    { do: 'told', potId: P, agoMin: 0 },
    { do: 'touched', potIds: [P], dry: deed.agoMin < 700 },
    { do: 'weigh', potId: P, grams: deed.grams, as: pot?.bisqueG === undefined ? 'bisque' : 'now' },
    { do: 'wash-off', potId: P },
    { do: 'set-air', air: deed.air },
    { do: 'read-density', bucketId: 'b1', gramsPerMl: deed.gramsPerMl },
    { do: 'held-longer', dipId, byS: 5 },
  ]
  return all[deed.what]!
}

/** Everything that a screen asks of the table. */
function look({ table, nowMs, card }: Play): void {
  expect(card.kind).not.toBe('empty')
  outputsOf(table, nowMs)
  jobsOf(table, nowMs)
  rideAlong(table)
  for (const pot of potsOnTable(table)) {
    const forecast = forecastOf(table, pot)
    if (forecast) expect(forecast.ready.early <= forecast.ready.late).toBe(true)
    const filled = filledAt(table, pot, nowMs)
    expect(filled >= 0 && filled <= 1).toBe(true)
    for (const bucketId of ['b1', 'b2']) warningsFor(table, pot, bucketId, nowMs)
  }
}

test('nothing that was accepted keeps a card, an estimate or a warning from being shown', {
  timeout: 7_200_000,
}, () => {
  let looked = 0
  fc.assert(
    fc.property(
      shapes,
      buckets,
      buckets,
      coats,
      airs,
      fc
        .record({
          wallMm: typed('wallMm'),
          footLineMm: typed('footLineMm'),
          absorption: typed('absorption'),
          sorptivityMmPerSqrtS: perhaps(typed('sorptivityMmPerSqrtS')),
        })
        .map(spread),
      fc.constantFrom('dry', 'damp', 'washed'),
      fc.boolean(),
      deeds,
      (shape, one, two, plan, air, board, bisqueWater, pour, done) => {
        const play = new Play()
        const set: Action[] = [
          { do: 'set-air', air },
          { do: 'set-board', board: { bisqueCone: '04', ...board } },
          { do: 'set-bucket', bucket: { ...one, bucketId: 'b1', name: 'One', letter: 'O' } },
          { do: 'set-bucket', bucket: { ...two, bucketId: 'b2', name: 'Two', letter: 'T' } },
          { do: 'set-stack', stack: { stackId: 's', name: 'S', coats: plan } },
        ]
        // Contradictions are refused.
        if (set.some((action) => play.try(action))) return
        // Measures that contradict each other are refused.
        if (
          play.try({
            do: 'set-pot',
            pot: {
              potId: P,
              shape,
              stackId: 's',
              bisqueWater,
              ...(pour ? { pourInsideFirst: true as const } : {}),
            },
          })
        )
          return
        looked++
        look(play)
        const { facts } = play.table.pots[P]!
        warningsOf(play.table, facts, plan, outlookOf(play.table, facts, plan, play.nowMs))
        fitOf(play.table, facts, plan, play.nowMs)
        for (const deed of done) {
          play.wait(deed.afterS)
          play.try(doing(play, deed))
          look(play)
        }
      },
    ),
    { numRuns: runsOf(100, 0.05) },
  )
  expect(looked).toBeGreaterThan(20)
})
