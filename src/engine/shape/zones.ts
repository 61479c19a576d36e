/** A pot cut along its profile at every edge of a coat: each stretch is a piece of wall with two faces. */

import type { Dip, Profile, ZoneName } from '../contract.ts'
import { reachOf } from './immersion.ts'

/** A piece of wall. Heights above the shelf; a face that is solid clay or lies on the shelf has no span there. */
export interface Stretch {
  /** Name of the outside; the inside of every stretch is called inside. */
  readonly name: ZoneName
  readonly thickMm: number
  readonly outside: Span
  readonly inside: Span
  /** The base: waxed below, so its outside takes no glaze. */
  readonly base: boolean
}

export interface Span {
  readonly fromMm: number
  readonly toMm: number
}

/** The skirt reaches this far above the foot line, or to the belly's widest point if lower. Our own measure. */
const SKIRT_MM = 20
/** Edges nearer to each other than this are one. */
const SAME_EDGE_MM = 0.25
/** A floor that was not measured is this much thicker than the wall (as the outline has it). */
const FLOOR_PER_WALL = 1.2
/** The inside floor is taken to reach this far up the inside. */
const FLOOR_EDGE_MM = 2

/** Upper end of the skirt, mm above the shelf. */
export function skirtTopMm(profile: Profile): number {
  const { footLineMm, heightMm, bellyUpMm } = profile.shape
  const top = Math.min(footLineMm + SKIRT_MM, heightMm / 2)
  const belowBelly = bellyUpMm !== undefined && bellyUpMm > footLineMm ? Math.min(top, bellyUpMm) : top
  return Math.max(footLineMm, belowBelly)
}

/** Lower end of the deepest collar among the dips; Infinity without one. */
function collarFromMm(profile: Profile, dips: readonly Dip[]): number {
  let from = Infinity
  for (const dip of dips)
    if (dip.cover.kind === 'collar') from = Math.min(from, profile.shape.heightMm - dip.cover.depthMm)
  return from
}

/** Every height at which something ends, from the foot line to the rim, close ones merged. */
function edges(profile: Profile, dips: readonly Dip[]): number[] {
  const { heightMm, footLineMm, galleryMm = 0 } = profile.shape
  const all = [skirtTopMm(profile), heightMm - galleryMm]
  for (const dip of dips) {
    const reach = reachOf(dip.cover, 'outside', profile.shape)
    if (reach) all.push(reach.fromMm, reach.toMm)
  }
  const kept = [footLineMm]
  for (const edge of all.sort((a, b) => a - b))
    if (edge > kept[kept.length - 1]! + SAME_EDGE_MM && edge < heightMm - SAME_EDGE_MM) kept.push(edge)
  if (heightMm > kept[kept.length - 1]!) kept.push(heightMm)
  return kept
}

/** The stretches of a pot under these dips, from the base up. */
export function cutWall(profile: Profile, dips: readonly Dip[]): Stretch[] {
  const { wallMm, floorMm, footLineMm, heightMm } = profile.shape
  const floorUpMm = profile.inner[0]!.zMm
  const floorTopMm = Math.min(heightMm, Math.max(footLineMm, floorUpMm + FLOOR_EDGE_MM))
  const skirtTop = skirtTopMm(profile)
  const collarFrom = collarFromMm(profile, dips)
  const stretches: Stretch[] = [
    {
      name: 'foot',
      thickMm: floorMm ?? wallMm * FLOOR_PER_WALL,
      outside: { fromMm: 0, toMm: footLineMm },
      inside: { fromMm: floorUpMm, toMm: floorTopMm },
      base: true,
    },
  ]
  const cuts = edges(profile, dips)
  for (let i = 1; i < cuts.length; i++) {
    const [fromMm, toMm] = [cuts[i - 1]!, cuts[i]!]
    stretches.push({
      name: nameOf(fromMm, toMm, skirtTop, collarFrom),
      thickMm: wallMm,
      outside: { fromMm, toMm },
      inside: { fromMm: Math.max(fromMm, floorTopMm), toMm: Math.max(toMm, floorTopMm) },
      base: false,
    })
  }
  return stretches
}

function nameOf(fromMm: number, toMm: number, skirtTop: number, collarFrom: number): ZoneName {
  const midMm = (fromMm + toMm) / 2
  if (midMm > collarFrom) return 'collar'
  return midMm < skirtTop ? 'skirt' : 'body'
}

/** Is the middle of a span within a reach? */
export const within = (span: Span, reach: Span | undefined): boolean => {
  if (reach === undefined || span.toMm <= span.fromMm) return false
  const midMm = (span.fromMm + span.toMm) / 2
  return midMm >= reach.fromMm && midMm <= reach.toMm
}
