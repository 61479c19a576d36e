/**
 * Melted glaze running down a wall: d(r h)/dP + d(r S h^3)/ds = 0 with P the flow dose, the integral of
 * rho g/(3 eta) over the firing (Nusselt's film; Huppert, Nature 300, 427, 1982). Finite volumes, upwind, closed at
 * the rim and open at the end: conservative, never negative, and more melt above never means less below.
 */

import type { MeltPath } from './path.ts'

/**
 * The lower edge of a coat and the dose behind it, per mm. `atMm` is where its step of thickness has got to, which
 * no melt of that coat outruns; `bareRunMm` how far it would have run had the wall below been bare.
 */
export interface MeltEdge {
  readonly dipId: string
  readonly startMm: number
  readonly dosePerMm: number
  atMm: number
  bareRunMm: number
}

/** Melt on a path, changed in place: thickness by cell, dose of a whole firing by cell, what ran off the end. */
export interface Melt {
  readonly path: MeltPath
  readonly thickMm: Float64Array
  readonly dosePerMm: Float64Array
  readonly edges: readonly MeltEdge[]
  /** 1 for a cell that had no coat: it takes the dose of the melt that wets it. */
  readonly bare: Uint8Array
  /** Volume over the end, mm3 per radian. */
  gone: number
}

/** Share of the stable step. */
const COURANT = 0.9
/** Cells over which the scheme smears a step of thickness. */
const SMEAR = 3

const PER_RADIAN_ML = (2 * Math.PI) / 1000
/** mm3 per radian to mL round the whole pot. */
export const toMl = (perRadianMm3: number): number => perRadianMm3 * PER_RADIAN_ML

/** Volume on the cells from index `from` on, mm3 per radian. */
export function volumeFrom(melt: Melt, from: number): number {
  let sum = 0
  for (let i = from; i < melt.path.cells; i++) sum += melt.thickMm[i]! * melt.path.areaMm2[i]!
  return sum
}

const cellAt = (path: MeltPath, sMm: number): number => {
  let [low, high] = [0, path.cells - 1]
  while (low < high) {
    const middle = (low + high + 1) >> 1
    if (path.faceMm[middle]! <= sMm) low = middle
    else high = middle - 1
  }
  return low
}

/**
 * Moves an edge for a step: a step of thickness from hA to hB goes S (hA^2 + hA hB + hB^2), over bare wall S hA^2;
 * no melt behind it goes faster. The dose behind rules where the edge has been.
 */
function slide(melt: Melt, edge: MeltEdge, step: number): void {
  const { path, thickMm, dosePerMm } = melt
  if (edge.atMm >= path.lengthMm) return
  const cell = cellAt(path, edge.atMm)
  let behind = 0
  for (let i = Math.max(0, cell - SMEAR); i <= cell; i++) behind = Math.max(behind, thickMm[i]!)
  const ahead = Math.min(behind, thickMm[cell + SMEAR] ?? 0)
  const perMm2 = (path.slopeRMm[cell + 1]! / path.radiusMm[cell]!) * edge.dosePerMm * step
  edge.bareRunMm += perMm2 * behind * behind
  const slid = perMm2 * (behind * behind + behind * ahead + ahead * ahead)
  edge.atMm = Math.min(path.lengthMm, edge.atMm + slid)
  for (let i = cell; i < path.cells && path.faceMm[i]! < edge.atMm; i++)
    if (dosePerMm[i]! < edge.dosePerMm) dosePerMm[i] = edge.dosePerMm
}

/** Runs the melt through `share` of its firing (1 the whole; firings add). Changes `melt`. */
export function flow(melt: Melt, share: number): void {
  const { path, thickMm, dosePerMm, edges, bare } = melt
  const { cells, areaMm2, slopeRMm } = path
  const flux = new Float64Array(cells + 1)
  let left = share
  let end = cells
  while (end > 0 && thickMm[end - 1] === 0) end--
  while (left > 0) {
    let fastest = 0
    let above = 0
    for (let i = 0; i < end; i++) {
      const h = thickMm[i]!
      if (bare[i] === 1 && h > 0) {
        bare[i] = 0
        if (dosePerMm[i] === 0) dosePerMm[i] = dosePerMm[i - 1]!
      }
      const carry = slopeRMm[i + 1]! * dosePerMm[i]! * h * h
      flux[i + 1] = carry * h
      // What comes in bounds the step as well: a cell may be shorter, or its melt thinner, than the one above.
      const rate = Math.max(carry, above) / areaMm2[i]!
      if (rate > fastest) fastest = rate
      above = carry
    }
    if (end < cells && above > fastest * areaMm2[end]!) fastest = above / areaMm2[end]!
    if (fastest === 0) return
    const step = Math.min(left, COURANT / (3 * fastest))
    for (let i = 0; i < end; i++) thickMm[i] = thickMm[i]! + (step * (flux[i]! - flux[i + 1]!)) / areaMm2[i]!
    if (end === cells) melt.gone += step * flux[cells]!
    else if (flux[end]! > 0) {
      thickMm[end] = (step * flux[end]!) / areaMm2[end]!
      if (thickMm[end]! > 0) end++
    }
    for (const edge of edges) slide(melt, edge, step)
    left -= step
  }
}

/** A nanometre, mm: less is no film. The scheme's smear ends in numbers too small for a ratio to mean anything. */
const NONE_MM = 1e-6

/** Film right above a cell: where an overlap line piles up a ridge one cell wide, the film behind the ridge. */
const filmAbove = (thickMm: Float64Array, i: number): number =>
  Math.min(thickMm[i - 1]!, thickMm[i - 2] ?? thickMm[i - 1]!)

/**
 * How far down the melt's front stands, mm along the wall from the rim; 0 for no melt. The smeared step counts as so
 * much film of the thickness behind it, and so does what has left over the end: the answer may lie past the end.
 */
export function frontMm({ path, thickMm, gone }: Melt): number {
  for (let i = path.cells - 1; i >= 0; i--) {
    const film = i > 0 ? Math.max(filmAbove(thickMm, i), thickMm[i]! / 2) : thickMm[i]!
    if (film < NONE_MM || thickMm[i]! < film / 2) continue
    const own = path.faceMm[i + 1]! - path.faceMm[i]!
    let sheet = Math.min(thickMm[i]!, film) * own + gone / path.radiusMm[path.cells - 1]!
    for (let j = i + 1; j < path.cells; j++) sheet += thickMm[j]! * (path.faceMm[j + 1]! - path.faceMm[j]!)
    return path.faceMm[i]! + sheet / film
  }
  return 0
}
