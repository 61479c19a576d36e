/** Coats on a wall as the melt sees them: laid on a path, their edges, and the pairs that lie over one another. */

import { inRange } from '../check.ts'
import type { Face, OutlinePoint, ZoneForecast } from '../contract.ts'
import type { Melt, MeltEdge } from './flow.ts'
import { downToMm, type MeltPath } from './path.ts'

/** Flow dose of a glaze for the firing in question, per mm of melt: likely, and the upper end of its band. */
export interface DoseBand {
  readonly likelyPerMm: number
  readonly highPerMm: number
}

/**
 * A stretch of one dip on one face, dry thickness in mm, heights above the shelf. `dose` is null for a glaze without
 * a flow test. In a list the coats stand in the order they were put on.
 */
export interface CoatOnWall {
  readonly dipId: string
  readonly glazeId: string
  readonly face: Face
  readonly fromMm: number
  readonly toMm: number
  readonly likelyMm: number
  readonly upperMm: number
  readonly dose: DoseBand | null
}

/** One glaze lying straight on another. The order matters. */
export interface GlazePair {
  readonly under: string
  readonly over: string
}

/**
 * Melt over dry thickness: "about half". Packing 0.52, densities 2.6/2.4, loss on ignition and bubbles give 0.53
 * (0.37 to 0.70). The same factor turns a tile's dry coat into its dose, so it cancels in every run.
 */
export const MELT_PER_DRY = 0.5
/** Pieces of a dip nearer to each other than this are one coat, mm. */
const JOIN_MM = 0.5
/** Limits of what is taken for a coat or a dose. */
export const THICKEST_MM = 20
/** Of any coat that a gauge reads, this runs all: more is told as this much. */
export const MOST_DOSE_PER_MM = 20_000

/**
 * The coats of a forecast with their doses. `doseOf` answers for a glaze lying on another (null: on the bare wall):
 * with the dose of a tile of that very pair where there is one, else the glaze's own, else null for untested.
 */
export function coatsOf(
  zones: readonly ZoneForecast[],
  doseOf: (glazeId: string, underId: string | null) => DoseBand | null,
): readonly CoatOnWall[] {
  return zones.flatMap(({ face, fromMm, toMm, coats }) =>
    coats.map(({ dipId, glazeId, likelyMm, upperMm }, i) => ({
      dipId,
      glazeId,
      face,
      fromMm,
      toMm,
      // Thicker than anything that stays on a wall counts as that.
      likelyMm: Math.min(likelyMm, THICKEST_MM),
      upperMm: Math.min(upperMm, THICKEST_MM),
      dose: doseOf(glazeId, coats[i - 1]?.glazeId ?? null),
    })),
  )
}

/** RangeError for a thickness, height or dose that cannot be. */
export function checkedCoats(coats: readonly CoatOnWall[]): readonly CoatOnWall[] {
  for (const [i, coat] of coats.entries()) {
    inRange(`coats[${i}].fromMm`, coat.fromMm, -1, 2000)
    inRange(`coats[${i}].toMm`, coat.toMm, coat.fromMm, 2000)
    inRange(`coats[${i}].likelyMm`, coat.likelyMm, 0, THICKEST_MM)
    inRange(`coats[${i}].upperMm`, coat.upperMm, coat.likelyMm, THICKEST_MM)
    if (!coat.dose) continue
    inRange(`coats[${i}].dose.likelyPerMm`, coat.dose.likelyPerMm, Number.MIN_VALUE, MOST_DOSE_PER_MM)
    inRange(`coats[${i}].dose.highPerMm`, coat.dose.highPerMm, coat.dose.likelyPerMm, MOST_DOSE_PER_MM)
  }
  return coats
}

/** Coats of one face that are there at all. */
export const coatsOn = (coats: readonly CoatOnWall[], face: Face): readonly CoatOnWall[] =>
  coats.filter((coat) => coat.face === face && coat.upperMm > 0 && coat.toMm > coat.fromMm)

/** True where the same dip goes on below, no stiffer: a change of thickness, no edge of the glaze. */
const goesOn = (coat: CoatOnWall, coats: readonly CoatOnWall[]): boolean =>
  coats.some(
    (other) =>
      other !== coat &&
      other.dipId === coat.dipId &&
      Math.abs(other.toMm - coat.fromMm) <= JOIN_MM &&
      (other.dose?.likelyPerMm ?? 0) >= (coat.dose?.likelyPerMm ?? 0),
  )

/** Lays the coats of one face on its path. `upper` takes the upper thickness and dose. */
export function layCoats(
  path: MeltPath,
  line: readonly OutlinePoint[],
  coats: readonly CoatOnWall[],
  upper: boolean,
): Melt {
  const thickMm = new Float64Array(path.cells)
  const dosePerMm = new Float64Array(path.cells)
  const edges: MeltEdge[] = []
  for (const coat of coats) {
    const meltMm = (upper ? coat.upperMm : coat.likelyMm) * MELT_PER_DRY
    const dose = coat.dose ? (upper ? coat.dose.highPerMm : coat.dose.likelyPerMm) : 0
    for (let i = 0; i < path.cells; i++) {
      const [high, low] = [path.faceZMm[i]!, path.faceZMm[i + 1]!]
      const covered = Math.min(high, coat.toMm) - Math.max(low, coat.fromMm)
      if (covered < 0) continue
      const share = high > low ? covered / (high - low) : 1
      if (share < 1e-9) continue
      thickMm[i] = thickMm[i]! + meltMm * share
      dosePerMm[i] = Math.max(dosePerMm[i]!, dose)
    }
    if (dose === 0 || goesOn(coat, coats)) continue
    const startMm = downToMm(line, coat.fromMm)
    edges.push({ dipId: coat.dipId, startMm, dosePerMm: dose, atMm: startMm, bareRunMm: 0 })
  }
  return { path, thickMm, dosePerMm, edges, bare: Uint8Array.from(thickMm, (h) => (h > 0 ? 0 : 1)), gone: 0 }
}

/** Every pair of different glazes of which one lies straight on the other somewhere, each once. */
export function pairsOf(coats: readonly CoatOnWall[]): readonly GlazePair[] {
  const pairs = new Map<string, GlazePair>()
  for (const face of ['outside', 'inside'] as const) {
    const on = coatsOn(coats, face)
    const cuts = [...new Set(on.flatMap((coat) => [coat.fromMm, coat.toMm]))].sort((a, b) => a - b)
    for (let i = 1; i < cuts.length; i++) {
      const middle = (cuts[i - 1]! + cuts[i]!) / 2
      const here = on.filter((coat) => coat.fromMm < middle && coat.toMm > middle)
      for (let j = 1; j < here.length; j++) {
        const [under, over] = [here[j - 1]!.glazeId, here[j]!.glazeId]
        if (under !== over) pairs.set(JSON.stringify([under, over]), { under, over })
      }
    }
  }
  return [...pairs.values()]
}

/** The pairs among the coats that were never fired together in this order. */
export function untriedPairs(
  coats: readonly CoatOnWall[],
  proved: readonly GlazePair[],
): readonly GlazePair[] {
  return pairsOf(coats).filter(({ under, over }) => !proved.some((p) => p.under === under && p.over === over))
}
