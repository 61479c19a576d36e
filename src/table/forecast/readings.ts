import type { AirFacts } from '../../../shared/nouns.ts'
import { type Condensation, condensation } from '../../engine/air/dew.ts'
import { type PairDraught, pairTrouble, rhFromPair } from '../../engine/air/psychrometer.ts'
import { witnessCloth } from '../../engine/air/witness-cloth.ts'
import { faceAreaCm2 } from '../../engine/shape/areas.ts'
import { yieldAtMostPa } from '../../engine/slop/film.ts'
import { defaultSlop } from '../../engine/slop/slop.ts'
import { bisqueOf } from '../../engine/wall/body.ts'
import {
  coatFromWetGain,
  type Soak,
  type SoakReading,
  soakReading,
  soakSeconds,
  sorptivityOf,
} from '../../engine/wall/calibrate.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import type { PotState, Table } from '../model/state.ts'
import { airOf } from './air-inputs.ts'
import { profileOf } from './shape-inputs.ts'
import { bodyOf } from './wall-inputs.ts'

export type { Learned, Lesson } from '../../engine/index.ts'
export { Z90 } from '../../engine/numeric/spread.ts'
export type { PairDraught }

/** Step of a kitchen scale that is fit for a cloth, grams. Assumption. */
const SCALE_G = 0.5
/** Width of a pot for its dew, mm: that of a bowl or mug. Assumption. */
const POT_MM = 100

export type PairReading =
  | { readonly is: 'humidity'; readonly rh: number; readonly icy: boolean }
  | { readonly is: 'wetAbove' | 'tooDry' }

/** Humidity from a dry and a wet thermometer, or what to ask about them. */
export function readPair(air: AirFacts, dryC: number, wetC: number, draught: PairDraught): PairReading {
  if (wetC > dryC) return { is: 'wetAbove' }
  const { pressurePa } = airOf(air)
  const trouble = pairTrouble(dryC, wetC, draught, pressurePa)
  if (trouble === 'tooDry') return { is: trouble }
  // Told to a whole percent: a thermometer is read to half a degree.
  const rh = Math.max(LIMITS.rh.least, Math.round(rhFromPair(dryC, wetC, draught, pressurePa) * 100) / 100)
  return { is: 'humidity', rh, icy: trouble === 'icy' }
}

/**
 * The hung cloth's second weighing `minutes` after its first: the cloth of the air from now on, or why there is none.
 * `wrong`: too soon, too late, or a loss that no air could be behind; `noAir`: this air takes nothing.
 */
export function readCloth(
  air: AirFacts,
  hung: NonNullable<AirFacts['hung']>,
  grams: number,
  minutes: number,
): NonNullable<AirFacts['cloth']> | 'wrong' | 'noAir' {
  if (grams >= hung.grams || outOfRange('clothMin', minutes)) return 'wrong'
  try {
    const { airFactor } = witnessCloth(
      airOf(air),
      { widthMm: hung.widthMm, heightMm: hung.heightMm, firstG: hung.grams, secondG: grams, minutes },
      SCALE_G,
    )
    if (outOfRange('airFactor', airFactor)) return 'wrong'
    return { lostG: hung.grams - grams, minutes, factor: airFactor }
  } catch (error) {
    if (error instanceof RangeError) return 'noAir'
    throw error
  }
}

/** Dew on pots brought in at `potC`. */
export const dewOn = (air: AirFacts, potC: number): Condensation => condensation(airOf(air), potC, POT_MM)

/** Dry coat from what a face gained wet, mm; undefined for a slop or a gain that can't be. */
export function coatByWeight(
  gramsPerMl: number,
  solidsGravity: number,
  gainG: number,
  areaCm2: number,
): number | undefined {
  try {
    return coatFromWetGain(defaultSlop(gramsPerMl, solidsGravity), gainG, areaCm2)
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** A slide dipped and dripped as a pot, with slop on both faces. */
export interface Slide {
  /** Wet film, g/cm2. */
  readonly gramsPerCm2: number
  /** Yield stress is at most this. */
  readonly yieldPa: number
  /** What a wall that is full keeps of this slop, dry. */
  readonly fullMm: number
}

/** What a weighed slide says; `wrong` for a film that no slop leaves, undefined for one too thin or thick to dip. */
export function readSlide(
  gramsPerMl: number,
  solidsGravity: number,
  gainG: number,
  areaCm2: number,
): Slide | 'wrong' | undefined {
  const gramsPerCm2 = gainG / areaCm2
  if (outOfRange('clingsGramsPerCm2', gramsPerCm2)) return 'wrong'
  const fullMm = coatByWeight(gramsPerMl, solidsGravity, gainG, areaCm2)
  return fullMm === undefined ? undefined : { gramsPerCm2, yieldPa: yieldAtMostPa(gramsPerCm2), fullMm }
}

interface WaterDip {
  readonly seconds: number
  readonly gainG: number
}

/** How fast a tile drinks, from two water dips, mm/sqrt s; undefined where they can't both be right. */
export function thirstOf(first: WaterDip, second: WaterDip, areaCm2: number): number | undefined {
  if (second.seconds <= first.seconds || second.gainG <= first.gainG) return undefined
  const found = sorptivityOf(first, second, areaCm2)
  return outOfRange('sorptivityMmPerSqrtS', found) ? undefined : found
}

/**
 * What one pot of this table says of its clay that was weighed dry and after seconds in water; undefined where its
 * weights, or what they lead to, cannot be.
 */
export function readSoak(table: Table, { facts }: PotState, soak: Soak): SoakReading | undefined {
  if (soak.wetG <= soak.dryG) return undefined
  const profile = profileOf(facts)
  const areaCm2 = FACES.reduce(
    (sum, face) => sum + faceAreaCm2(profile, face, 0, facts.shape.heightMm + 1),
    0,
  )
  const reading = soakReading(soak, { areaCm2, wallMm: facts.shape.wallMm }, bodyOf(table, facts))
  switch (reading.is) {
    case 'suction':
      return outOfRange('sorptivityMmPerSqrtS', reading.sorptivityMmPerSqrtS) ? undefined : reading
    case 'full':
      return outOfRange('absorption', reading.absorption) ? undefined : reading
    case 'between':
      return outOfRange('absorption', soak.wetG / soak.dryG - 1) ? undefined : reading
    case 'little':
      return reading
  }
}

/** Seconds in water, whole ones, after which a pot of this table tells how fast it drinks. */
export const soakSecondsFor = (table: Table, { facts }: PotState): number =>
  Math.round(soakSeconds(bodyOf(table, facts), facts.shape.wallMm))

const FACES = ['inside', 'outside'] as const

/** Against a clay of this absorption that nobody dipped a tile of. */
export const timesAssumed = (sorptivity: number, absorption: number): number =>
  sorptivity / bisqueOf(absorption).sorptivityMmPerSqrtS
