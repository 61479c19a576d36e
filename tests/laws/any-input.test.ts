/** Whatever is typed: no NaN, no endless loop, nothing thrown but a RangeError. */

import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Air, Band, Cover, Form, PotWall, WallEvent } from '../../src/engine/contract.ts'
import {
  densityFor,
  FORMS,
  forecastPot,
  nextCoat,
  outlineOf,
  repairRest,
  secondsFor,
  stackThatFits,
  UNLEARNED,
} from '../../src/engine/index.ts'
import { PATIENCE_MS, processorMs } from '../fixtures/patience.ts'
import { runsOf } from '../fixtures/runs.ts'

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Mostly sensible, sometimes at the very ends. */
const ended = (min: number, max: number) =>
  fc.oneof({ weight: 6, arbitrary: within(min, max) }, { weight: 1, arbitrary: fc.constantFrom(min, max) })

const airs: fc.Arbitrary<Air> = fc.record({
  tempC: ended(-5, 45),
  rh: ended(0, 1),
  speedMps: ended(0, 5),
  pressurePa: within(70_000, 105_000),
  factor: ended(0.1, 10),
})

const covers = (heightMm: number): fc.Arbitrary<Cover> =>
  fc.oneof(
    fc.constant<Cover>({ kind: 'full' }),
    fc.constant<Cover>({ kind: 'inside' }),
    within(0, heightMm).map<Cover>((edgeUpMm) => ({ kind: 'downTo', edgeUpMm })),
    within(0, heightMm).map<Cover>((edgeUpMm) => ({ kind: 'upTo', edgeUpMm })),
    within(0, heightMm).map<Cover>((depthMm) => ({ kind: 'collar', depthMm })),
  )

const MONTH_MIN = 30 * 24 * 60

interface Typed {
  readonly form: Form
  readonly heightMm: number
  readonly rimMm: number
  readonly wallMm: number
  readonly footLinePart: number
  readonly galleryMm: number
  readonly absorption: number
  readonly soak: boolean
  readonly sorptivity: number
  readonly startWater: number
  readonly gramsPerMl: number
  readonly solidsGravity: number
  readonly air: Air
  readonly later: readonly Air[]
  readonly others: readonly { readonly what: number; readonly atMin: number; readonly much: number }[]
}

const typed: fc.Arbitrary<Typed> = fc.record({
  form: fc.constantFrom(...FORMS),
  heightMm: within(25, 400),
  rimMm: within(40, 400),
  wallMm: ended(0.5, 60),
  footLinePart: ended(0, 1),
  galleryMm: ended(0, 15),
  absorption: ended(0, 0.4),
  soak: fc.boolean(),
  sorptivity: ended(0, 0.6),
  startWater: ended(0, 1),
  gramsPerMl: ended(1.01, 1.9),
  solidsGravity: within(2.2, 4),
  air: airs,
  later: fc.array(airs, { maxLength: 3 }),
  others: fc.array(fc.record({ what: fc.nat(1), atMin: ended(0, MONTH_MIN), much: ended(0, 300) }), {
    maxLength: 4,
  }),
})

const cases = typed.chain((of) =>
  fc.record({
    of: fc.constant(of),
    dips: fc.array(
      fc.record({
        atMin: fc.oneof(ended(0, 120), ended(0, MONTH_MIN)),
        holdS: ended(0, 60),
        cover: covers(of.heightMm),
        lowerMmPerS: ended(20, 500),
        liftMmPerS: ended(20, 500),
      }),
      { maxLength: 20 },
    ),
  }),
)

function eventsOf({ of, dips }: typeof cases extends fc.Arbitrary<infer T> ? T : never): WallEvent[] {
  const events: WallEvent[] = dips.map((coat, k) => ({
    ...coat,
    kind: 'dip',
    id: `${k}`,
    glazeId: `${k % 3}`,
    slop: {
      gramsPerMl: of.gramsPerMl,
      solidsGravity: of.solidsGravity,
      cakeSolids: 0.48,
      cakeResistanceSPerMm2: 12,
      pickUpFactor: 1,
    },
  }))
  for (const [k, air] of of.later.entries()) events.push({ kind: 'air', atMin: 60 * k, air })
  for (const { what, atMin, much } of of.others) {
    if (what === 0) events.push({ kind: 'wipe', atMin, waterMm: Math.min(100, much) })
    else events.push({ kind: 'washOff', atMin })
  }
  return events
}

