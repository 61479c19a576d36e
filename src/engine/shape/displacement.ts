/** How much glaze a pot pushes aside, by the way it goes in. The pores fill by themselves: nothing is taken off. */

import { inRange } from '../check.ts'
import type { Face, OutlinePoint, Profile } from '../contract.ts'
import { rootOf } from '../numeric/root.ts'
import { GRAVITY_M_PER_S2 } from '../parameters.ts'
import { clayMl, enclosedMl, holdsMl, lineOf } from './areas.ts'
import { at } from './curve.ts'

const MM3_PER_ML = 1000

/**
 * How a pot goes in; `depthMm` from the level down to the pot's lowest point, 0 to 3000.
 * footFirst: upright, the glaze stays outside until the rim goes under. filled: upright, full of glaze to the level
 * outside. tilted: leaning by `tiltDeg` (0 to 180), filled to the level. rimFirst: upside down, with its air.
 */
export type Immersion =
  | { readonly way: 'footFirst'; readonly depthMm: number }
  | { readonly way: 'filled'; readonly depthMm: number }
  | { readonly way: 'tilted'; readonly depthMm: number; readonly tiltDeg: number }
  | {
      readonly way: 'rimFirst'
      readonly depthMm: number
      readonly gramsPerMl: number
      readonly pressurePa: number
    }

const DEEPEST_MM = 3000

/** Throws RangeError unless a depth, mm, is from 0 to the deepest that is reckoned with. */
export const checkedDepthMm = (depthMm: number): number => inRange('depthMm', depthMm, 0, DEEPEST_MM)

/** Glaze pushed aside, mL. RangeError for a depth, tilt, density or pressure out of range. */
export function displacedMl(profile: Profile, how: Immersion): number {
  const depthMm = checkedDepthMm(how.depthMm)
  const heightMm = profile.shape.heightMm
  switch (how.way) {
    case 'footFirst':
      return depthMm < heightMm ? enclosedMl(profile, 'outside', 0, depthMm) : clayMl(profile, 0, heightMm)
    case 'filled':
      return clayMl(profile, 0, depthMm)
    case 'tilted':
      return tiltedMl(profile, how.tiltDeg, depthMm)
    case 'rimFirst': {
      const low = Math.max(0, heightMm - depthMm)
      const risen = trappedRiseMm(profile, depthMm, how.gramsPerMl, how.pressurePa)
      return (
        enclosedMl(profile, 'outside', low, heightMm) -
        enclosedMl(profile, 'inside', heightMm - risen, heightMm)
      )
    }
  }
}

/**
 * How far the glaze climbs into a pot held upside down with its rim `depthMm` under, mm: the trapped air shrinks
 * until it presses as hard as the glaze does (Boyle). The strip that gets coated inside the rim.
 */
export function trappedRiseMm(
  profile: Profile,
  depthMm: number,
  gramsPerMl: number,
  pressurePa: number,
): number {
  checkedDepthMm(depthMm)
  inRange('gramsPerMl', gramsPerMl, 0.5, 3)
  inRange('pressurePa', pressurePa, 50_000, 110_000)
  const all = holdsMl(profile)
  const { heightMm } = profile.shape
  const highest = Math.min(depthMm, heightMm - at(profile.inner, 0).zMm)
  if (highest === 0) return 0
  return rootOf(
    (rise) => {
      const left = all - enclosedMl(profile, 'inside', heightMm - rise, heightMm)
      // kg/m3 x mm = Pa / g: the factors of 1000 cancel.
      const pressedPa = pressurePa + gramsPerMl * GRAVITY_M_PER_S2 * (depthMm - rise)
      return pressurePa * all - pressedPa * left
    },
    0,
    highest,
  )
}

/** Part of a disc of radius `r` on the lower side of a chord `c` from its middle (negative: less than half), mm2. */
function discBelow(r: number, c: number): number {
  if (c >= r) return Math.PI * r * r
  if (c <= -r) return 0
  return r * r * (Math.PI - Math.acos(c / r)) + c * Math.sqrt(r * r - c * c)
}

/** Three-point Gauss-Legendre nodes on 0 to 1 and their weights. */
const GAUSS = [
  [0.5 - Math.sqrt(0.15), 5 / 18],
  [0.5, 8 / 18],
  [0.5 + Math.sqrt(0.15), 5 / 18],
] as const
/** Pieces into which each straight piece of the outline is cut for the slanted integral. */
const SLICES = 4

