/** Half-and-half: a pot dipped on one side, turned over and dipped on the other. What is coated once, twice, never. */

import { inRange } from '../check.ts'
import type { Face, Profile } from '../contract.ts'
import { lineOf } from './areas.ts'
import { at } from './curve.ts'

export interface SideAreas {
  readonly firstOnlyCm2: number
  readonly secondOnlyCm2: number
  /** Coated by both: the commonest over-thick spot there is. */
  readonly bothCm2: number
  readonly bareCm2: number
  /** Width of the doubled stripe across the middle, mm; negative: a bare stripe this wide. */
  readonly overlapMm: number
}

/** Part of a ring of radius `r` on the lower side of a chord `c` from the middle, 0 to 1. */
function ringBelow(r: number, c: number): number {
  if (c >= r) return 1
  if (c <= -r) return 0
  return 1 - Math.acos(c / r) / Math.PI
}

/** Rings into which each straight piece of the outline is cut. */
const RINGS = 8

/**
 * Areas of one face between two heights after two side dips, the pot lying with its axis level: `firstMm` and
 * `secondMm` deep from its widest point on either side. RangeError for a depth past the pot's far side.
 */
export function sideDips(
  profile: Profile,
  face: Face,
  fromMm: number,
  toMm: number,
  firstMm: number,
  secondMm: number,
): SideAreas {
  const widest = Math.max(...profile.outer.map((p) => p.rMm))
  inRange('firstMm', firstMm, 0, 2 * widest)
  inRange('secondMm', secondMm, 0, 2 * widest)
  inRange('fromMm', fromMm, -1e6, toMm)
  const [firstTo, secondFrom] = [firstMm - widest, widest - secondMm]
  const sums = { first: 0, second: 0, both: 0, bare: 0 }
  const line = lineOf(profile, face)
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [at(line, i - 1), at(line, i)]
    const length = Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm) / RINGS
    for (let k = 0; k < RINGS; k++) {
      const u = (k + 0.5) / RINGS
      const z = a.zMm + u * (b.zMm - a.zMm)
      if (z < fromMm || z >= toMm) continue
      const r = a.rMm + u * (b.rMm - a.rMm)
      const cm2 = (2 * Math.PI * r * length) / 100
      const first = ringBelow(r, firstTo)
      const second = 1 - ringBelow(r, secondFrom)
      const both = Math.max(0, first + second - 1)
      sums.first += cm2 * (first - both)
      sums.second += cm2 * (second - both)
      sums.both += cm2 * both
      sums.bare += cm2 * (1 - first - second + both)
    }
  }
  return {
    firstOnlyCm2: sums.first,
    secondOnlyCm2: sums.second,
    bothCm2: sums.both,
    bareCm2: sums.bare,
    overlapMm: firstMm + secondMm - 2 * widest,
  }
}
