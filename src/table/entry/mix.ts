import { inRange } from '../../engine/check.ts'
import { dryTo, waterTo } from '../../engine/slop/slurry.ts'
import { LIMITS } from '../model/limits.ts'

/** What brings a bucket to its target: a first part of it, then stir and weigh again. */
export type Mix =
  | { readonly is: 'on-target' }
  | { readonly is: 'water'; readonly firstLitres: number; readonly allLitres: number }
  | { readonly is: 'dry'; readonly firstKg: number; readonly allKg: number }

export interface MixFacts {
  readonly litres: number
  readonly targetGramsPerMl: number
  readonly toleranceGramsPerMl: number
  readonly solidsGravity: number
}

/** A reading counts as within the tolerance when it is out by no more than this, g/mL: a scale's rounding. */
const READING_STEP = 1e-6

/** What a bucket that reads `nowGramsPerMl` needs. */
export function mixTo(facts: MixFacts, nowGramsPerMl: number): Mix {
  const { litres, targetGramsPerMl, toleranceGramsPerMl, solidsGravity } = facts
  const off = nowGramsPerMl - targetGramsPerMl
  if (Math.abs(off) <= toleranceGramsPerMl + READING_STEP) return { is: 'on-target' }
  if (off > 0) {
    const { firstLitres, waterLitres } = waterTo(litres, nowGramsPerMl, targetGramsPerMl)
    return { is: 'water', firstLitres, allLitres: waterLitres }
  }
  const { firstKg, dryKg } = dryTo(litres, nowGramsPerMl, targetGramsPerMl, solidsGravity)
  return { is: 'dry', firstKg, allKg: dryKg }
}

/**
 * Density of a cup of slop, g/mL, from its volume in mL and its weights empty and full, g: no density of any slop when
 * the two were mixed up. RangeError for a measure out of `LIMITS`.
 */
export function densityOfCup(cupMl: number, emptyG: number, fullG: number): number {
  const [volume, empty, full] = [LIMITS.cupMl, LIMITS.cupEmptyG, LIMITS.cupFullG]
  inRange('cupMl', cupMl, volume.least, volume.most)
  inRange('cupEmptyG', emptyG, empty.least, empty.most)
  inRange('cupFullG', fullG, full.least, full.most)
  return (fullG - emptyG) / cupMl
}
