/** Which stretch of which face a coat reaches, and how long each height was under. */

import { inRange, oneOf } from '../check.ts'
import type { Cover, Dip, Face, Shape } from '../contract.ts'

/** Heights above the shelf between which a cover wets a face; undefined where it leaves that face bare. */
export interface Reach {
  readonly fromMm: number
  readonly toMm: number
}

/**
 * What a cover wets. Down and collar dips go in rim first: the trapped air keeps the inside bare but for a strip of a
 * millimetre or so, which is left out. A gallery, and both faces of a lid's edge, are waxed, or wiped at once.
 */
export function reachOf(cover: Cover, face: Face, shape: Shape): Reach | undefined {
  const { heightMm, footLineMm, galleryMm = 0 } = shape
  if (face === 'inside')
    return cover.kind === 'full' || cover.kind === 'inside'
      ? { fromMm: shape.form === 'lid' ? footLineMm : 0, toMm: heightMm - galleryMm }
      : undefined
  switch (cover.kind) {
    case 'full':
      return { fromMm: footLineMm, toMm: heightMm }
    case 'downTo':
      return { fromMm: Math.max(footLineMm, cover.edgeUpMm), toMm: heightMm }
    case 'upTo':
      return { fromMm: footLineMm, toMm: cover.edgeUpMm }
    case 'collar':
      return { fromMm: Math.max(footLineMm, heightMm - cover.depthMm), toMm: heightMm }
    case 'inside':
      return undefined
  }
}

/**
 * Seconds a height is under. The hold counts from fully under to the start of the lift; what went in first comes out
 * last. Full dips and pours wet the foot end longest (a pot tilted to fill, or filled and tipped out), downTo and
 * collar the rim.
 */
export function secondsUnder(
  dip: Pick<Dip, 'cover' | 'holdS' | 'lowerMmPerS' | 'liftMmPerS'>,
  heightMm: number,
  atMm: number,
): number {
  const { cover } = dip
  const before =
    cover.kind === 'downTo'
      ? atMm - cover.edgeUpMm
      : cover.kind === 'collar'
        ? atMm - (heightMm - cover.depthMm)
        : (cover.kind === 'upTo' ? cover.edgeUpMm : heightMm) - atMm
  return dip.holdS + Math.max(0, before) * (1 / dip.lowerMmPerS + 1 / dip.liftMmPerS)
}

const COVERS = ['full', 'downTo', 'upTo', 'collar', 'inside'] as const

/** Throws RangeError unless the dip's hold (0 to 600 s), speeds (1 to 2000 mm/s) and cover fit the pot. */
export function checkedDip(dip: Dip, heightMm: number): Dip {
  inRange('holdS', dip.holdS, 0, 600)
  inRange('lowerMmPerS', dip.lowerMmPerS, 1, 2000)
  inRange('liftMmPerS', dip.liftMmPerS, 1, 2000)
  oneOf('cover.kind', dip.cover.kind, COVERS)
  if (dip.cover.kind === 'collar') inRange('cover.depthMm', dip.cover.depthMm, 0, heightMm)
  if (dip.cover.kind === 'downTo' || dip.cover.kind === 'upTo')
    inRange('cover.edgeUpMm', dip.cover.edgeUpMm, 0, heightMm)
  return dip
}