const potOf = (of: Typed): PotWall => ({
  profile: outlineOf({
    form: of.form,
    heightMm: of.heightMm,
    rimMm: of.rimMm,
    wallMm: of.wallMm,
    footLineMm: of.footLinePart * of.heightMm,
    galleryMm: of.galleryMm,
  }),
  body: {
    absorption: of.absorption,
    absorptionTest: of.soak ? 'soak' : 'boil',
    bulkGramsPerMl: 1.9,
    sorptivityMmPerSqrtS: of.sorptivity,
  },
  startWater: of.startWater,
})

/** A real number or Infinity, in order. */
function sound(band: Band): void {
  for (const minutes of [band.lower, band.likely, band.upper]) expect(minutes > -Infinity).toBe(true)
  expect(band.lower <= band.likely && band.likely <= band.upper).toBe(true)
}

test('any wall, slop, air and list of events is forecast soundly or refused by name', {
  timeout: 7_200_000,
}, () => {
  let [forecasts, refused] = [0, 0]
  fc.assert(
    fc.property(cases, (typedIn) => {
      const { of } = typedIn
      const from = processorMs()
      try {
        const pot = potOf(of)
        const forecast = forecastPot(pot, eventsOf(typedIn), of.air, UNLEARNED)
        forecasts++
        for (const band of [forecast.touchDry, forecast.thirsty, forecast.kilnDry]) sound(band)
        for (const zone of forecast.zones) {
          expect(zone.filled >= 0 && zone.filled <= 1).toBe(true)
          expect(zone.likelyMm >= 0 && zone.upperMm >= zone.likelyMm && zone.upperMm < 1000).toBe(true)
          for (const coat of zone.coats) expect(coat.likelyMm >= 0).toBe(true)
        }
      } catch (error) {
        if (!(error instanceof RangeError)) throw error
        refused++
      }
      expect(processorMs() - from).toBeLessThan(PATIENCE_MS)
    }),
    { numRuns: runsOf(2000) },
  )
  // Enough of them must have been computed for the proof to mean something.
  expect(forecasts).toBeGreaterThan(refused / 9)
  console.info(`${forecasts} forecast, ${refused} refused`)
})

test('any advice on them is a number that can be used, nothing, or refused by name', {
  timeout: 7_200_000,
}, () => {
  let [advised, refused] = [0, 0]
  const usable = (seconds: number | undefined, most: number): void => {
    if (seconds !== undefined) expect(seconds >= 0 && seconds <= most).toBe(true)
  }
  fc.assert(
    fc.property(cases, within(0.05, 3), (typedIn, wantedMm) => {
      try {
        const dips = eventsOf(typedIn).filter((event) => event.kind === 'dip')
        const standing = { pot: potOf(typedIn.of), events: dips.slice(0, 2), air0: typedIn.of.air }
        const dip = dips.at(-1)
        if (!dip) return
        usable(secondsFor(standing, dip, wantedMm).holdS, 20)
        usable(densityFor({ ...standing, events: [] }, { ...dip, holdS: 3 }, wantedMm), 2)
        const { likelyMm, thirstyMm } = nextCoat(standing, dip)
        expect(likelyMm >= 0 && thirstyMm >= 0).toBe(true)
        const fit = stackThatFits({ ...standing, events: [] }, dips.slice(0, 3))
        for (const s of [
          ...(fit.seconds ?? []),
          ...(fit.split?.insideS ?? []),
          ...(fit.split?.outsideS ?? []),
        ])
          usable(s, 60)
        const repair = repairRest(standing, dips.slice(0, 3), dips.slice(2, 3), { stackMm: 1.2, glazeMm: {} })
        for (const { holdS } of repair.rest) usable(holdS, 60)
        advised++
      } catch (error) {
        if (!(error instanceof RangeError)) throw error
        refused++
      }
    }),
    { numRuns: runsOf(100, 0.02) },
  )
  expect(advised).toBeGreaterThan(refused / 20)
})
