/** The forms: usual measures in three sizes, and the curve of each outside from a few measures. */
import type { Form, OutlinePoint, Shape } from '../contract.ts'

export const FORMS: readonly Form[] = ['beaker', 'bowl', 'bottle', 'cup', 'jar', 'plate', 'cylinder', 'lid']
export const SIZES = ['small', 'medium', 'large'] as const
export type Size = (typeof SIZES)[number]

/** Height, rim, belly, belly's height, foot, wall, floor, foot line in mm. Common studio sizes (practice, no source). */
type Row = readonly [number, number, number, number, number, number, number, number]

const USUAL: Record<Form, Record<Size, Row>> = {
  beaker: {
    small: [80, 70, 0, 0, 52, 4.5, 5, 6],
    medium: [105, 82, 0, 0, 60, 5, 6, 8],
    large: [140, 95, 0, 0, 68, 6, 7, 8],
  },
  bowl: {
    small: [55, 115, 0, 0, 52, 4.5, 5, 8],
    medium: [75, 165, 0, 0, 70, 5.5, 6, 10],
    large: [100, 240, 0, 0, 95, 7, 8, 12],
  },
  bottle: {
    small: [140, 34, 84, 48, 56, 5, 6, 8],
    medium: [200, 42, 112, 70, 72, 6, 7, 8],
    large: [280, 52, 150, 100, 92, 7, 8, 10],
  },
  cup: {
    small: [65, 72, 76, 34, 42, 4, 5, 6],
    medium: [90, 84, 90, 42, 54, 5, 6, 8],
    large: [110, 98, 106, 50, 64, 6, 7, 8],
  },
  jar: {
    small: [95, 70, 98, 50, 60, 5, 6, 8],
    medium: [150, 96, 144, 80, 84, 6, 7, 8],
    large: [220, 130, 200, 120, 115, 8, 9, 10],
  },
  plate: {
    small: [22, 170, 0, 0, 105, 5, 6, 6],
    medium: [28, 230, 0, 0, 140, 6, 7, 7],
    large: [34, 290, 0, 0, 180, 7, 8, 8],
  },
  cylinder: {
    small: [90, 70, 0, 0, 70, 4.5, 5, 6],
    medium: [140, 90, 0, 0, 90, 5.5, 6, 8],
    large: [220, 120, 0, 0, 120, 7, 8, 8],
  },
  lid: {
    small: [28, 66, 0, 0, 66, 4.5, 4.5, 4],
    medium: [38, 90, 0, 0, 90, 5.5, 5.5, 4],
    large: [52, 124, 0, 0, 124, 7, 7, 5],
  },
}

function shapeOf(form: Form, row: Row): Shape {
  const [heightMm, rimMm, bellyMm, bellyUpMm, footMm, wallMm, floorMm, footLineMm] = row
  const shape: Shape = { form, heightMm, rimMm, footMm, wallMm, floorMm, footLineMm }
  return bellyMm > 0 ? { ...shape, bellyMm, bellyUpMm } : shape
}

/** Usual measures of a form, small, medium and large. */
export function sizeSteps(form: Form): Readonly<Record<Size, Shape>> {
  const rows = USUAL[form]
  return {
    small: shapeOf(form, rows.small),
    medium: shapeOf(form, rows.medium),
    large: shapeOf(form, rows.large),
  }
}

/** A shape with nothing left open: radii and heights in mm. */
export interface Measures {
  readonly form: Form
  readonly heightMm: number
  readonly rimRMm: number
  readonly bellyRMm: number
  readonly bellyUpMm: number
  readonly footRMm: number
  readonly wallMm: number
  readonly floorMm: number
  /** Height of a turned foot ring; 0 for a flat foot. */
  readonly ringMm: number
}

/** Forms as wide at the bottom as `rimMm` says. */
const isStraight = (form: Form): boolean => form === 'cylinder' || form === 'lid'
const hasBelly = (form: Form): boolean => form === 'bottle' || form === 'cup' || form === 'jar'
const hasRing = (form: Form): boolean => form === 'bowl' || form === 'plate'

/** Fills in what a shape leaves open in the proportions of the medium size, and keeps the foot ring in its place. */
export function measuresOf(shape: Shape): Measures {
  const like = sizeSteps(shape.form).medium
  const rim = shape.rimMm / 2
  const belly = hasBelly(shape.form)
    ? (shape.bellyMm ?? (rim * 2 * (like.bellyMm ?? 0)) / like.rimMm) / 2
    : rim
  const wide = hasBelly(shape.form) ? belly : rim
  const likeWide = (like.bellyMm ?? like.rimMm) / 2
  const foot = isStraight(shape.form) ? rim : (shape.footMm ?? (wide * (like.footMm ?? 0)) / likeWide) / 2
  return {
    form: shape.form,
    heightMm: shape.heightMm,
    rimRMm: rim,
    bellyRMm: belly,
    bellyUpMm: shape.bellyUpMm ?? (shape.heightMm * (like.bellyUpMm ?? 0)) / like.heightMm,
    footRMm: foot,
    wallMm: shape.wallMm,
    floorMm: shape.form === 'lid' ? 0 : (shape.floorMm ?? shape.wallMm * 1.2),
    ringMm: hasRing(shape.form)
      ? Math.min(shape.heightMm * 0.2, shape.form === 'plate' ? 5 : 9, wide * 0.1)
      : 0,
  }
}

