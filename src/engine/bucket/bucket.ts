/** Buckets: how high the glaze stands, whether a pot fits and gets covered, how long the fill lasts. */
import { between, inRange } from '../check.ts'
import type { Profile, Slop } from '../contract.ts'
import { rootOf } from '../numeric/root.ts'
import { aroundMm, checkedDepthMm, displacedMl, type Immersion } from '../shape/displacement.ts'

/** Inside measures; straight when floor and mouth are alike. Diameters. */
export interface Bucket {
  readonly heightMm: number
  readonly floorWideMm: number
  readonly mouthWideMm: number
}

/** Room for a hand or tongs beside the widest part under the glaze, mm (practice, no source). */
export const TONGS_MM = 15
/** Glaze kept below the brim, mm (practice, no source). */
export const BRIM_MM = 20
/** Between the pot's lowest point and the sludge on the floor, mm (practice, no source). */
export const FLOOR_GAP_MM = 20

const MM3_PER_ML = 1000

/** Throws RangeError unless height is 10 to 2000 mm, floor and mouth 20 to 2000 mm wide. */
export function checkedBucket(bucket: Bucket): Bucket {
  inRange('bucket.heightMm', bucket.heightMm, 10, 2000)
  inRange('bucket.floorWideMm', bucket.floorWideMm, 20, 2000)
  inRange('bucket.mouthWideMm', bucket.mouthWideMm, 20, 2000)
  return bucket
}

/** Inside radius at a height above the floor, mm. */
export function bucketRadiusMm(bucket: Bucket, zMm: number): number {
  const part = zMm / bucket.heightMm
  return (bucket.floorWideMm + part * (bucket.mouthWideMm - bucket.floorWideMm)) / 2
}

/** Millilitres below a level, by the frustum; from 0 to the bucket's height. */
export function bucketMl(bucket: Bucket, levelMm: number): number {
  checkedBucket(bucket)
  inRange('levelMm', levelMm, 0, bucket.heightMm)
  const [a, b] = [bucket.floorWideMm / 2, bucketRadiusMm(bucket, levelMm)]
  return (Math.PI * levelMm * (a * a + a * b + b * b)) / 3 / MM3_PER_ML
}

/** Level of so many millilitres, mm above the floor. RangeError when they would run over. */
export function levelMm(bucket: Bucket, ml: number): number {
  // Litres turned back into mL may pass the brim by a rounding.
  inRange('ml', ml, 0, bucketMl(bucket, bucket.heightMm) * (1 + 1e-12))
  if (bucket.floorWideMm === bucket.mouthWideMm)
    return Math.min(bucket.heightMm, (ml * MM3_PER_ML) / (Math.PI * (bucket.floorWideMm / 2) ** 2))
  return rootOf((level) => bucketMl(bucket, level) - ml, 0, bucket.heightMm)
}

export type Misfit = 'none' | 'overflow' | 'shallow' | 'mouth' | 'tongs'

export interface DipFit {
  readonly levelBeforeMm: number
  /** With the pot in; the bucket's height where it would run over. */
  readonly levelAtMm: number
  /** Glaze depth that the dip needs. */
  readonly neededMm: number
  /** Glaze above what is needed, mm; negative where it falls short. */
  readonly spareMm: number
  /** First thing wrong: too wide for the mouth, no room for tongs, glaze too shallow, or near or over the brim. */
  readonly misfit: Misfit
}

/** Radius of the pot at the height `upMm` above its lowest point, as it goes in, up to the glaze. */
function radiiUp(profile: Profile, how: Immersion): { readonly upMm: number; readonly rMm: number }[] {
  if (how.way === 'tilted')
    return [0.25, 0.5, 0.75, 1].map((part) => ({
      upMm: part * how.depthMm,
      rMm: aroundMm(profile, how.tiltDeg, part * how.depthMm),
    }))
  const { heightMm } = profile.shape
  return profile.outer
    .map(({ rMm, zMm }) => ({ upMm: how.way === 'rimFirst' ? heightMm - zMm : zMm, rMm }))
    .filter(({ upMm }) => upMm <= how.depthMm)
}

/**
 * Will this dip work in so many litres? The pot is held with its lowest point `depthMm` below the level it reaches.
 * RangeError when the litres don't fit the bucket or a measure is out of range.
 */
export function fitOf(bucket: Bucket, litres: number, profile: Profile, how: Immersion): DipFit {
  const full = bucketMl(bucket, bucket.heightMm)
  const ml = inRange('litres', litres, 0, full / 1000) * 1000
  const depthMm = checkedDepthMm(how.depthMm)
  const levelBeforeMm = levelMm(bucket, Math.min(ml, full))
  const total = ml + displacedMl(profile, how)
  const levelAtMm = total >= full ? bucket.heightMm : levelMm(bucket, total)
  const neededMm = depthMm + FLOOR_GAP_MM
  const lowestMm = levelAtMm - depthMm
  const under = radiiUp(profile, how)
  const widest = Math.max(0, ...under.map(({ rMm }) => rMm))
  const tight = under.some(({ upMm, rMm }) => {
    const zMm = Math.min(bucket.heightMm, Math.max(0, lowestMm + upMm))
    return rMm + TONGS_MM > bucketRadiusMm(bucket, zMm)
  })
  const misfit: Misfit =
    widest >= bucket.mouthWideMm / 2
      ? 'mouth'
      : tight || widest + TONGS_MM > bucket.mouthWideMm / 2
        ? 'tongs'
        : levelAtMm < neededMm
          ? 'shallow'
          : levelAtMm > bucket.heightMm - BRIM_MM
            ? 'overflow'
            : 'none'
  return { levelBeforeMm, levelAtMm, neededMm, spareMm: levelAtMm - neededMm, misfit }
}

/** What one coat takes out of the bucket: slop in mL, dry matter in g, from `coatMm` dry over `areaCm2`. */
export function takenBy(
  areaCm2: number,
  coatMm: number,
  slop: Pick<Slop, 'gramsPerMl' | 'solidsGravity' | 'cakeSolids'>,
): { readonly slopMl: number; readonly dryG: number } {
  inRange('areaCm2', areaCm2, 0, 1e6)
  inRange('coatMm', coatMm, 0, 50)
  inRange('solidsGravity', slop.solidsGravity, 1.5, 8)
  between('gramsPerMl', slop.gramsPerMl, 1, slop.solidsGravity)
  inRange('cakeSolids', slop.cakeSolids, 0, 1)
  const dryMl = 0.1 * areaCm2 * coatMm * slop.cakeSolids
  return {
    slopMl: (dryMl * (slop.solidsGravity - 1)) / (slop.gramsPerMl - 1),
    dryG: dryMl * slop.solidsGravity,
  }
}

export interface Round {
  readonly profile: Profile
  readonly how: Immersion
  /** Slop that this pot takes away. */
  readonly takesMl: number
}

export interface RoundFit extends DipFit {
  /** In the bucket once this pot is out. */
  readonly litresAfter: number
  /** Its level then, mm. */
  readonly levelAfterMm: number
}

/** Fit and level for each of a row of dips, each finding what the ones before left. */
export function roundOf(bucket: Bucket, litres: number, dips: readonly Round[]): RoundFit[] {
  let left = litres
  return dips.map(({ profile, how, takesMl }) => {
    inRange('takesMl', takesMl, 0, 1e6)
    const fit = fitOf(bucket, left, profile, how)
    left = Math.max(0, left - takesMl / 1000)
    return { ...fit, litresAfter: left, levelAfterMm: levelMm(bucket, left * 1000) }
  })
}
