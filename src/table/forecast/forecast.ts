import type { AirFacts, Settings } from '../../../shared/nouns.ts'
import { waxSetMin } from '../../engine/air/wax.ts'
import type { PotForecast } from '../../engine/contract.ts'
import type { HalfAndHalf } from '../../engine/wait/half-and-half.ts'
import type { Learned } from '../../engine/wait/learned.ts'
import { lastDip } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'
import { airAt, airOf } from './air-inputs.ts'

/** Moments in table time, ms. */
export interface BandMs {
  readonly lower: number
  readonly likely: number
  readonly upper: number
}

/** Pots due within this of one another are called as one. */
export const TOGETHER_MS = 60_000

export interface Forecast {
  /** Where dips overlap that only reached a half, if any did. */
  readonly pot: PotForecast
  /** Each half by itself, where both have coats of their own. */
  readonly halves?: Pick<HalfAndHalf, 'first' | 'second'>
  /** When it is READY, as the room understands ready. */
  readonly ready: BandMs
  /** A touch said dry, and the next coat is for later all the same: `ready` is that moment, and asks again. */
  readonly held?: true
  readonly touch: BandMs
  readonly thirsty: BandMs
  readonly kiln: BandMs
  /** What it was forecast with. */
  readonly learned: Learned
}

/** What computes walls. */
export interface Walls {
  readonly wallForecast: (table: Table, pot: PotState) => Forecast
  readonly wallFilledAt: (table: Table, pot: PotState, now: number) => number
}

/** After "not yet" a coat is asked about again after a quarter of its age, within these limits, ms. Our choice. */
const ASK_AGAIN_PART = 0.25
const ASK_AGAIN_MS = { least: 2 * 60_000, most: 15 * 60_000 }

/** How long after a "not yet" a coat is left alone, from its age then, ms. */
export const askAgainMs = (ageMs: number): number =>
  Math.min(ASK_AGAIN_MS.most, Math.max(ASK_AGAIN_MS.least, ageMs * ASK_AGAIN_PART))

/** The touch that found the last coat of a pot not yet dry, unless a later one said dry. */
export function notYetOf(pot: PotState): PotState['touches'][number] | undefined {
  const last = pot.touches.findLast(({ dipId }) => dipId === lastDip(pot)?.dipId)
  return last?.dry === false ? last : undefined
}

let walls: Walls | undefined

/** The code that computes walls is here: a table of bare dry pots does without. */
export function haveWalls(here: Walls): void {
  walls = here
}

/** A coat on a pot, or damp in it, or was: there is something to forecast. */
export const isWet = (pot: PotState): boolean => pot.dips.length > 0 || pot.damp !== undefined

/** Whether no card of this table may be asked for before `haveWalls`. */
export const needsWalls = (table: Table): boolean => Object.values(table.pots).some(isWet)

function wallsFor(pot: PotState): Walls {
  if (!walls) throw new Error(`nothing computes walls of ${pot.facts.potId}`)
  return walls
}

/**
 * What the coats on a pot, or the damp in it, do next. Undefined for a dry bare pot. Kept until the pot, air or learning
 * change.
 * @throws Error for any other pot before `haveWalls`.
 */
export const forecastOf = (table: Table, pot: PotState): Forecast | undefined =>
  isWet(pot) ? wallsFor(pot).wallForecast(table, pot) : undefined

/**
 * Filled part of the fullest stretch of the wall at table time `now`, 0 to 1: by its coats, or the tap.
 * @throws Error for a pot that is or was wet before `haveWalls`.
 */
export const filledAt = (table: Table, pot: PotState, now: number): number =>
  isWet(pot) ? wallsFor(pot).wallFilledAt(table, pot, now) : 0

const setMin = new WeakMap<AirFacts, Partial<Record<Settings['wax'], number>>>()
const MIN_MS = 60_000

/** How long the wax on this pot's foot takes to set, ms. Asked for every pot at every tick: kept by air. */
export function waxSetMs(table: Table, pot: PotState): number {
  const { wax } = table.settings
  const air = airAt(table.air, pot.waxedAt ?? Number.POSITIVE_INFINITY)
  const known = setMin.get(air) ?? {}
  setMin.set(air, known)
  known[wax] ??= waxSetMin(wax, airOf(air))
  return known[wax] * MIN_MS
}
