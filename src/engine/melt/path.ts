/** The way a melt runs: one face from the rim down, cut into cells of wall. */

import { between } from '../check.ts'
import type { Face, OutlinePoint, Profile } from '../contract.ts'

/**
 * Cells from the rim (first) down. Lengths in mm along the wall, `s` from the rim; radii in mm; `areaMm2` is wall
 * area per radian; `slope` the sine of the wall's lean from level at the faces between cells, times their radius.
 */
export interface MeltPath {
  readonly cells: number
  readonly lengthMm: number
  readonly faceMm: Float64Array
  readonly faceZMm: Float64Array
  readonly areaMm2: Float64Array
  readonly middle: readonly OutlinePoint[]
  readonly radiusMm: Float64Array
  readonly slopeRMm: Float64Array
}

/** Most cells above a coat's lowest edge; length of the finest, as below it where the answer is read. */
const CELLS_ABOVE = 100
const FINE_MM = 0.75
const LEAST_CELLS = 6

const lengthOf = (line: readonly OutlinePoint[]): number =>
  line.reduce((sum, p, i) => {
    const before = line[i - 1]
    return before ? sum + Math.hypot(p.rMm - before.rMm, p.zMm - before.zMm) : sum
  }, 0)

/** Points along a line at rising lengths from its start. */
function along(line: readonly OutlinePoint[], atMm: readonly number[]): OutlinePoint[] {
  let piece = 1
  let passed = 0
  return atMm.map((s) => {
    for (;;) {
      const a = line[piece - 1]!
      const b = line[piece]!
      const span = Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm)
      if (s <= passed + span || piece === line.length - 1) {
        const share = span > 0 ? Math.min(1, (s - passed) / span) : 1
        return { rMm: a.rMm + share * (b.rMm - a.rMm), zMm: a.zMm + share * (b.zMm - a.zMm) }
      }
      passed += span
      piece++
    }
  })
}

/** One face from the rim down to where the melt leaves it: the shelf outside, the middle of the floor inside. */
export function downwards(profile: Profile, face: Face): readonly OutlinePoint[] {
  const line = face === 'outside' ? profile.outer : profile.inner
  if (line.length < 2) throw new RangeError(`${face} outline has ${line.length} points: must have 2 or more`)
  for (let i = 1; i < line.length; i++)
    if (line[i]!.zMm < line[i - 1]!.zMm)
      throw new RangeError(
        `${face} outline point ${i} is at ${line[i]!.zMm} mm: must not be below the one before`,
      )
  // The base lies on the shelf: the way ends at the first point that does.
  const base = face === 'outside' ? line.findLastIndex((p) => p.zMm <= 0) : 0
  return line.slice(Math.max(0, base)).reverse()
}

/** Length from the rim down to the height `zMm`, the lowest place at that height; 0 above the rim. */
export function downToMm(line: readonly OutlinePoint[], zMm: number): number {
  let s = 0
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!]
    const span = Math.hypot(b.rMm - a.rMm, b.zMm - a.zMm)
    if (b.zMm < zMm) return s + (a.zMm > b.zMm ? (span * Math.max(0, a.zMm - zMm)) / (a.zMm - b.zMm) : 0)
    s += span
  }
  return s
}

/** Lengths of the faces: even cells down to `edgeMm`, even ones below it, of `cellMm` or as many as the answer needs. */
function facesOf(lengthMm: number, edgeMm: number, cellMm: number | undefined): Float64Array {
  const below = lengthMm - edgeMm
  const count = (mm: number, cell: number, least: number): number =>
    mm > 1e-9 ? Math.max(least, Math.ceil(mm / cell)) : 0
  const nBelow = count(below, cellMm ?? Math.max(FINE_MM, lengthMm / 400), LEAST_CELLS)
  const nAbove = count(edgeMm, cellMm ?? Math.max(FINE_MM, edgeMm / CELLS_ABOVE), LEAST_CELLS)
  const faces = new Float64Array(nAbove + nBelow + 1)
  for (let i = 0; i <= nAbove; i++) faces[i] = nAbove ? (edgeMm * i) / nAbove : 0
  for (let i = 1; i <= nBelow; i++) faces[nAbove + i] = edgeMm + (below * i) / nBelow
  return faces
}

/**
 * Cells along `line` (from the rim down, heights never rising), with a face exactly at `edgeMm` from the rim.
 * `leastSlope` is the sine below which a lean is taken as that much (0 to 1): a level stretch would hold the melt
 * back for ever, while real melt spreads over it by its own depth.
 * Cells are about `cellMm` long where that is given. RangeError for a line without length.
 */
export function pathAlong(
  line: readonly OutlinePoint[],
  edgeMm: number,
  leastSlope: number,
  cellMm?: number,
): MeltPath {
  const lengthMm = between('wall length', lengthOf(line), 0, 10_000)
  const faceMm = facesOf(lengthMm, Math.min(Math.max(edgeMm, 0), lengthMm), cellMm)
  const cells = faceMm.length - 1
  const stops: number[] = []
  for (let i = 0; i < cells; i++) stops.push(faceMm[i]!, (faceMm[i]! + faceMm[i + 1]!) / 2)
  stops.push(faceMm[cells]!)
  const points = along(line, stops)
  const middle = points.filter((_, i) => i % 2 === 1)
  const faces = points.filter((_, i) => i % 2 === 0)
  const slopeRMm = new Float64Array(cells + 1)
  for (let i = 1; i <= cells; i++) {
    const upper = middle[i - 1]!
    const lower = middle[i] ?? faces[cells]!
    const span = ((faceMm[i + 1] ?? faceMm[i]!) - faceMm[i - 1]!) / 2
    const slope = Math.min(1, Math.max(leastSlope, (upper.zMm - lower.zMm) / span))
    slopeRMm[i] = slope * faces[i]!.rMm
  }
  return {
    cells,
    lengthMm,
    faceMm,
    faceZMm: Float64Array.from(faces, (p) => p.zMm),
    areaMm2: Float64Array.from(middle, (p, i) => p.rMm * (faceMm[i + 1]! - faceMm[i]!)),
    middle,
    radiusMm: Float64Array.from(middle, (p) => p.rMm),
    slopeRMm,
  }
}
