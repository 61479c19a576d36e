/** Arithmetic of glaze slop: solids and water in it, what to add to reach a density, amounts for a fill. */
import { between, inRange } from '../check.ts'
import type { Part } from './materials.ts'

/** Densest slop taken; beyond it is a paste, or a slip of the scale. */
export const DENSEST_GRAMS_PER_ML = 1.9

const density = (field: string, gramsPerMl: number): number =>
  between(field, gramsPerMl, 1, DENSEST_GRAMS_PER_ML)

function pair(gramsPerMl: number, solidsGravity: number): void {
  density('gramsPerMl', gramsPerMl)
  inRange('solidsGravity', solidsGravity, 1.5, 8)
  between('gramsPerMl', gramsPerMl, 1, solidsGravity)
}

/** Solids by volume, 0 to 1. */
export function volumeFraction(gramsPerMl: number, solidsGravity: number): number {
  pair(gramsPerMl, solidsGravity)
  return (gramsPerMl - 1) / (solidsGravity - 1)
}

/** Density of a slop with this part of solids by volume (0 to 1), g/mL: the inverse of `volumeFraction`. */
export function densityOfFraction(fraction: number, solidsGravity: number): number {
  return 1 + inRange('fraction', fraction, 0, 1) * (inRange('solidsGravity', solidsGravity, 1.5, 8) - 1)
}

/** Dry matter in a litre, g: Brongniart's formula (Traite des arts ceramiques, 1854, vol. 1, p. 249). */
export function dryGramsPerLitre(gramsPerMl: number, solidsGravity: number): number {
  return 1000 * solidsGravity * volumeFraction(gramsPerMl, solidsGravity)
}

/** Water in a litre, g. */
export function waterGramsPerLitre(gramsPerMl: number, solidsGravity: number): number {
  return 1000 * (1 - volumeFraction(gramsPerMl, solidsGravity))
}

/** Solids by mass, 0 to 1. */
export function massFraction(gramsPerMl: number, solidsGravity: number): number {
  return dryGramsPerLitre(gramsPerMl, solidsGravity) / (1000 * gramsPerMl)
}

/** Density of `dryKg` of mix in `waterKg` of water, g/mL. */
export function densityOfBatch(dryKg: number, waterKg: number, solidsGravity: number): number {
  inRange('dryKg', dryKg, 0, 1e5)
  between('waterKg', waterKg, 0, 1e5)
  inRange('solidsGravity', solidsGravity, 1.5, 8)
  return (dryKg + waterKg) / (dryKg / solidsGravity + waterKg)
}

export interface Weighed {
  readonly gramsPerMl: number
  /** Half-width that the scale's step and the cup's mark leave open, g/mL. */
  readonly errorGramsPerMl: number
}

/**
 * Density from a cup weighed empty and full. `stepG` is the scale's step, `markMl` how well the mark is met.
 * RangeError for readings that give no slop (below 0.9, a forgotten tare, or above 1.9).
 */
export function densityOfCup(
  emptyG: number,
  fullG: number,
  cupMl: number,
  stepG: number,
  markMl: number,
): Weighed {
  inRange('emptyG', emptyG, 0, 1e4)
  inRange('fullG', fullG, emptyG, 1e5)
  inRange('cupMl', cupMl, 5, 5000)
  inRange('stepG', stepG, 0.001, 50)
  inRange('markMl', markMl, 0, cupMl / 4)
  const netG = fullG - emptyG
  const gramsPerMl = inRange('gramsPerMl of the cup', netG / cupMl, 0.9, DENSEST_GRAMS_PER_ML)
  return { gramsPerMl, errorGramsPerMl: gramsPerMl * Math.hypot(stepG / netG, markMl / cupMl) }
}

/**
 * Solids gravity from slop dried out: `dryG` left from `slopMl` of slop of this density.
 * RangeError where the three don't belong to any solid (gravity outside 1.5 to 8): weigh again.
 */
export function gravityOfDried(slopMl: number, gramsPerMl: number, dryG: number): number {
  between('slopMl', slopMl, 0, 1e5)
  density('gramsPerMl', gramsPerMl)
  const perMl = between('dryG', dryG, 0, slopMl * gramsPerMl) / slopMl
  return inRange('solidsGravity', perMl / (1 + perMl - gramsPerMl), 1.5, 8)
}

/** Add this part of what is computed, stir, and weigh again before the rest: it can't be taken out. */
export const FIRST_PART = 2 / 3

export interface Dilution {
  /** Litres of water to add in all; negative: that much clear water to pour off once settled. */
  readonly waterLitres: number
  readonly firstLitres: number
  /** Density to expect after the first part. */
  readonly afterFirstGramsPerMl: number
  readonly newLitres: number
}

