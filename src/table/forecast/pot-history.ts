import type { Dip, WallEvent } from '../../engine/contract.ts'
import type { PotHistory } from '../../engine/wait/seconds.ts'
import type { DipState, PotState, Table } from '../model/state.ts'
import { factsDipped } from '../model/uses.ts'
import { airAt, airOf } from './air-inputs.ts'
import { coverOn, profileOf } from './shape-inputs.ts'
import { bodyOf, slopOf } from './wall-inputs.ts'

export const MIN_MS = 60_000

/** Water left by a damp sponge, mm (0.02 to 0.05; assumption). */
const WIPE_WATER_MM = 0.03
/** Filled part of the pores of a pot that comes wet: washed is as full as after a wash-off. Assumptions. */
export const START_WATER = { damp: 0.5, washed: 1 } as const

/** A pot of the table as the engine sees it: its wall, everything that happened to it, the air it began in. */
export function historyOf(table: Table, pot: PotState): PotHistory {
  return historyWith(table, pot, pot.dips)
}

/**
 * The same with other dips than those that happened. That a coat was touched dry is told where another came after it, not
 * of the last one, whose wait is still asked for.
 */
export function historyWith(table: Table, pot: PotState, dips: readonly DipState[]): PotHistory {
  return historyOfEvents(table, pot, [
    ...foundDry(pot, dips).slice(0, -1).flat(),
    ...wallEvents(table, pot, dips),
  ])
}

/** The same for what is to come on top: the last coat too is as dry as a finger found it. */
export function standingWith(table: Table, pot: PotState, dips: readonly DipState[]): PotHistory {
  return historyOfEvents(table, pot, [...foundDry(pot, dips).flat(), ...wallEvents(table, pot, dips)])
}

/** Of each coat whose last touch said dry, that it was: before the next, though it may have come in the same moment. */
const foundDry = (pot: PotState, dips: readonly DipState[]): WallEvent[][] =>
  dips.map(({ dipId, outAt }, i) => {
    const touch = pot.touches.findLast((one) => one.dipId === dipId)
    const next = dips[i + 1]?.outAt ?? Infinity
    return touch?.dry && touch.at > outAt && touch.at <= next
      ? [{ kind: 'dry', atMin: touch.at / MIN_MS }]
      : []
  })

function historyOfEvents(table: Table, pot: PotState, events: readonly WallEvent[]): PotHistory {
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
  const facts = factsDipped(table, dip)
  if (!facts) return undefined
  return {
    kind: 'dip',
    id: dip.dipId,
    atMin: dip.outAt / MIN_MS,
    glazeId: dip.bucketId,
    slop: slopOf(table, { facts }, dip.gramsPerMl),
    holdS: dip.holdS,
    cover: coverOn(pot.facts, dip.cover),
    lowerMmPerS: table.settings.lowerMmPerS,
    liftMmPerS: table.settings.lowerMmPerS,
    dripS: table.settings.dripS,
  }
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
