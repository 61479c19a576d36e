/** The collar's vessel: how much glaze to pour off, and the line to pour it to. */

import { inRange } from '../check.ts'
import type { Profile } from '../contract.ts'
import { radiusAtMm, widestRadiusMm } from '../shape/areas.ts'
import { displacedMl, trappedRiseMm } from '../shape/displacement.ts'
import { BRIM_MM, type Bucket, bucketMl, bucketRadiusMm, checkedBucket, levelMm } from './bucket.ts'

/** Rim to vessel wall: enough to lower it level by hand, mm (practice, no source). */
export const HAND_MM = 5
/** Glaze kept below the vessel's brim with the pot in, mm: a low dish has less to spare than a bucket. */
export const VESSEL_BRIM_MM = Math.min(BRIM_MM, 5)

export interface CollarDip {
  readonly vessel: Bucket
  readonly profile: Profile
  readonly collarMm: number
  /** From the rim to the vessel's floor at the deepest. */
  readonly floorGapMm: number
  readonly gramsPerMl: number
  readonly pressurePa: number
  /** Taken by the pots before the last one that is dipped from the same pour. */
  readonly takesMl: number
}

export interface CollarPour {
  readonly pourMl: number
  /** Where to pour to, before the pot goes in. */
  readonly lineMm: number
  /** Where it stands with the first pot in, `collarMm` up the pot. */
  readonly levelAtMm: number
  /** Strip inside the rim that gets wet in spite of the air. */
  readonly insideMm: number
  readonly misfit: 'none' | 'overflow' | 'narrow'
}

/**
 * What to decant for a collar dip, rim first and level, so that the last pot still reaches its line.
 * RangeError for measures out of range or a vessel lower than collar and gap.
 */
export function collarPour(dip: CollarDip): CollarPour {
  const { vessel, profile, collarMm, gramsPerMl, pressurePa } = dip
  const { heightMm } = profile.shape
  checkedBucket(vessel)
  inRange('collarMm', collarMm, 1, heightMm)
  inRange('floorGapMm', dip.floorGapMm, 0, 500)
  inRange('takesMl', dip.takesMl, 0, 1e6)
  const reachMm = inRange('collarMm with the gap below', collarMm + dip.floorGapMm, 1, vessel.heightMm)
  const asideMl = displacedMl(profile, { way: 'rimFirst', depthMm: collarMm, gramsPerMl, pressurePa })
  const pourMl = Math.max(0, bucketMl(vessel, reachMm) - asideMl) + dip.takesMl
  const brimMl = bucketMl(vessel, vessel.heightMm)
  const levelAtMm = pourMl + asideMl >= brimMl ? vessel.heightMm : levelMm(vessel, pourMl + asideMl)
  const widest = Math.max(
    widestRadiusMm(profile, heightMm - collarMm, heightMm),
    radiusAtMm(profile, 'outside', heightMm),
  )
  const narrowest = Math.min(bucketRadiusMm(vessel, dip.floorGapMm), bucketRadiusMm(vessel, reachMm))
  return {
    pourMl,
    lineMm: levelMm(vessel, Math.min(pourMl, brimMl)),
    levelAtMm,
    insideMm: trappedRiseMm(profile, collarMm, gramsPerMl, pressurePa),
    misfit:
      widest + HAND_MM > narrowest
        ? 'narrow'
        : levelAtMm > vessel.heightMm - VESSEL_BRIM_MM
          ? 'overflow'
          : 'none',
  }
}