const point = (rMm: number, zMm: number): OutlinePoint => ({ rMm, zMm })

/** Steps of a quarter of a superellipse: how far out (0 to 1) at a height `up` (0 to 1); `power` 1 is straight. */
const swell = (up: number, power: number): number => (1 - (1 - up) ** power) ** (1 / power)

/** From (r0, z0) up to (r1, z1), steep at the top when `part` nears 1. */
function rise(from: OutlinePoint, to: OutlinePoint, power: number, part: number): OutlinePoint[] {
  const full = swell(part, power)
  const between = [0.04, 0.12, 0.25, 0.42, 0.62, 0.82].map((u) =>
    point(
      from.rMm + ((to.rMm - from.rMm) * swell(u * part, power)) / full,
      from.zMm + (to.zMm - from.zMm) * u,
    ),
  )
  return [from, ...between, to]
}

/** From a belly, upright there, in to a neck: `power` above 2 keeps the shoulder out longer. */
function shoulder(from: OutlinePoint, to: OutlinePoint, power: number): OutlinePoint[] {
  const between = [0.2, 0.4, 0.6, 0.78, 0.9].map((u) =>
    point(to.rMm + (from.rMm - to.rMm) * (1 - u ** power) ** 1.6, from.zMm + (to.zMm - from.zMm) * u),
  )
  return [...between, to]
}

/** A plate's underside from ring to rim, outwards and upwards in parts of the whole: well, turn, flange. */
const FLANGE = [
  [0.3, 0.04],
  [0.48, 0.12],
  [0.6, 0.27],
  [0.68, 0.44],
  [0.76, 0.6],
  [0.87, 0.79],
] as const

/**
 * Control points of the outside above the base, in stretches: the curve is smooth within one and has a corner
 * between two. Each stretch starts where the one before it ended.
 */
export function stretches(m: Measures): readonly (readonly OutlinePoint[])[] {
  const foot = point(m.footRMm, 0)
  const rim = point(m.rimRMm, m.heightMm)
  const [r, h] = [m.footRMm, m.heightMm]
  // A turned edge at the foot, so that it doesn't chip on the shelf.
  const turn = Math.min(2, h * 0.04, r * 0.1)
  const turned = point(r + turn * 0.4, turn)
  switch (m.form) {
    case 'cylinder':
      return [[foot, rim]]
    case 'lid':
      return lidStretches(m)
    case 'beaker':
      return [[foot, turned], rise(turned, rim, 1.25, 0.75)]
    case 'bowl':
    case 'plate': {
      const ring = point(r - m.ringMm * 0.15, m.ringMm)
      if (m.form === 'bowl') return [[foot, ring], rise(ring, rim, 1.75, 0.72)]
      return [
        [foot, ring],
        [
          ring,
          ...FLANGE.map(([out, up]) =>
            point(ring.rMm + (rim.rMm - ring.rMm) * out, ring.zMm + (h - ring.zMm) * up),
          ),
          rim,
        ],
      ]
    }
    case 'cup': {
      const belly = point(m.bellyRMm, m.bellyUpMm)
      const waist = point(m.rimRMm + (m.bellyRMm - m.rimRMm) * 0.25, m.bellyUpMm + (h - m.bellyUpMm) * 0.7)
      return [
        [foot, turned],
        [...rise(turned, belly, 1.8, 1), waist, rim],
      ]
    }
    case 'jar': {
      const belly = point(m.bellyRMm, m.bellyUpMm)
      const neck = point(m.rimRMm * 0.95, m.bellyUpMm + (h - m.bellyUpMm) * 0.87)
      return [
        [foot, turned],
        [...rise(turned, belly, 1.5, 1), ...shoulder(belly, neck, 2.2), rim],
      ]
    }
    case 'bottle': {
      const belly = point(m.bellyRMm, m.bellyUpMm)
      const above = h - m.bellyUpMm
      const neckR = m.rimRMm * 0.78
      const neck = point(neckR * 1.08, m.bellyUpMm + above * 0.62)
      const throat = point(neckR, m.bellyUpMm + above * 0.8)
      const lip = point(neckR + (m.rimRMm - neckR) * 0.35, m.bellyUpMm + above * 0.93)
      return [
        [foot, turned],
        [...rise(turned, belly, 1.5, 1), ...shoulder(belly, neck, 2.2), throat, lip, rim],
      ]
    }
  }
}

/** A lid's knob begins at this part of its height and radius; below lies the dome. */
export const LID_NECK = { up: 0.6, out: 0.22 } as const

/** Edge, dome, knob: upwards from the seat. */
function lidStretches({ rimRMm: r, heightMm: h }: Measures): OutlinePoint[][] {
  const edge = point(r, Math.min(6, h * 0.15))
  const neck = point(r * LID_NECK.out, h * LID_NECK.up)
  return [
    [point(r, 0), edge],
    [edge, point(r * 0.82, h * 0.34), point(r * 0.52, h * 0.5), neck],
    [neck, point(r * 0.21, h * 0.7), point(r * 0.27, h * 0.86), point(r * 0.2, h)],
  ]
}

/** Height from which the inside opens: above the floor, which sits on the foot ring where there is one. */
export const floorUpMm = (m: Measures): number => m.ringMm * 0.6 + m.floorMm