/** Volume within one face below the plane z cos + y sin = level, mm3. */
function belowSlant(line: readonly OutlinePoint[], cos: number, sin: number, level: number): number {
  let total = 0
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [at(line, i - 1), at(line, i)]
    const rise = b.zMm - a.zMm
    if (rise === 0) continue
    for (let k = 0; k < SLICES; k++)
      for (const [node, weight] of GAUSS) {
        const u = (k + node) / SLICES
        const r = a.rMm + u * (b.rMm - a.rMm)
        total += (weight / SLICES) * rise * discBelow(r, (level - (a.zMm + u * rise) * cos) / sin)
      }
  }
  return total
}

/** Below this tilt, or this close to upside down, the surface counts as level with the rim. */
const LEVEL_SIN = 1e-3

function tiltedMl(profile: Profile, tiltDeg: number, depthMm: number): number {
  const [cos, sin] = lean(tiltDeg)
  const { heightMm } = profile.shape
  if (sin < LEVEL_SIN)
    return cos > 0 ? clayMl(profile, 0, depthMm) : clayMl(profile, Math.max(0, heightMm - depthMm), heightMm)
  const level = tiltedSpan(profile, tiltDeg).lowestMm + depthMm
  const side = (face: Face): number => belowSlant(lineOf(profile, face), cos, sin, level)
  return (side('outside') - side('inside')) / MM3_PER_ML
}

/** Lowest point against the middle of the foot, and the height from there to the highest point, mm. */
export interface TiltedSpan {
  readonly lowestMm: number
  readonly highMm: number
}

const lean = (tiltDeg: number): readonly [cos: number, sin: number] => {
  const angle = (inRange('tiltDeg', tiltDeg, 0, 180) * Math.PI) / 180
  return [Math.cos(angle), Math.sin(angle)]
}

/** How tall a pot stands when it leans by `tiltDeg` (0 upright, 90 lying, 180 upside down). */
export function tiltedSpan(profile: Profile, tiltDeg: number): TiltedSpan {
  const [cos, sin] = lean(tiltDeg)
  let [low, high] = [Infinity, -Infinity]
  for (const { rMm, zMm } of profile.outer) {
    low = Math.min(low, zMm * cos - rMm * sin)
    high = Math.max(high, zMm * cos + rMm * sin)
  }
  return { lowestMm: low, highMm: high - low }
}

/** Points sought on each ring of a leaning pot, and golden cuts of the search for the middle. */
const ROUND = 12
const CUTS = 25
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Radius of the narrowest upright pipe round the lowest `depthMm` of a leaning pot. */
export function aroundMm(profile: Profile, tiltDeg: number, depthMm: number): number {
  const [cos, sin] = lean(tiltDeg)
  const level = tiltedSpan(profile, tiltDeg).lowestMm + checkedDepthMm(depthMm)
  // Points of the rings below the level, seen from above: along the lean, and across it.
  const seen: (readonly [along: number, across: number])[] = []
  for (const { rMm, zMm } of profile.outer) {
    const above = level - zMm * cos
    if (above < -rMm * sin) continue
    const from = rMm * sin > above ? Math.acos(above / (rMm * sin)) : 0
    for (let k = 0; k <= ROUND; k++) {
      const turn = from + ((Math.PI - from) * k) / ROUND
      seen.push([rMm * cos * Math.cos(turn) - zMm * sin, rMm * Math.sin(turn)])
    }
  }
  const reach = (middle: number): number =>
    seen.reduce((most, [along, across]) => Math.max(most, (along - middle) ** 2 + across ** 2), 0)
  // The farthest distance is convex in the middle's place along the lean.
  let [a, b] = [Math.min(...seen.map(([along]) => along)), Math.max(...seen.map(([along]) => along))]
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)]
  let [atC, atD] = [reach(c), reach(d)]
  for (let i = 0; i < CUTS; i++)
    if (atC < atD) {
      ;[b, d, atD] = [d, c, atC]
      c = b - GOLDEN * (b - a)
      atC = reach(c)
    } else {
      ;[a, c, atC] = [c, d, atD]
      d = a + GOLDEN * (b - a)
      atD = reach(d)
    }
  return Math.sqrt(Math.min(atC, atD))
}
