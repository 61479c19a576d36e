/** From a few measures to the outline of a pot: the outside as a curve, the inside one wall thickness within it. */
import { inRange, oneOf } from '../check.ts'
import type { OutlinePoint, Profile, Shape } from '../contract.ts'
import { at, evenly, smooth } from './curve.ts'
import { FORMS, floorUpMm, LID_NECK, type Measures, measuresOf, stretches } from './forms.ts'

export { FORMS, SIZES, type Size, sizeSteps } from './forms.ts'

/** Fewest straight pieces of the outside above its base; a hemisphere of 32 is 0.06 % small (see areas). */
const LEAST_PIECES = 40
const INSIDE_PIECES = 48
/** Levels at which the inside is sought before it is cut into even pieces. */
const LEVELS = 160
/** The least opening that is still a pot. */
const LEAST_INSIDE_R_MM = 2

function checked(shape: Shape): Measures {
  oneOf('form', shape.form, FORMS)
  inRange('heightMm', shape.heightMm, 10, 1000)
  inRange('rimMm', shape.rimMm, 10, 1000)
  inRange('wallMm', shape.wallMm, 0.5, 60)
  inRange('footLineMm', shape.footLineMm, 0, shape.heightMm)
  if (shape.galleryMm !== undefined) inRange('galleryMm', shape.galleryMm, 0, shape.heightMm / 2)
  if (shape.footMm !== undefined) inRange('footMm', shape.footMm, 8, 1000)
  if (shape.bellyMm !== undefined) inRange('bellyMm', shape.bellyMm, 10, 1200)
  if (shape.bellyUpMm !== undefined)
    inRange('bellyUpMm', shape.bellyUpMm, shape.heightMm * 0.1, shape.heightMm * 0.9)
  if (shape.floorMm !== undefined) inRange('floorMm', shape.floorMm, 0.5, 60)
  const m = measuresOf(shape)
  if (m.form !== 'lid') inRange('floorMm (with the foot ring)', floorUpMm(m), 0.3, shape.heightMm * 0.8)
  return m
}

function outside(m: Measures, read: Shape['outsideMm']): OutlinePoint[] {
  const all = read
    ? [
        read.map(([rMm, zMm], i) => ({
          rMm,
          zMm: inRange('outsideMm', zMm, read[i - 1]?.[1] ?? 0, m.heightMm),
        })),
      ]
    : stretches(m)
  const spans = all.reduce((sum, stretch) => sum + stretch.length - 1, 0)
  const pieces = Math.ceil(LEAST_PIECES / spans)
  const line: OutlinePoint[] = [{ rMm: 0, zMm: 0 }]
  for (const stretch of all) {
    const curve = smooth(stretch, pieces)
    line.push(...(line.length === 1 ? curve : curve.slice(1)))
  }
  return line
}

/** Index of the first point at height z or above it, by halving: heights never fall along an outline. */
function firstAt(outer: readonly OutlinePoint[], z: number): number {
  let low = 0
  let high = outer.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (at(outer, middle).zMm < z) low = middle + 1
    else high = middle
  }
  return low
}

/** Radius at height z of the curve that keeps the distance `wallMm` from the outside, on its inner side. */
function withinAt(outer: readonly OutlinePoint[], wallMm: number, z: number): number {
  let least = Infinity
  for (let i = Math.max(1, firstAt(outer, z - wallMm) - 1); i + 1 < outer.length; i++) {
    const a = at(outer, i)
    const b = at(outer, i + 1)
    if (a.zMm > z + wallMm) break
    const low = Math.max(a.zMm, z - wallMm)
    const high = Math.min(b.zMm, z + wallMm)
    // On a straight piece r - sqrt(w2 - (z - Z)2) is convex in Z: its least is at the foot of the normal or an end.
    const rise = b.zMm - a.zMm
    const slope = rise > 0 ? (b.rMm - a.rMm) / rise : 0
    const foot = Math.min(high, Math.max(low, z - (slope * wallMm) / Math.hypot(1, slope)))
    const r = rise > 0 ? a.rMm + slope * (foot - a.zMm) : Math.min(a.rMm, b.rMm)
    least = Math.min(least, r - Math.sqrt(Math.max(0, wallMm * wallMm - (foot - z) ** 2)))
  }
  return least
}

/** The hollow under a lid, from its seat up to the middle under the knob. */
function under(m: Measures, outer: readonly OutlinePoint[]): OutlinePoint[] {
  const topMm = LID_NECK.up * m.heightMm - m.wallMm
  const seat = withinAt(outer, m.wallMm, 0)
  if (!(topMm > 0 && seat > LEAST_INSIDE_R_MM))
    throw new RangeError(`wallMm is ${m.wallMm}: leaves no hollow under the lid`)
  const line: OutlinePoint[] = []
  for (let i = 0; i < LEVELS; i++) {
    const zMm = (topMm * i) / LEVELS
    const rMm = withinAt(outer, m.wallMm, zMm)
    if (rMm < LEAST_INSIDE_R_MM) break
    line.push({ rMm, zMm })
  }
  return evenly([...line, { rMm: 0, zMm: at(line, line.length - 1).zMm }], INSIDE_PIECES)
}

function inside(m: Measures, outer: readonly OutlinePoint[]): OutlinePoint[] {
  if (m.form === 'lid') return under(m, outer)
  const from = floorUpMm(m)
  const depth = m.heightMm - from
  const raw = Array.from({ length: LEVELS + 1 }, (_, i) => {
    // Levels crowd near the floor, where flat forms open fast.
    const zMm = i === LEVELS ? m.heightMm : from + depth * (i / LEVELS) ** 1.5
    return { rMm: withinAt(outer, m.wallMm, zMm), zMm }
  })
  const narrowest = Math.min(...raw.map((p) => p.rMm))
  if (!(narrowest >= LEAST_INSIDE_R_MM))
    throw new RangeError(
      `wallMm is ${m.wallMm}: leaves an opening of ${narrowest.toFixed(1)} mm radius, must leave ${LEAST_INSIDE_R_MM} or more`,
    )
  if (m.form === 'cylinder') return [{ rMm: 0, zMm: from }, ...evenly(raw, INSIDE_PIECES)]
  // Fingers leave a rounded corner between floor and wall.
  const fillet = Math.min(depth * 0.3, at(raw, 0).rMm * 0.35, m.form === 'plate' ? 3 : 14)
  const rounded = ({ rMm, zMm }: OutlinePoint): OutlinePoint => {
    const up = zMm - from
    if (up >= fillet) return { rMm, zMm }
    return { rMm: Math.max(0, rMm - fillet * (1 - Math.sqrt(1 - (1 - up / fillet) ** 2))), zMm }
  }
  // Even pieces cut corners: each point is put back on the curve at its own height.
  const even = evenly(raw.map(rounded), INSIDE_PIECES)
  return [
    { rMm: 0, zMm: from },
    ...even.map(({ zMm }) => rounded({ rMm: withinAt(outer, m.wallMm, zMm), zMm })),
  ]
}

/**
 * The outline of a pot. `outer` starts at (0, 0), runs over the base and up to the rim; `inner` starts at the middle
 * of the inside floor and runs up to the rim (a lid's: from its seat to the middle of its hollow). Heights never fall
 * along either. The ground under a foot ring counts
 * as clay (it holds air when the pot stands in the bucket). The wall is measured across, not level.
 * RangeError for measures out of range or a wall that leaves no opening.
 */
export function outlineOf(shape: Shape): Profile {
  const m = checked(shape)
  const outer = outside(m, shape.outsideMm)
  return { shape, outer, inner: inside(m, outer) }
}
