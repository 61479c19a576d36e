/** From a photo of a pot's side, a trace and one length to its outline in mm. */
import { smooth } from '../shape/curve.ts'
import type { Cut, Known, Point, Trace } from './contract.ts'
import { fitted } from './fit.ts'
import { DEG } from './search.ts'
import { AT, KNOTS, STRETCHES, span } from './view.ts'

/** What a trace and a photo have to be: share of the outline on an edge, and the rest, each with what is allowed. */
export const NEEDS = {
  /** Points up the side. */
  points: { least: 2, most: 60 },
  /** Foot to rim, and the foot and rim across, in parts of the photo that is shown. */
  height: { least: 0.08, most: 1 },
  across: { least: 0.02, most: 1 },
  edge: { least: 0.93, most: 1 },
  /** How far the edge lies from what was tapped, squared, in errors of a hand. */
  off: { least: 0, most: 0.1 },
  /** How far answers differ that are as good as the best, in parts of the height. */
  doubt: { least: 0, most: 0.03 },
  /** Height over widest: of a lower pot the ellipses tell the height too badly. */
  low: { least: 0.3, most: 20 },
} as const
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
 * The outline of the pot on a photo, by the length `mm` that is known of it, or what is wrong with trace or photo.
 * A pinhole camera is assumed, whose field of view is a phone's usual one or what the ellipses tell, held nearly
 * upright; the middle of the cut's `middle` is that of the whole photo. RangeError for a length that is none.
 */
export function outlineFrom(cut: Cut, trace: Trace, known: Known, mm: number): Outline | Unread {
  if (!(mm > 0 && Number.isFinite(mm))) throw new RangeError(`mm is ${mm}: must be above 0`)
  const fault = traceFault(cut, trace)
  if (fault) return fault
  const { search, spread } = fitted(cut, trace)
  const { pot, seen, sure } = search
  const [, whole] = span(STRETCHES.indexOf('top'))
  const all = Array.from({ length: whole }, (_, i) => i).filter((i) => seen.shows[i])
  const height = pot[AT.height]!
  const line = KNOTS.map((u, k) => ({ rMm: pot[AT.radii + k]!, zMm: u * height }))
  const widest = 2 * Math.max(...smooth(line, 4).map(({ rMm }) => rMm))
  const unread =
    wrong('edge', all.filter((i) => sure[i]! > SURE).length / whole) ??
    wrong('off', search.beyond) ??
    wrong('doubt', spread) ??
    wrong('low', height / widest)
  if (unread) return unread
  const scale = mm / { heightMm: height, rimMm: 2 * line[line.length - 1]!.rMm, bellyMm: widest }[known]
  const tenth = (x: number) => Math.round(x * scale * 10) / 10
  return {
    ok: true,
    outsideMm: line.map(({ rMm, zMm }) => [tenth(rMm), tenth(zMm)] as const),
    widestMm: tenth(widest),
    downDeg: (pot[AT.up]! - height) / DEG,
    seen: all.map((i) => ({ x: seen.x[i]!, y: seen.y[i]!, sure: sure[i]! > SURE })),
  }
}
