/** How much glaze a pot pushes aside, by the way it goes in. The pores fill by themselves: nothing is taken off. */
import { clayMl, enclosedMl, holdsMl, lineOf } from './areas.ts'
import { inRange } from './check.ts'
import type { Face, OutlinePoint, Profile } from './contract.ts'
import { at } from './curve.ts'
import { bisect } from './vapour.ts'

const GRAVITY_M_PER_S2 = 9.80665
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
      return tiltedMl(profile, inRange('tiltDeg', how.tiltDeg, 0, 180), depthMm)
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
  return bisect(
    (rise) => {
      const left = all - enclosedMl(profile, 'inside', heightMm - rise, heightMm)
      // kg/m3 x mm = Pa / g: the factors of 1000 cancel.
      const pressedPa = pressurePa + gramsPerMl * GRAVITY_M_PER_S2 * (depthMm - rise)
      return pressurePa * all - pressedPa * left > 0 ? 1 : -1
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
  const angle = (tiltDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const { heightMm } = profile.shape
  if (sin < LEVEL_SIN)
    return cos > 0 ? clayMl(profile, 0, depthMm) : clayMl(profile, Math.max(0, heightMm - depthMm), heightMm)
  const level = tiltedSpan(profile, tiltDeg).lowestMm + depthMm
  const side = (face: Face): number => belowSlant(lineOf(profile, face), cos, sin, level)
  return (side('outside') - side('inside')) / MM3_PER_ML
}

export interface TiltedSpan {
  /** Height of the lowest point against the middle of the foot. */
  readonly lowestMm: number
  /** From the lowest to the highest point. */
  readonly highMm: number
  /** Radius of the narrowest upright pipe the leaning pot would slip through. */
  readonly aroundMm: number
}

const ROUND = 24

/** Room a pot takes when it leans by `tiltDeg` (0 upright, 90 lying, 180 upside down). */
export function tiltedSpan(profile: Profile, tiltDeg: number): TiltedSpan {
  const angle = (inRange('tiltDeg', tiltDeg, 0, 180) * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  let [low, high, left, right] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const { rMm, zMm } of profile.outer) {
    low = Math.min(low, zMm * cos - rMm * sin)
    high = Math.max(high, zMm * cos + rMm * sin)
    left = Math.min(left, -zMm * sin - rMm * Math.abs(cos))
    right = Math.max(right, -zMm * sin + rMm * Math.abs(cos))
  }
  // Seen from above each ring is an ellipse; the circle about all of them has its middle on the axis of the lean.
  const reach = (middle: number): number => {
    let most = 0
    for (const { rMm, zMm } of profile.outer)
      for (let k = 0; k <= ROUND; k++) {
        const turn = (Math.PI * k) / ROUND
        most = Math.max(
          most,
          Math.hypot(rMm * cos * Math.cos(turn) - zMm * sin - middle, rMm * Math.sin(turn)),
        )
      }
    return most
  }
  let [a, b] = [left, right]
  for (let i = 0; i < 40; i++) {
    const [c, d] = [a + (b - a) * 0.382, a + (b - a) * 0.618]
    if (reach(c) < reach(d)) b = d
    else a = c
  }
  return { lowestMm: low, highMm: high - low, aroundMm: reach((a + b) / 2) }
}
