import type { Dip, PotForecast, WallEvent } from '../engine/contract.ts'
import { forecastPot, UNLEARNED, waxSetMin } from '../engine/index.ts'
import { airAt, airOf, bodyOf, coverOn, profileOf, slipOf } from './clay.ts'
import type { DipState, PotState, Table } from './state.ts'

const MIN_MS = 60_000

/** Water left by a damp sponge, mm (0.02 to 0.05; assumption). */
const WIPE_WATER_MM = 0.03

/** Moments in table time, ms. */
export interface BandMs {
  readonly early: number
  readonly likely: number
  readonly late: number
}

export interface Forecast {
  readonly pot: PotForecast
  /** When it is READY, as the room understands ready. */
  readonly ready: BandMs
  readonly touch: BandMs
  readonly thirsty: BandMs
  readonly kiln: BandMs
}

const kept = new WeakMap<PotState, { readonly key: readonly unknown[]; readonly value: Forecast }>()

/** What the coats on a pot do next. Undefined before the first dip. Kept until the pot, air or learning change. */
export function forecastOf(table: Table, pot: PotState): Forecast | undefined {
  if (pot.dips.length === 0) return undefined
  const key = [
    table.air,
    table.settings,
    table.board,
    ...pot.dips.map((dip) => table.buckets[dip.bucketId]?.facts),
  ]
  const before = kept.get(pot)
  if (before && before.key.length === key.length && before.key.every((k, i) => k === key[i]))
    return before.value
  const value = inTableTime(table, forecastWith(table, pot, []))
  kept.set(pot, { key, value })
  return value
}

/** The engine's forecast with further dips that have not happened. */
export function forecastWith(table: Table, pot: PotState, more: readonly Dip[]): PotForecast {
  const events = [...wallEvents(table, pot), ...more]
  const first = events.reduce((min, event) => Math.min(min, event.atMin), Number.POSITIVE_INFINITY)
  const wall = {
    profile: profileOf(pot.facts),
    body: bodyOf(table, pot.facts),
    startWater: pot.facts.damp ? DAMP_START : 0,
  }
  return forecastPot(wall, events, airOf(airAt(table.air, first * MIN_MS)), UNLEARNED)
}

/** Filled part of the pores of a pot said to be damp from washing. Assumption. */
const DAMP_START = 0.4

/** The engine's dip for a dip of the table. */
export function engineDip(table: Table, pot: PotState, dip: DipState): Dip | undefined {
  const bucket = table.buckets[dip.bucketId]
  if (!bucket) return undefined
  return {
    kind: 'dip',
    id: dip.dipId,
    atMin: dip.outAt / MIN_MS,
    glazeId: dip.bucketId,
    slip: slipOf(bucket, dip.gramsPerMl),
    holdS: dip.holdS,
    cover: coverOn(pot.facts, dip.cover),
    lowerMmPerS: table.settings.lowerMmPerS,
    liftMmPerS: table.settings.lowerMmPerS,
  }
}

function wallEvents(table: Table, pot: PotState): WallEvent[] {
  const events: WallEvent[] = []
  if (pot.wipedAt !== undefined)
    events.push({ kind: 'wipe', atMin: pot.wipedAt / MIN_MS, waterMm: WIPE_WATER_MM })
  for (const dip of pot.dips) {
    const event = engineDip(table, pot, dip)
    if (event) events.push(event)
  }
  if (pot.washedAt !== undefined) events.push({ kind: 'washOff', atMin: pot.washedAt / MIN_MS })
  const from = Math.min(...events.map((event) => event.atMin))
  for (const spell of table.air)
    if (spell.at / MIN_MS > from)
      events.push({ kind: 'air', atMin: spell.at / MIN_MS, air: airOf(spell.air) })
  return events
}

function inTableTime(table: Table, pot: PotForecast): Forecast {
  const ms = (band: { early: number; likely: number; late: number }): BandMs => ({
    early: band.early * MIN_MS,
    likely: band.likely * MIN_MS,
    late: band.late * MIN_MS,
  })
  const touch = ms(pot.touchDry)
  const thirsty = ms(pot.thirsty)
  return {
    pot,
    touch,
    thirsty,
    kiln: ms(pot.kilnDry),
    ready: table.settings.readyMeans === 'thirsty' ? thirsty : touch,
  }
}

/** How long the wax on this pot's foot takes to set, ms. */
export function waxSetMs(table: Table, pot: PotState): number {
  const air = airOf(airAt(table.air, pot.waxedAt ?? 0))
  return waxSetMin(table.settings.wax, air) * MIN_MS
}
