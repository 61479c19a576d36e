import type { Settings } from '../../../shared/nouns.ts'
import type { Band } from '../../engine/contract.ts'
import { forecastPot, type NotYet } from '../../engine/wait/forecast.ts'
import { type HalfAndHalf, halfAndHalf } from '../../engine/wait/half-and-half.ts'
import { type Learned, unlearnedOn } from '../../engine/wait/learned.ts'
import { halfAt, hasOverlap, OVERLAP_DEG } from '../model/halves.ts'
import { coatsOn, lastDip, nextCoat, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { factsDipped } from '../model/uses.ts'
import { askAgainMs, type BandMs, type Forecast, notYetOf, TOGETHER_MS } from './forecast.ts'
import { lessonFor } from './learning.ts'
import { historyOf, MIN_MS } from './pot-history.ts'
import { bodyOf } from './wall-inputs.ts'

const kept = new WeakMap<PotState, { readonly key: readonly unknown[]; readonly value: Forecast }>()

/** What the coats on a pot, or the damp in it, do next. Kept until the pot, air or learning change. */
export function wallForecast(table: Table, pot: PotState): Forecast {
  const last = pot.dips.at(-1)
  const glaze = last?.bucketId ?? planOf(table, pot)[0]?.bucketId ?? ''
  const learned = lessonFor(table, glaze)
  // A coat found damp is bounded by that itself: it is not taught by it as well.
  const before = notYetOf(pot) ? lessonFor(table, glaze, last?.dipId) : learned
  const until = heldUntil(table, pot)
  const key = [
    until,
    before,
    table.air,
    table.settings,
    table.board,
    learned,
    ...pot.dips.map((dip) => factsDipped(table, dip)),
  ]
  const known = kept.get(pot)
  if (known && known.key.length === key.length && known.key.every((k, i) => k === key[i])) return known.value
  const value = { ...forecastWith(table, pot, before, notYetAsked(table, pot)), learned }
  kept.set(pot, { key, value })
  return value
}

function notYetAsked(table: Table, pot: PotState): NotYet | undefined {
  const damp = notYetOf(pot)
  const of = table.settings.readyMeans === 'thirsty' ? 'thirsty' : 'touch'
  return damp && { of, atMin: damp.at / MIN_MS }
}

/** The same if no touch and no weighing had taught anything: what it would be by wall, coats and air alone. Not kept. */
export const untaughtForecast = (table: Table, pot: PotState): Forecast =>
  forecastWith(table, pot, unlearnedOn(bodyOf(table)))

function forecastWith(table: Table, pot: PotState, learned: Learned, notYet?: NotYet): Forecast {
  const halves = hasOverlap(table, pot, pot.dips) ? halvesOf(table, pot, learned, notYet) : undefined
  const { pot: wall, events, air0 } = historyOf(table, pot)
  const forecast = halves?.overlap ?? forecastPot(wall, events, air0, learned, notYet)
  const touch = inMs(forecast.touchDry)
  const thirsty = inMs(forecast.thirsty)
  const byClock = clockWaits(table, pot)
  return {
    pot: forecast,
    ...(halves ? { halves } : {}),
    touch,
    thirsty,
    kiln: byClock?.kiln ?? inMs(forecast.kilnDry),
    ...readyAt(table, pot, byClock?.ready ?? (table.settings.readyMeans === 'thirsty' ? thirsty : touch)),
    learned,
  }
}

function halvesOf(table: Table, pot: PotState, learned: Learned, notYet?: NotYet): HalfAndHalf {
  const half = new Map(pot.dips.map((dip) => [dip.dipId, halfAt(table, pot, dip.coat, dip.cover)]))
  return halfAndHalf(historyOf(table, pot), (dipId) => half.get(dipId), OVERLAP_DEG, learned, notYet)
}

/** Before this, table time, ms, the next coat of a plan does not go on, dry or not. */
export const heldUntil = (table: Table, pot: PotState): number =>
  (lastDip(pot)?.outAt ?? 0) + (planOf(table, pot)[nextCoat(pot)]?.afterMin ?? 0) * MIN_MS

/** When the next coat may go on, of one that is dry at `dry`. A coat that was touched dry too early has no band left. */
function readyAt(table: Table, pot: PotState, dry: BandMs): Pick<Forecast, 'ready' | 'held'> {
  const until = heldUntil(table, pot)
  const last = pot.touches.at(-1)
  return last?.dry && last.dipId === lastDip(pot)?.dipId && last.at < until - TOGETHER_MS
    ? { ready: { lower: until, likely: until, upper: until }, held: true }
    : { ready: noSooner(dry, until) }
}

const noSooner = ({ lower, likely, upper }: BandMs, than: number): BandMs => ({
  lower: Math.max(lower, than),
  likely: Math.max(likely, than),
  upper: Math.max(upper, than),
})

/** Where the room goes by the clock: its own minutes from OUT of the latest coat. */
function clockWaits(table: Table, pot: PotState): Pick<Forecast, 'ready' | 'kiln'> | undefined {
  const out = lastDip(pot)?.outAt
  if (table.settings.readyMeans !== 'clock' || out === undefined) return undefined
  const after = (min: number): BandMs => {
    const at = out + min * MIN_MS
    return { lower: at, likely: at, upper: at }
  }
  const damp = notYetOf(pot)
  return {
    ready: noSooner(
      after(ownWaitMin(table.settings, coatsOn(pot).length - 1)),
      damp ? damp.at + askAgainMs(damp.at - out) : 0,
    ),
    kiln: after(table.settings.kilnWaitMin),
  }
}

/** The room's own minutes after the coat of this index. */
export const ownWaitMin = (settings: Settings, coat: number): number =>
  coat === 0 ? settings.firstWaitMin : settings.laterWaitMin

const inMs = (band: Band): BandMs => ({
  lower: band.lower * MIN_MS,
  likely: band.likely * MIN_MS,
  upper: band.upper * MIN_MS,
})
