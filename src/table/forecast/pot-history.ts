import type { Dip, WallEvent } from '../../engine/contract.ts'
import { faceAreaCm2 } from '../../engine/shape/areas.ts'
import { type PotHistory, zonesAfter } from '../../engine/wait/seconds.ts'
import { dipsOnHalf, type Half, hasOverlap, OVERLAP_DEG } from '../model/halves.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { bucketOfCoat } from '../model/uses.ts'
import { airAt, airOf, bodyOf, coverOn, profileOf, slopOf } from './engine-inputs.ts'

export const MIN_MS = 60_000

/** Water left by a damp sponge, mm (0.02 to 0.05; assumption). */
const WIPE_WATER_MM = 0.03
/** Filled part of the pores of a pot that comes wet: washed is as full as after a wash-off. Assumptions. */
const START_WATER = { damp: 0.5, washed: 1 } as const

/** A pot of the table as the engine sees it: its wall, everything that happened to it, the air it began in. */
export function historyOf(table: Table, pot: PotState): PotHistory {
  return historyWith(table, pot, pot.dips)
}

/** The same with other dips than those that happened. */
export function historyWith(table: Table, pot: PotState, dips: readonly DipState[]): PotHistory {
  const events = [...wallEvents(table, pot, dips), ...weighings(table, pot, dips)]
  const first = events.reduce((min, event) => Math.min(min, event.atMin), Number.POSITIVE_INFINITY)
  return {
    pot: {
      profile: profileOf(pot.facts),
      body: bodyOf(table, pot.facts),
      startWater: pot.damp ? START_WATER[pot.damp.water] : 0,
    },
    events,
    air0: airOf(airAt(table.air, first * MIN_MS)),
  }
}

/** The engine's dip for a dip of the table; undefined when its bucket was never known. */
export function engineDip(table: Table, pot: PotState, dip: DipState): Dip | undefined {
  const bucket = bucketOfCoat(table, dip.bucketId)
  if (!bucket) return undefined
  return {
    kind: 'dip',
    id: dip.dipId,
    atMin: dip.outAt / MIN_MS,
    glazeId: dip.bucketId,
    slop: slopOf(table, bucket, dip.gramsPerMl),
    holdS: dip.holdS,
    cover: coverOn(pot.facts, dip.cover),
    lowerMmPerS: table.settings.lowerMmPerS,
    liftMmPerS: table.settings.lowerMmPerS,
  }
}

/** Readings of the scale, as water: less the bisque, less the glaze that was on by then. */
function weighings(table: Table, pot: PotState, dips: readonly DipState[]): WallEvent[] {
  return pot.weighings.flatMap((reading): WallEvent[] => {
    const found = waterAt(table, pot, dips, reading)
    return found ? [{ kind: 'weigh', atMin: reading.at / MIN_MS, waterG: Math.max(0, found.waterG) }] : []
  })
}

/** Water in a pot on the scale, and the dry glaze taken off for it, grams. Undefined before its bisque was weighed. */
export function waterAt(
  table: Table,
  pot: PotState,
  dips: readonly DipState[],
  { at, grams }: PotState['weighings'][number],
): { readonly waterG: number; readonly dryG: number } | undefined {
  if (pot.bisqueG === undefined) return undefined
  const dryG = dryGlazeG(
    table,
    pot,
    dips.filter((dip) => dip.outAt <= at),
  )
  return { waterG: grams - pot.bisqueG - dryG, dryG }
}

/** Dry glaze that these dips left on the pot, grams, as computed: half and half, each sector by its share of the round. */
function dryGlazeG(table: Table, pot: PotState, dips: readonly DipState[]): number {
  if (!hasOverlap(table, pot, dips)) return dryAllRoundG(table, pot, dips)
  const both = OVERLAP_DEG / 180
  const half = (of: Half) => dryAllRoundG(table, pot, dipsOnHalf(table, { ...pot, dips }, of))
  return dryAllRoundG(table, pot, dips) * both + ((half(0) + half(1)) * (1 - both)) / 2
}

function dryAllRoundG(table: Table, pot: PotState, dips: readonly DipState[]): number {
  if (dips.length === 0) return 0
  const events = wallEvents(table, pot, dips)
  const profile = profileOf(pot.facts)
  const first = Math.min(...events.map((event) => event.atMin))
  const wall = { profile, body: bodyOf(table, pot.facts), startWater: 0 }
  const zones = zonesAfter({ pot: wall, events, air0: airOf(airAt(table.air, first * MIN_MS)) })
  let grams = 0
  for (const zone of zones)
    for (const coat of zone.coats) {
      const bucket = bucketOfCoat(table, coat.glazeId)
      if (!bucket) continue
      const slop = slopOf(table, bucket, bucket.gramsPerMl)
      const cm2 = faceAreaCm2(profile, zone.face, zone.fromMm, zone.toMm)
      grams += (cm2 * coat.likelyMm * slop.cakeSolids * slop.solidsGravity) / 10
    }
  return grams
}

function wallEvents(table: Table, pot: PotState, dips: readonly DipState[]): WallEvent[] {
  const events: WallEvent[] = []
  if (pot.wipedAt !== undefined)
    events.push({ kind: 'wipe', atMin: pot.wipedAt / MIN_MS, waterMm: WIPE_WATER_MM })
  for (const dip of dips) {
    const event = engineDip(table, pot, dip)
    if (event) events.push(event)
  }
  if (pot.washedAt !== undefined) events.push({ kind: 'washOff', atMin: pot.washedAt / MIN_MS })
  if (pot.damp)
    events.push({ kind: 'air', atMin: pot.damp.at / MIN_MS, air: airOf(airAt(table.air, pot.damp.at)) })
  const from = Math.min(...events.map((event) => event.atMin))
  for (const spell of table.air)
    if (spell.at / MIN_MS > from)
      events.push({ kind: 'air', atMin: spell.at / MIN_MS, air: airOf(spell.air) })
  return events
}
