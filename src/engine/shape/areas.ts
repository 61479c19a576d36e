/** Areas, volumes and radii of an outline, by cutting it into frusta (exact for the polyline). */
import { inRange } from '../check.ts'
import type { Face, OutlinePoint, Profile } from '../contract.ts'
import { at } from './curve.ts'

const MM2_PER_CM2 = 100
const MM3_PER_ML = 1000

/** The outline of one face, from its floor up. */
export const lineOf = (profile: Profile, face: Face): readonly OutlinePoint[] =>
  face === 'outside' ? profile.outer : profile.inner

/** Lateral area of a frustum, mm2; a flat ring where both heights are alike. */
const frustumArea = (a: OutlinePoint, b: OutlinePoint): number =>
  Math.PI * (a.rMm + b.rMm) * Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm)

/** Volume of a frustum, mm3. */
const frustumVolume = (a: OutlinePoint, b: OutlinePoint): number =>
  (Math.PI * (b.zMm - a.zMm) * (a.rMm * a.rMm + a.rMm * b.rMm + b.rMm * b.rMm)) / 3

/** The part of the piece a-b between two levels, or none. A flat piece belongs to the span that starts at it. */
function cut(
  a: OutlinePoint,
  b: OutlinePoint,
  fromMm: number,
  toMm: number,
): [OutlinePoint, OutlinePoint] | undefined {
  if (b.zMm === a.zMm) return a.zMm >= fromMm && a.zMm < toMm ? [a, b] : undefined
  const low = Math.max(a.zMm, fromMm)
  const high = Math.min(b.zMm, toMm)
  if (low >= high) return undefined
  const slope = (b.rMm - a.rMm) / (b.zMm - a.zMm)
  const onPiece = (zMm: number): OutlinePoint =>
    zMm === a.zMm ? a : zMm === b.zMm ? b : { rMm: a.rMm + slope * (zMm - a.zMm), zMm }
  return [onPiece(low), onPiece(high)]
}

function sum(
  line: readonly OutlinePoint[],
  fromMm: number,
  toMm: number,
  of: (a: OutlinePoint, b: OutlinePoint) => number,
): number {
  let total = 0
  for (let i = 1; i < line.length; i++) {
    const piece = cut(at(line, i - 1), at(line, i), fromMm, toMm)
    if (piece) total += of(piece[0], piece[1])
  }
  return total
}

function span(fromMm: number, toMm: number): void {
  inRange('fromMm', fromMm, -1e6, 1e6)
  inRange('toMm', toMm, fromMm, 1e6)
}

/**
 * Area, cm2, of one face between two heights above the shelf. The base (height 0) belongs to the outside, the inside
 * floor to the inside; a flat stretch counts where fromMm <= its height < toMm.
 */
export function faceAreaCm2(profile: Profile, face: Face, fromMm: number, toMm: number): number {
  span(fromMm, toMm)
  return sum(lineOf(profile, face), fromMm, toMm, frustumArea) / MM2_PER_CM2
}

/** What one face encloses between two heights, mL: of the outside, clay and hollow; of the inside, the hollow. */
export function enclosedMl(profile: Profile, face: Face, fromMm: number, toMm: number): number {
  span(fromMm, toMm)
  return sum(lineOf(profile, face), fromMm, toMm, frustumVolume) / MM3_PER_ML
}

/** Clay between two heights, mL, pores included. */
export function clayMl(profile: Profile, fromMm: number, toMm: number): number {
  return enclosedMl(profile, 'outside', fromMm, toMm) - enclosedMl(profile, 'inside', fromMm, toMm)
}

/** What the pot holds, full to the rim, mL. */
export function holdsMl(profile: Profile): number {
  return enclosedMl(profile, 'inside', 0, profile.shape.heightMm)
}

/** Radius of one face at a height, mm; the wider one where the outline steps; 0 where the face has nothing there. */
export function radiusAtMm(profile: Profile, face: Face, zMm: number): number {
  inRange('zMm', zMm, -1e6, 1e6)
  const line = lineOf(profile, face)
  let radius = 0
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [at(line, i - 1), at(line, i)]
    if (zMm < a.zMm || zMm > b.zMm) continue
    const u = b.zMm > a.zMm ? (zMm - a.zMm) / (b.zMm - a.zMm) : 1
    radius = Math.max(radius, a.rMm + u * (b.rMm - a.rMm))
  }
  return radius
}

/** Widest outside radius between two heights, mm. */
export function widestRadiusMm(profile: Profile, fromMm: number, toMm: number): number {
  span(fromMm, toMm)
  const corners = profile.outer.filter((p) => p.zMm >= fromMm && p.zMm <= toMm).map((p) => p.rMm)
  return Math.max(radiusAtMm(profile, 'outside', fromMm), radiusAtMm(profile, 'outside', toMm), ...corners)
}
