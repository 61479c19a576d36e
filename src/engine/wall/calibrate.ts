/** Pick-up of a glaze from a pin scratch or from weighings, and the thirst of a body from two water dips. */

import { between, inRange } from '../check.ts'
import type { Body, Slop } from '../contract.ts'
import { DRIP_S, FILLABLE_OF_SOAK } from '../parameters.ts'
import { filmOf } from '../slop/film.ts'
import { drawn } from '../slop/pickup.ts'
import { checkedSlop, shedPerMm, solidsFraction } from '../slop/slop.ts'
import { DEFAULT_BODY, fillablePerMm } from './body.ts'

/** Sd of ln(pick-up) before any reading (a judgement). */
const PRIOR_SD = 0.3
/** A scratch is read to this, mm. */
const SCRATCH_ERROR_MM = 0.05

/** A coat this many times off what was computed is another clay or a slop of the pin, and says nothing (a judgement). */
const MOST_FACTOR = 10

/** One coat measured after one dip on dry ware, wet on one face or on both. */
export interface CoatReading {
  /** The slop with its factor as used so far; the reading is of what that factor should have been with 1. */
  readonly slop: Slop
  /** As a person counts them: from fully under to the start of the lift. */
  readonly holdS: number
  readonly measuredMm: number
  readonly errorMm: number
  readonly body: Body
  readonly wallMm: number
  readonly bothFaces: boolean
  /** Length of the coat along the wall, for its film. */
  readonly lengthMm: number
  readonly liftMmPerS: number
}

export interface PickUp {
  readonly factor: number
  /** Sd of its logarithm. */
  readonly sd: number
  readonly count: number
}

/** Raw factor of one reading: the measured coat less its film over the computed cast, and the sd of its logarithm. */
export function rawPickUp(reading: CoatReading): { readonly factor: number; readonly sd: number } {
  const slop = checkedSlop({ ...reading.slop, pickUpFactor: 1 })
  inRange('holdS', reading.holdS, 0.2, 600)
  inRange('wallMm', reading.wallMm, 0.5, 60)
  inRange('lengthMm', reading.lengthMm, 1, 1000)
  between('errorMm', reading.errorMm, 0, 10)
  const shed = shedPerMm(slop)
  const room = fillablePerMm(reading.body) * reading.wallMm * (reading.bothFaces ? 0.5 : 1)
  const cast =
    drawn(
      { suction2: reading.body.sorptivityMmPerSqrtS ** 2, room, coatRoom: 0, resistance: 0 },
      shed,
      slop.cakeResistanceSPerMm2,
      // The middle of the coat is under for the way in and out as well.
      reading.holdS + reading.lengthMm / reading.liftMmPerS,
    ).intoBody / shed
  between('cast of the dip, mm (a full wall says nothing of the slop)', cast, 0, room / shed)
  const film = filmOf(slop, reading.lengthMm, reading.liftMmPerS, DRIP_S).thirstyMm
  inRange('measuredMm', reading.measuredMm, film * 1.02, 10)
  const measuredCast = reading.measuredMm - film
  const factor = inRange('measured over computed cast', measuredCast / cast, 1 / MOST_FACTOR, MOST_FACTOR)
  return { factor, sd: reading.errorMm / measuredCast }
}

/**
 * The factor on a glaze's pick-up from its readings: the precision-weighted mean of their logarithms with a prior of
 * factor 1 and sd 0.3. No reading leaves 1. Body sorptivity scales with the factor and cake resistance with its
 * inverse square, which scales every cast by it exactly.
 */
export function pickUpOf(readings: readonly CoatReading[]): PickUp {
  let precision = 1 / PRIOR_SD ** 2
  let sum = 0
  for (const reading of readings) {
    const { factor, sd } = rawPickUp(reading)
    precision += 1 / sd ** 2
    sum += Math.log(factor) / sd ** 2
  }
  return { factor: Math.exp(sum / precision), sd: 1 / Math.sqrt(precision), count: readings.length }
}

/** The usual scratch: three seconds, both faces of a dry 5 mm tile under, 100 mm long. */
const TILE = { holdS: 3, wallMm: 5, lengthMm: 100, liftMmPerS: 120, bothFaces: true } as const

/** Pick-up from one pin scratch of the usual tile of this body, read to 0.05 mm: factor and sd. */
export const pinPickUp = (slop: Slop, pinMm: number, body: Body = DEFAULT_BODY): PickUp =>
  pickUpOf([{ ...TILE, body, slop, measuredMm: pinMm, errorMm: SCRATCH_ERROR_MM }])

