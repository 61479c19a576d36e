/** Melt look-ahead: the stack softening on its outline, as frames, on through the planned firing to a hotter one. */

import { inRange } from '../check.ts'
import type { OutlinePoint, Profile } from '../contract.ts'
import { type CoatOnWall, checkedCoats, coatsOn, layCoats } from './coats.ts'
import { flow, frontMm, type Melt, toMl } from './flow.ts'
import { LEAST_SLOPE } from './melt.ts'
import { downToMm, downwards, type MeltPath, pathAlong } from './path.ts'
import { layWell, poolOf } from './well.ts'

export interface LookAheadInput {
  readonly profile: Profile
  readonly coats: readonly CoatOnWall[]
  /** Moments to show as dose over that of the planned firing, rising: 0 unfired, 1 planned, more for hotter. */
  readonly shares: readonly number[]
}

/** Where a dip's lower edge has got to, mm above the shelf, and its upper one as it was put on. */
export interface DipEdge {
  readonly dipId: string
  readonly glazeId: string
  readonly fromMm: number
  readonly toMm: number
}

/** Melt thickness in mm at the points of `LookAhead`; heights above the shelf. */
export interface MeltFrame {
  readonly share: number
  readonly outsideMm: Float64Array
  readonly insideMm: Float64Array
  /** Height of the lower edge of each dip outside, in the order they were put on. */
  readonly edges: readonly DipEdge[]
  /** Height of the lowest melt outside; 0 when it stands on the shelf; null without glaze outside. */
  readonly frontUpMm: number | null
  readonly poolDepthMm: number
  readonly onShelfMl: number
}

export interface LookAhead {
  /** Where the thicknesses belong, from the rim down; melt lies outwards of the outside, inwards of the inside. */
  readonly outside: readonly OutlinePoint[]
  readonly inside: readonly OutlinePoint[]
  readonly frames: readonly MeltFrame[]
  /** Glazes without a flow test: drawn where they were put, not to be believed. */
  readonly untestedGlazes: readonly string[]
}

/** Most frames in one play. */
const MOST_FRAMES = 240

/**
 * Shares for a play of `frames` (3 to 240): unfired, up to the planned firing at two thirds of the play, then on to
 * `overShare` (1 to 20), the dose of the hotter firing over the planned. Three frames are the three stills.
 */
export function playShares(frames: number, overShare: number): readonly number[] {
  inRange('frames', frames, 3, MOST_FRAMES)
  inRange('overShare', overShare, 1, 20)
  const planned = frames === 3 ? 1 : Math.round((frames - 1) * (2 / 3))
  return Array.from({ length: frames }, (_, i) =>
    i <= planned ? i / planned : 1 + ((overShare - 1) * (i - planned)) / (frames - 1 - planned),
  )
}

function heightAt(path: MeltPath, sMm: number): number {
  if (sMm >= path.lengthMm) return path.faceZMm[path.cells]!
  const next = path.faceMm.findIndex((s) => s >= sMm)
  if (next <= 0) return path.faceZMm[0]!
  const [above, below] = [path.faceMm[next - 1]!, path.faceMm[next]!]
  const share = (sMm - above) / (below - above)
  return path.faceZMm[next - 1]! + share * (path.faceZMm[next]! - path.faceZMm[next - 1]!)
}

/** The dips outside with their edges as they stand now; what has no dose stays where it was put. */
function edgesNow(coats: readonly CoatOnWall[], { edges, path }: Melt): DipEdge[] {
  return [...new Set(coats.map((coat) => coat.dipId))].map((dipId): DipEdge => {
    const mine = coats.filter((coat) => coat.dipId === dipId)
    const slid = edges.filter((edge) => edge.dipId === dipId).map((edge) => heightAt(path, edge.atMm))
    return {
      dipId,
      glazeId: mine[0]!.glazeId,
      fromMm: Math.min(...mine.map((coat) => coat.fromMm), ...slid),
      toMm: Math.max(...mine.map((coat) => coat.toMm)),
    }
  })
}

/**
 * Frames of the likely melt at each share. One run serves them all, since firings add.
 * RangeError for coats out of range, or shares that fall, start below 0 or pass 20.
 */
export function lookAhead({ profile, coats, shares }: LookAheadInput): LookAhead {
  checkedCoats(coats)
  inRange('shares.length', shares.length, 1, MOST_FRAMES)
  const line = downwards(profile, 'outside')
  const outside = coatsOn(coats, 'outside')
  const edgeMm = Math.max(0, ...outside.map((coat) => downToMm(line, coat.fromMm)))
  const path = pathAlong(line, edgeMm, LEAST_SLOPE)
  const melt = layCoats(path, line, outside, false)
  const well = layWell(profile, coats, false)
  let before = 0
  let lowest = 0
  const frames = shares.map((share, i): MeltFrame => {
    inRange(`shares[${i}]`, share, before, 20)
    flow(melt, share - before)
    flow(well.melt, share - before)
    before = share
    lowest = Math.max(lowest, frontMm(melt))
    return {
      share,
      outsideMm: melt.thickMm.slice(),
      insideMm: well.melt.thickMm.slice(),
      edges: edgesNow(outside, melt),
      frontUpMm: outside.length > 0 ? heightAt(path, lowest) : null,
      poolDepthMm: poolOf(profile, well).depthMm,
      onShelfMl: toMl(melt.gone),
    }
  })
  return {
    outside: path.middle,
    inside: well.melt.path.middle,
    frames,
    untestedGlazes: [...new Set(coats.filter((coat) => !coat.dose).map((coat) => coat.glazeId))],
  }
}
