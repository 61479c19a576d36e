/** Glaze slop at the dip: what its density says about the coat it leaves. */

import { between, inRange } from '../check.ts'
import type { Slop } from '../contract.ts'

/** Packing of the deposited coat. Tuned on one measured raw and fired pair (0.41 and 0.20 mm); 0.42 to 0.58. */
export const CAKE_SOLIDS = 0.48
/** Resistance of the coat to water, s/mm2. Tuned; plausible 5 to 110. */
export const CAKE_RESISTANCE_S_PER_MM2 = 12
/** At and above this part of the packing the slop is as thick as the coat and no law of casting holds. */
const THICKEST_PART = 0.9
/** Densest slop that is accepted at all. */
const DENSEST_GRAMS_PER_ML = 1.9

/** A slop of which only density and solids gravity are known: packing and resistance are the tuned defaults. */
export function defaultSlop(gramsPerMl: number, solidsGravity: number): Slop {
  return checkedSlop({
    gramsPerMl,
    solidsGravity,
    cakeSolids: CAKE_SOLIDS,
    cakeResistanceSPerMm2: CAKE_RESISTANCE_S_PER_MM2,
    pickUpFactor: 1,
  })
}

/** Solids volume fraction of the slop, (d - 1)/(s - 1). */
export const solidsFraction = (slop: Pick<Slop, 'gramsPerMl' | 'solidsGravity'>): number =>
  (slop.gramsPerMl - 1) / (slop.solidsGravity - 1)

/** mm of water that must leave for each mm of coat: packing over solids fraction, less one. */
export const shedPerMm = (slop: Slop): number => slop.cakeSolids / solidsFraction(slop) - 1

/** Densest slop, g/mL, that this glaze's packing and solids gravity allow the law of dipping to treat. */
export const densestGramsPerMl = (slop: Pick<Slop, 'solidsGravity' | 'cakeSolids'>): number =>
  Math.min(DENSEST_GRAMS_PER_ML, 1 + THICKEST_PART * slop.cakeSolids * (slop.solidsGravity - 1))

/** Short of the densest by this, g/mL, a slop still casts. */
const STILL_CASTS = 1e-3

/**
 * `defaultSlop` for any reading above 1 g/mL: one too thick for the law of dipping counts as the thickest that it
 * treats. Throws RangeError unless solids gravity is from 1.5 to 8.
 */
export const nearestSlop = (gramsPerMl: number, solidsGravity: number): Slop =>
  defaultSlop(Math.min(gramsPerMl, thickestGramsPerMl(solidsGravity)), solidsGravity)

/** Thickest slop, g/mL, of this solids gravity and the usual packing that can be dipped. */
export const thickestGramsPerMl = (solidsGravity: number): number =>
  densestGramsPerMl({ solidsGravity, cakeSolids: CAKE_SOLIDS }) - STILL_CASTS

/** Throws RangeError unless the slop is one that can be dipped: solids fraction below 0.9 of the packing. */
export function checkedSlop(slop: Slop): Slop {
  inRange('solidsGravity', slop.solidsGravity, 1.5, 8)
  inRange('cakeSolids', slop.cakeSolids, 0.2, 0.74)
  between('gramsPerMl', slop.gramsPerMl, 1, densestGramsPerMl(slop))
  inRange('cakeResistanceSPerMm2', slop.cakeResistanceSPerMm2, 0, 10_000)
  inRange('pickUpFactor', slop.pickUpFactor, 0.05, 20)
  inRange('clingsGramsPerCm2', slop.clingsGramsPerCm2 ?? 0, 0, 1)
  return slop
}