/** Dry coat, mm, from the grams a face of `areaCm2` gained straight after the dip, slop and all. */
export function coatFromWetGain(slop: Slop, gainG: number, areaCm2: number): number {
  checkedSlop(slop)
  inRange('gainG', gainG, 0, 1e5)
  between('areaCm2', areaCm2, 0, 1e6)
  return (10 * (gainG / areaCm2) * solidsFraction(slop)) / (slop.gramsPerMl * slop.cakeSolids)
}

/**
 * Sorptivity of a body, mm/sqrt s, from grams gained by the same dry tile in two water dips of different length: the
 * difference takes the clinging water out (Hall & Hoff). `areaCm2` is the wetted face.
 */
export function sorptivityOf(
  first: { readonly seconds: number; readonly gainG: number },
  second: { readonly seconds: number; readonly gainG: number },
  areaCm2: number,
): number {
  between('areaCm2', areaCm2, 0, 1e6)
  inRange('first.seconds', first.seconds, 0.2, 3600)
  between('second.seconds', second.seconds, first.seconds, 36_000)
  inRange('first.gainG', first.gainG, 0, 1e5)
  between('second.gainG', second.gainG, first.gainG, 1e5)
  return (
    (10 * (second.gainG - first.gainG)) / (areaCm2 * (Math.sqrt(second.seconds) - Math.sqrt(first.seconds)))
  )
}

/** A whole dry pot, weighed, held fully under water on both faces, its drops wiped off, weighed again. */
export interface Soak {
  readonly dryG: number
  readonly wetG: number
  readonly seconds: number
}

/**
 * What a soak says of its body: how fast it drinks, or, of a wall that had time to fill, how much it holds (cold soak).
 * `between`: it was near to full, and says neither; `little`: too few grams for a kitchen scale.
 */
export type SoakReading =
  | { readonly is: 'suction'; readonly sorptivityMmPerSqrtS: number }
  | { readonly is: 'full'; readonly absorption: number }
  | { readonly is: 'between' | 'little' }

/** Clings to a wall whose drops were wiped off, mm. Assumption. */
const CLINGS_MM = 0.03
/** Fewer grams a kitchen scale tells to no better than a tenth. */
const LEAST_GAIN_G = 10
/** A wall that would draw so many times its room is full whatever the doubt of its suction (0.3 of its logarithm). */
const SURELY_FULL = 2
/** Up to this part of its room a wall draws by the square root of time. Assumption. */
const STILL_DRINKING = 0.7

/** Seconds that fill half the room of a wall of this body: well within {@link STILL_DRINKING}, at least 1. */
export const soakSeconds = (body: Body, wallMm: number): number =>
  Math.max(1, ((fillablePerMm(body) * wallMm) / 4 / body.sorptivityMmPerSqrtS) ** 2)

/**
 * Reads a soak by `i = S sqrt(t)` (Hall & Hoff) while the wall still drinks; once it is full its gain is the part of a
 * cold soak that a dip can fill. `areaCm2`: both faces of the pot; `body`: as assumed so far. Throws RangeError for
 * weights and times that make no sense.
 */
export function soakReading(
  { dryG, wetG, seconds }: Soak,
  { areaCm2, wallMm }: { readonly areaCm2: number; readonly wallMm: number },
  body: Body,
): SoakReading {
  between('dryG', dryG, 0, 1e5)
  inRange('wetG', wetG, dryG, 1e5)
  inRange('seconds', seconds, 0.2, 3600)
  between('areaCm2', areaCm2, 0, 1e6)
  inRange('wallMm', wallMm, 0.5, 60)
  const drunkG = wetG - dryG - (areaCm2 * CLINGS_MM) / 10
  if (drunkG < LEAST_GAIN_G) return { is: 'little' }
  const drunkMm = (10 * drunkG) / areaCm2
  const room = (fillablePerMm(body) * wallMm) / 2
  if (body.sorptivityMmPerSqrtS * Math.sqrt(seconds) >= SURELY_FULL * room)
    return { is: 'full', absorption: drunkG / dryG / FILLABLE_OF_SOAK }
  if (drunkMm > STILL_DRINKING * room) return { is: 'between' }
  return { is: 'suction', sorptivityMmPerSqrtS: drunkMm / Math.sqrt(seconds) }
}
