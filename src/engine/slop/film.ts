/** The film a face carries out of the bucket: drawn up, drained, and what gravity cannot move. */

import { between } from '../check.ts'
import type { Slop } from '../contract.ts'
import { rootOf } from '../numeric/root.ts'
import {
  DRAIN_THIRSTY_S,
  DRIP_S,
  GRAVITY_M_PER_S2,
  SLOP_SOLIDS,
  SLOP_TENSION_N_PER_M,
  SLOP_VISCOSITY_PA_S,
  SLOP_VISCOSITY_SLOPE,
  SLOP_YIELD_PA,
  SLOP_YIELD_SLOPE,
} from '../parameters.ts'
import { checkedSlop, solidsFraction } from './slop.ts'

/** Coefficient of Landau, Levich & Derjaguin's law; 0.944 in the original papers, 0.94581 solved to more digits. */
const DRAG_OUT = 0.94581

/** A liquid as it clings to a wall: SI units. `yieldPa` 0 is a Newtonian one. */
export interface Liquid {
  readonly viscosity: number
  readonly yieldPa: number
  readonly kgPerM3: number
}

const weight = ({ kgPerM3 }: Liquid): number => kgPerM3 * GRAVITY_M_PER_S2

/** Film that gravity cannot move, mm: tau / (rho g). */
export const standsMm = (liquid: Liquid): number => (1000 * liquid.yieldPa) / weight(liquid)

/**
 * Film dragged out of a bath at `speedMPerS`, mm, gravity taken off: White & Tallmadge 1965 as in Deen, Analysis of
 * Transport Phenomena, with Landau & Levich's coefficient. Yield stress left out; `tension` in N/m.
 */
export function dragOutMm(liquid: Liquid, speedMPerS: number, tension: number): number {
  const capillary = (liquid.viscosity * speedMPerS) / tension
  const most = Math.sqrt((liquid.viscosity * speedMPerS) / weight(liquid))
  const free = DRAG_OUT * Math.sqrt(tension / weight(liquid)) * Math.cbrt(capillary) ** 2
  const film = rootOf((h) => h - free * Math.cbrt(Math.max(0, 1 - (h / most) ** 2)) ** 2, 0, most)
  return 1000 * film
}

const spread = (liquid: Liquid, drainS: number): number => (4 * liquid.viscosity) / (weight(liquid) * drainS)

/**
 * Mean film over the uppermost `lengthM` metres of an upright wall after draining `drainS`, nowhere above `mostMm`,
 * mm. The film of a Bingham liquid z metres under the upper end is h = (h0 + sqrt(h0^2 + 4 mu z / (rho g t))) / 2,
 * the kinematic wave of flux rho g (h - h0)^2 (2h + h0) / (6 mu). Without yield stress it is Jeffreys' film (1930);
 * after long it is h0, what yield stress holds.
 */
export function meanDrainedMm(liquid: Liquid, lengthM: number, drainS: number, mostMm: number): number {
  const stands = standsMm(liquid) / 1000
  const c = spread(liquid, drainS)
  const most = mostMm / 1000
  // Below this the film is as thick as it was drawn up.
  const free = Math.min(lengthM, Math.max(0, ((2 * most - stands) ** 2 - stands ** 2) / c))
  const root = Math.sqrt(stands ** 2 + c * free) ** 3 - stands ** 3
  const area = (stands * free) / 2 + root / (3 * c) + most * (lengthM - free)
  return (1000 * area) / lengthM
}

export interface Film {
  /** Dry coat in the film while a thirsty wall sets it, mm. */
  readonly thirstyMm: number
  /** Dry coat in the film that a full wall leaves to drain for the drip, mm: low, likely and high. */
  readonly fullMm: number
  readonly fullLowMm: number
  readonly fullHighMm: number
}

