/** The outline off a photo as a pot's measures. */
import type { ShapeFacts } from '../../../shared/nouns.ts'
import type { Cut, Lengths, Trace } from '../../engine/photo/contract.ts'
import { type Outline, outlineFrom, traceFault, type Unread } from '../../engine/photo/read.ts'
import { LIMITS, outOfRange } from '../model/limits.ts'
import { outerOf } from './offer.ts'

export type { Cut, Known, Lengths, Point, Trace } from '../../engine/photo/contract.ts'
export { KNOWN } from '../../engine/photo/contract.ts'
export type { Need, Outline } from '../../engine/photo/read.ts'
export { traceFault }

/** From so steep a look down a pot's height is told by its rim's ellipse more than by its sides. Our choice. */
export const TOO_STEEP_DEG = 8

export type PhotoFault =
  | Unread
  | {
      readonly ok: false
      readonly field: 'heightMm' | 'rimMm' | 'bellyMm' | 'footMm' | 'wallMm'
      readonly value: number
      readonly least: number
      readonly most: number
    }

/**
 * A pot's measures by a photo and a length or two (mm): its form, wall and foot line stay. Refused with field, value and range where the trace
 * makes no pot, or one that no form takes.
 */
export function shapeByPhoto(
  base: ShapeFacts,
  cut: Cut,
  trace: Trace,
  lengths: Lengths,
): { readonly ok: true; readonly shape: ShapeFacts; readonly outline: Outline } | PhotoFault {
  const outline = outlineFrom(cut, trace, lengths)
  if (!outline.ok) return outline
  const shape = shapeOf(base, outline)
  for (const field of ['heightMm', 'rimMm', 'bellyMm', 'footMm'] as const) {
    const value = shape[field]
    if (value !== undefined && outOfRange(field, value)) return { ok: false, field, value, ...LIMITS[field] }
  }
  // A wall too thick for it: the wall is typed beside.
  if (!outerOf(shape)) return { ok: false, field: 'wallMm', value: shape.wallMm, ...LIMITS.wallMm }
  return { ok: true, shape, outline }
}

function shapeOf(base: ShapeFacts, { outsideMm, widestMm }: Outline): ShapeFacts {
  const [foot, rim] = [outsideMm[0] ?? [0, 0], outsideMm[outsideMm.length - 1] ?? [0, 0]]
  const widest = outsideMm.reduce((a, b) => (b[0] > a[0] ? b : a))
  const [heightMm, rimMm] = [rim[1], 2 * rim[0]]
  const { form, wallMm, floorMm, galleryMm } = base
  return {
    form,
    heightMm,
    rimMm,
    footMm: 2 * foot[0],
    ...(widestMm > rimMm
      ? { bellyMm: widestMm, bellyUpMm: Math.max(0.1 * heightMm, Math.min(0.9 * heightMm, widest[1])) }
      : {}),
    wallMm,
    footLineMm: Math.min(base.footLineMm, heightMm),
    ...(floorMm === undefined ? {} : { floorMm }),
    ...(galleryMm === undefined ? {} : { galleryMm: Math.min(galleryMm, heightMm / 2) }),
    outsideMm,
  }
}
