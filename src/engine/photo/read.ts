/** From a photo of a pot's side, a trace and one length to its outline in mm. */
import { type Cut, KNOWN, type Lengths, type Point, type Trace } from './contract.ts'
import { fitted } from './fit.ts'
import { DEG } from './usual.ts'
import { AT, KNOTS, STRETCHES, span } from './view.ts'

/** What a trace and a photo have to be, each with what is allowed. */
export const NEEDS = {
  /** Points up the side. */
  points: { least: 2, most: 60 },
  /** Foot to rim, and the foot and rim across, in parts of the photo that is shown. */
  height: { least: 0.08, most: 1 },
  across: { least: 0.02, most: 1 },
  /** Share of the outline on an edge. */
  edge: { least: 0.9, most: 1 },
  /** How far the edge lies from what was tapped, squared, in errors of a hand. */
  off: { least: 0, most: 0.3 },
  /** How far height over widest is from what was measured of both, in parts. */
  lengths: { least: 0, most: 0.015 },
  /** Height over widest: of a lower pot no side shows enough of the area. */
  low: { least: 0.2, most: 20 },
  /** Lengths that have to be known. */
  known: { least: 2, most: 2 },
} as const
/** With one length known the ellipses tell the other: below or beyond these too badly. `doubt` as `spread` of a fit. */
const BY_ONE = { edge: 0.97, off: 0.1, doubt: 0.015, low: 0.55 } as const
export type Need = keyof typeof NEEDS
const SURE = 0.5

/** What makes no pot, or cannot be told: field, value and range. */
export interface Unread {
  readonly ok: false
  readonly field: Need
  readonly value: number
  readonly least: number
  readonly most: number
}
export interface Outline {
  readonly ok: true
  /** Radius and height of points of the outside, from foot to rim, mm. */
  readonly outsideMm: readonly (readonly [number, number])[]
  readonly widestMm: number
  /** How steeply the camera looked down on the rim, degrees; below 0 it looked up. */
  readonly downDeg: number
  /** The outline on the cut, px, once round, and of each point whether an edge was found there. */
  readonly seen: readonly (Point & { readonly sure: boolean })[]
}

function wrong(field: Need, value: number): Unread | undefined {
  const { least, most } = NEEDS[field]
  return value >= least && value <= most ? undefined : { ok: false, field, value, least, most }
}

/** Whether what was tapped makes a pot at all. */
export function traceFault({ width, height }: Cut, { side, footLeft, rimLeft }: Trace): Unread | undefined {
  const few = wrong('points', side.length)
  if (few) return few
  const [foot, rim] = [side[0]!, side[side.length - 1]!]
  return (
    wrong('height', ((foot.y + footLeft.y) / 2 - (rim.y + rimLeft.y) / 2) / height) ??
    wrong('across', Math.min(foot.x - footLeft.x, rim.x - rimLeft.x) / width)
  )
}

/**
 * The outline of the pot on a photo, by what is known of its lengths (mm), or what is wrong with trace or photo: `known`
 * where one length is too little. A pinhole camera is assumed, whose field of view is a phone's usual one or what the
 * ellipses tell, held nearly upright; the middle of the cut's `middle` is that of the whole photo. RangeError without a
 * length, or for one that is none.
 */
export function outlineFrom(cut: Cut, trace: Trace, lengths: Lengths): Outline | Unread {
  for (const known of KNOWN) {
    const mm = lengths[known]
    if (mm !== undefined && !(mm > 0 && Number.isFinite(mm)))
      throw new RangeError(`${known} is ${mm}: must be above 0`)
  }
  const { heightMm, bellyMm } = lengths
  if (heightMm === undefined && bellyMm === undefined)
    throw new RangeError('no length is known: one is needed')
  const ratio = heightMm !== undefined && bellyMm !== undefined ? heightMm / bellyMm : undefined
  const fault = traceFault(cut, trace)
  if (fault) return fault
  const { search, spread } = fitted(cut, trace, ratio)
  const { pot, seen, sure } = search
  const [, whole] = span(STRETCHES.indexOf('top'))
  const all = Array.from({ length: whole }, (_, i) => i).filter((i) => seen.shows[i])
  const edge = all.filter((i) => sure[i]! > SURE).length / whole
  const [height, widest] = [pot[AT.height]!, 2 * Math.max(...pot.subarray(AT.radii))]
  const little =
    edge < BY_ONE.edge || search.beyond > BY_ONE.off || spread > BY_ONE.doubt || height / widest < BY_ONE.low
  const unread =
    ratio === undefined
      ? wrong('known', little ? 1 : 2)
      : (wrong('edge', edge) ??
        wrong('off', search.beyond) ??
        wrong('lengths', Math.abs(height / widest / ratio - 1)) ??
        wrong('low', ratio))
  if (unread) return unread
  const up = (heightMm ?? (bellyMm! * height) / widest) / height
  const across = (bellyMm ?? (heightMm! * widest) / height) / widest
  const tenth = (x: number) => Math.round(x * 10) / 10
  return {
    ok: true,
    outsideMm: KNOTS.map((u, k) => [tenth(pot[AT.radii + k]! * across), tenth(u * height * up)] as const),
    widestMm: tenth(widest * across),
    downDeg: (pot[AT.up]! - height) / DEG,
    seen: all.map((i) => ({ x: seen.x[i]!, y: seen.y[i]!, sure: sure[i]! > SURE })),
  }
}