/** Low and high slop against the likely one: factors on yield stress and viscosity, and packing. A judgement. */
const LOW = { yields: 0.25, flows: 0.6, packs: 0.04 } as const
const HIGH = { yields: 3, flows: 1.5, packs: -0.04 } as const
/** A slop whose film was weighed is known to this (sd of the logarithm; weighing, length and drip; a judgement). */
const WEIGHED_LN = 0.25

const likely = { yields: 1, flows: 1, packs: 0 } as const
type Doubt = Readonly<Record<keyof typeof likely, number>>

/** The slop as a liquid at its density. */
export function liquidOf(slop: Slop, doubt: Doubt = likely): Liquid {
  const over = solidsFraction(slop) - SLOP_SOLIDS
  return {
    viscosity: doubt.flows * SLOP_VISCOSITY_PA_S * Math.exp(SLOP_VISCOSITY_SLOPE * over),
    yieldPa: doubt.yields * SLOP_YIELD_PA * Math.exp(SLOP_YIELD_SLOPE * over),
    kgPerM3: 1000 * slop.gramsPerMl,
  }
}

/** A plate of this length, dipped and dripped as a pot, on which the film is told (a microscope slide but for its grip). */
const PLATE_MM = 60
const PLATE_LIFT_MM_PER_S = 120

/** Film on a plate that can't drink, after the drip, wet g/cm2, as computed for a slop of which nothing was weighed. */
export function clingsGramsPerCm2(slop: Slop): number {
  const { clingsGramsPerCm2: _weighed, ...unweighed } = checkedSlop(slop)
  const dryMm = filmOf(unweighed, PLATE_MM, PLATE_LIFT_MM_PER_S, DRIP_S).fullMm
  return (0.1 * slop.gramsPerMl * dryMm * slop.cakeSolids) / solidsFraction(slop)
}

/**
 * The same where it was weighed on a slop of `weighedAt` density, g/mL: with density it grows as the law says.
 * RangeError for a slop that can't be dipped.
 */
export const clingsAt = (slop: Slop, weighedGramsPerCm2: number, weighedAt: number): number =>
  (weighedGramsPerCm2 * clingsGramsPerCm2(slop)) / clingsGramsPerCm2({ ...slop, gramsPerMl: weighedAt })

/** Most yield stress that a film of this weight can have, Pa: its weight over the area is the stress at the plate. */
export const yieldAtMostPa = (gramsPerCm2: number): number =>
  10 * GRAVITY_M_PER_S2 * between('gramsPerCm2', gramsPerCm2, 0, 10)

/**
 * Dry coat in the film of a coat that is `lengthMm` long along the wall, leaves at `liftMmPerS` and drips for `dripS`.
 * Drains from the moment its first edge left. A film weighed on a plate that can't drink scales the law.
 */
export function filmOf(slop: Slop, lengthMm: number, liftMmPerS: number, dripS: number): Film {
  const dry = (wetMm: number, packing: number): number => (wetMm * solidsFraction(slop)) / packing
  const after = (drainS: number, doubt: Doubt = likely): number => {
    const liquid = liquidOf(slop, doubt)
    const drawnUp = standsMm(liquid) + dragOutMm(liquid, liftMmPerS / 1000, SLOP_TENSION_N_PER_M)
    const wetMm = meanDrainedMm(liquid, lengthMm / 1000, lengthMm / liftMmPerS + drainS, drawnUp)
    return dry(wetMm, slop.cakeSolids + doubt.packs)
  }
  const [thirsty, full] = [after(DRAIN_THIRSTY_S), after(dripS)]
  if (slop.clingsGramsPerCm2 === undefined)
    return {
      thirstyMm: thirsty,
      fullMm: full,
      fullLowMm: after(dripS, LOW),
      fullHighMm: after(dripS, HIGH),
    }
  const weighed = dry((10 * slop.clingsGramsPerCm2) / slop.gramsPerMl, slop.cakeSolids)
  return {
    thirstyMm: (thirsty * weighed) / full,
    fullMm: weighed,
    fullLowMm: weighed * Math.exp(-WEIGHED_LN),
    fullHighMm: weighed * Math.exp(WEIGHED_LN),
  }
}
