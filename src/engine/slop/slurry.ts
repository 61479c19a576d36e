/** Arithmetic of glaze slop: what to add to reach a density. */
import { between, inRange } from '../check.ts'

/** Densest slop taken; beyond it is a paste, or a slip of the scale. */
export const DENSEST_GRAMS_PER_ML = 1.9

const density = (field: string, gramsPerMl: number): number =>
  between(field, gramsPerMl, 1, DENSEST_GRAMS_PER_ML)

function pair(gramsPerMl: number, solidsGravity: number): void {
  density('gramsPerMl', gramsPerMl)
  inRange('solidsGravity', solidsGravity, 1.5, 8)
  between('gramsPerMl', gramsPerMl, 1, solidsGravity)
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