/** Water that brings `litres` from one density to another. It doesn't depend on the solids. */
export function waterTo(litres: number, nowGramsPerMl: number, targetGramsPerMl: number): Dilution {
  between('litres', litres, 0, 1e5)
  density('nowGramsPerMl', nowGramsPerMl)
  density('targetGramsPerMl', targetGramsPerMl)
  const waterLitres = (litres * (nowGramsPerMl - targetGramsPerMl)) / (targetGramsPerMl - 1)
  const firstLitres = waterLitres * FIRST_PART
  return {
    waterLitres,
    firstLitres,
    afterFirstGramsPerMl: (litres * nowGramsPerMl + firstLitres) / (litres + firstLitres),
    newLitres: litres + waterLitres,
  }
}

export interface Thickening {
  /** Dry mix to sieve in, kg, in all. */
  readonly dryKg: number
  readonly firstKg: number
  readonly afterFirstGramsPerMl: number
  readonly newLitres: number
}

/** Dry mix that brings `litres` up to a density. RangeError when the target is below the density now. */
export function dryTo(
  litres: number,
  nowGramsPerMl: number,
  targetGramsPerMl: number,
  solidsGravity: number,
): Thickening {
  between('litres', litres, 0, 1e5)
  pair(nowGramsPerMl, solidsGravity)
  pair(targetGramsPerMl, solidsGravity)
  inRange('targetGramsPerMl', targetGramsPerMl, nowGramsPerMl, DENSEST_GRAMS_PER_ML)
  const dryKg = (litres * (targetGramsPerMl - nowGramsPerMl)) / (1 - targetGramsPerMl / solidsGravity)
  const firstKg = dryKg * FIRST_PART
  return {
    dryKg,
    firstKg,
    afterFirstGramsPerMl: (litres * nowGramsPerMl + firstKg) / (litres + firstKg / solidsGravity),
    newLitres: litres + dryKg / solidsGravity,
  }
}

export interface Fill {
  readonly dryKg: number
  readonly waterKg: number
  readonly parts: readonly { readonly name: string; readonly kg: number }[]
}

/** Weights for a fill of so many litres at a density. `mix` may be empty: then only dry and water are given. */
export function fillOf(
  litres: number,
  gramsPerMl: number,
  solidsGravity: number,
  mix: readonly Part[],
): Fill {
  between('litres', litres, 0, 1e5)
  const dryKg = (litres * dryGramsPerLitre(gramsPerMl, solidsGravity)) / 1000
  const all = mix.reduce((sum, { name, parts }) => sum + inRange(`parts of ${name}`, parts, 0, 1e6), 0)
  if (mix.length > 0) between('parts in all', all, 0, Infinity)
  return {
    dryKg,
    waterKg: litres * gramsPerMl - dryKg,
    parts: mix.map(({ name, parts }) => ({ name, kg: (dryKg * parts) / all })),
  }
}

/** Degrees Twaddell, for liquids heavier than water: 200 (d - 1). */
export const twaddell = (gramsPerMl: number): number => 200 * (density('gramsPerMl', gramsPerMl) - 1)
/** Density, g/mL, of degrees Twaddell, 0 to 180 (RangeError): 1 + degrees / 200. */
export const gramsPerMlOfTwaddell = (degrees: number): number => 1 + inRange('degrees', degrees, 0, 180) / 200

/** Moduli of Baume scales for heavy liquids in print (CRC Handbook, 51st ed., lists the three): ask which. */
export const BAUME_MODULI = { american: 145, oldDutch: 144, gerlach: 146.78 } as const
export type BaumeScale = keyof typeof BAUME_MODULI

/** Degrees Baume of a density, g/mL, on one of the scales: m (1 - 1/d). */
export function baume(gramsPerMl: number, scale: BaumeScale): number {
  return BAUME_MODULI[scale] * (1 - 1 / density('gramsPerMl', gramsPerMl))
}
/** Density, g/mL, of degrees Baume, 0 to 70 (RangeError): m / (m - degrees). */
export function gramsPerMlOfBaume(degrees: number, scale: BaumeScale): number {
  return BAUME_MODULI[scale] / (BAUME_MODULI[scale] - inRange('degrees', degrees, 0, 70))
}

/** Ounces of a pint of water: imperial (20 fl oz) and American (16 US fl oz of 1.04318 oz). */
const PINT_OUNCES = { imperial: 20, american: 16.691 } as const
export type Pint = keyof typeof PINT_OUNCES

/** Density from the weight of a pint in ounces avoirdupois. */
export function gramsPerMlOfPint(ounces: number, pint: Pint): number {
  return density('gramsPerMl', inRange('ounces', ounces, 10, 60) / PINT_OUNCES[pint])
}
