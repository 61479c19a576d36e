/** Seconds a narrow neck needs to let glaze in and air out. */

import { inRange } from '../check.ts'
import type { Profile } from '../contract.ts'
import { GRAVITY_M_PER_S2 } from '../parameters.ts'
import { holdsMl, lineOf } from './areas.ts'
import { at } from './curve.ts'

const AIR_KG_PER_M3 = 1.2
/**
 * Wallis' flooding constant squared, for liquid and gas passing each other in equal volumes through one opening
 * (form: Wallis 1969; its use for bottles: Whalley 1987; both from memory). Tuned to a wine bottle's ten seconds.
 */
const FLOODING = 0.85

/** Inside width of the narrowest place of the upper half, mm; of a lid, which is all opening, of its rim. */
function narrowestMm(profile: Profile): number {
  const inner = lineOf(profile, 'inside')
  const middle = (at(inner, 0).zMm + profile.shape.heightMm) / 2
  const upper = inner.filter((p) => p.zMm >= middle)
  return 2 * (profile.shape.form === 'lid' ? at(inner, 0).rMm : Math.min(...upper.map((p) => p.rMm)))
}

/** Fingers held together go in to their roots and beyond through an opening so wide, mm; one finger reaches so deep, mm (judgement, no source). */
const HAND_WIDE_MM = 55
const FINGER_MM = 80

/** Whether the inside floor can be touched. */
export const floorInReach = (profile: Profile): boolean =>
  narrowestMm(profile) >= HAND_WIDE_MM ||
  profile.shape.heightMm - at(lineOf(profile, 'inside'), 0).zMm <= FINGER_MM

/**
 * Seconds until a pot held under, mouth up, has filled through its narrowest opening while its air comes out by the
 * same way; also about the time to pour it out again. An open form takes well under a second.
 */
export function fillS(profile: Profile, gramsPerMl: number): number {
  const kgPerM3 = inRange('gramsPerMl', gramsPerMl, 1, 2) * 1000
  const neckRM = narrowestMm(profile) / 2000
  const flow =
    (FLOODING * Math.sqrt(GRAVITY_M_PER_S2 * 2 * neckRM * (kgPerM3 - AIR_KG_PER_M3))) /
    (AIR_KG_PER_M3 ** 0.25 + kgPerM3 ** 0.25) ** 2
  return holdsMl(profile) / 1e6 / (flow * Math.PI * neckRM ** 2)
}
