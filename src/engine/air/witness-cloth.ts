/** The day's air by a witness cloth: a damp cloth weighed twice loses what the air takes. */

import { inRange } from '../check.ts'
import type { Air } from '../contract.ts'
import { wetSheet } from './air.ts'

/** A damp cloth hung by a corner or two, both faces in the air, weighed twice. */
export interface WitnessCloth {
  readonly widthMm: number
  readonly heightMm: number
  readonly firstG: number
  readonly secondG: number
  readonly minutes: number
}

export interface ClothReading {
  /** Loss of one face. */
  readonly gramsPerM2h: number
  /** Measured loss over the loss computed for this air, for `Air.factor`. */
  readonly airFactor: number
  /** Relative uncertainty of the factor from weighing to `scaleG`. */
  readonly relativeError: number
}

/** Below this computed loss the air is as good as saturated and a cloth says nothing about its factor. */
const LEAST_GRAMS_PER_M2H = 1

/**
 * The day's air factor from a witness cloth, whatever factor `air` had. `scaleG` is the step of the scale. The cloth
 * must still be damp at the second weighing. RangeError for a cloth that gained weight, and where the air is computed
 * to take nothing at all.
 */
export function witnessCloth(air: Air, cloth: WitnessCloth, scaleG: number): ClothReading {
  inRange('widthMm', cloth.widthMm, 50, 2000)
  inRange('heightMm', cloth.heightMm, 50, 2000)
  inRange('minutes', cloth.minutes, 5, 24 * 60)
  inRange('firstG', cloth.firstG, 1, 20_000)
  inRange('secondG', cloth.secondG, 0, cloth.firstG)
  inRange('scaleG', scaleG, 0.001, 100)
  const faceM2h = ((2 * cloth.widthMm * cloth.heightMm) / 1e6) * (cloth.minutes / 60)
  const lostG = cloth.firstG - cloth.secondG
  const gramsPerM2h = lostG / faceM2h
  const plain = { ...air, factor: 1 }
  const computed = wetSheet(plain, Math.min(1000, Math.sqrt(cloth.widthMm * cloth.heightMm)))
  const computedGramsPerM2h = computed.evaporationKgPerM2s * 3.6e6
  inRange('computed loss, g/m2h', computedGramsPerM2h, LEAST_GRAMS_PER_M2H, 1e5)
  // Each weighing is good to half a step, evenly spread: sd step/sqrt(12), twice over.
  const errorG = scaleG / Math.sqrt(6)
  return {
    gramsPerM2h,
    airFactor: gramsPerM2h / computedGramsPerM2h,
    relativeError: lostG > 0 ? errorG / lostG : Infinity,
  }
}
