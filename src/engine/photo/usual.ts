/** What phones, hands and pots are like, whatever a picture shows, as equations of one step. */
import { AT, KNOTS, MANY } from './view.ts'

export const DEG = Math.PI / 180
/** Half the field of view along a photo's longer side as phones have it; sd of the focal length's logarithm. */
const HALF_VIEW = 32.5 * DEG
const FOCAL_SD = 0.11
export const USUAL_FOCAL = Math.log(1 / Math.tan(HALF_VIEW))
/** How far a phone is held from upright, sd; how far it is above or below the pot's middle, in its distance. */
export const HELD_SD = 4 * DEG
const UP_SD = 0.4
/** Radii lie on a smooth line (sd in sizes of the pot, at the widest gap of knots); a corner counts so many sd at most. */
const SMOOTH_SD = 0.02
const CORNER = 3
/** The last knots below a rim are smoother, and have no corner: a rim would else curl in to look like its ellipse. */
const LIP_KNOTS = 4
const LIP = 0.5
const FOOT_SD = 0.006
/** No step goes farther than the picture beside the outline is known: radians, logarithm, sizes of the pot. */
const STEP = { angle: 1.5 * DEG, focal: 0.05, length: 0.04 } as const
/** Height over widest by two lengths that were measured: sd. */
const RATIO_SD = 0.004
/** How firmly the camera is held where it is while the outline finds its edges. */
const HELD = 0.001

/** Equations of one step: what is wanted of the change of each number, by weight. */
export class Equations {
  readonly a = new Float64Array(MANY * MANY)
  readonly b = new Float64Array(MANY)
  add(row: Float64Array, wanted: number, weight: number): void {
    for (let i = 0; i < MANY; i++) {
      const ri = row[i]!
      if (ri === 0) continue
      this.b[i]! += weight * ri * wanted
      for (let j = 0; j <= i; j++) this.a[i * MANY + j]! += weight * ri * row[j]!
    }
  }
  one(i: number, wanted: number, sd: number): void {
    this.a[i * MANY + i]! += 1 / (sd * sd)
    this.b[i]! += wanted / (sd * sd)
  }
}

/** What phones, hands and pots are like, whatever the picture shows. */
export function usual(to: Equations, pot: Float64Array, held: boolean, loose: number, ratio?: number): void {
  const row = new Float64Array(MANY)
  if (held) {
    row.fill(0)
    row[AT.up] = 1
    row[AT.height] = -1
    to.add(row, 0, 1 / HELD ** 2)
    to.one(AT.pitch, 0, 3 * HELD)
    to.one(AT.focal, 0, HELD)
  }
  to.one(AT.focal, USUAL_FOCAL - pot[AT.focal]!, FOCAL_SD)
  to.one(AT.pitch, -pot[AT.pitch]!, HELD_SD)
  to.one(AT.roll, -pot[AT.roll]!, HELD_SD)
  to.one(AT.up, pot[AT.height]! / 2 - pot[AT.up]!, UP_SD)
  const size = Math.max(pot[AT.height]!, 2 * Math.max(...pot.subarray(AT.radii)))
  for (const angle of [AT.yaw, AT.pitch, AT.roll]) to.one(angle, 0, STEP.angle)
  to.one(AT.focal, 0, STEP.focal)
  for (const length of [AT.up, AT.height]) to.one(length, 0, STEP.length * size)
  for (let k = AT.radii; k < MANY; k++) to.one(k, 0, STEP.length * size)
  if (ratio !== undefined) {
    const widest = pot.indexOf(Math.max(...pot.subarray(AT.radii)), AT.radii)
    row.fill(0)
    row[AT.height] = 1
    row[widest] = -2 * ratio
    to.add(row, 2 * ratio * pot[widest]! - pot[AT.height]!, 1 / (RATIO_SD * pot[AT.height]!) ** 2)
  }
  row.fill(0)
  row[AT.radii] = 1
  row[AT.radii + 1] = -1
  to.add(row, pot[AT.radii + 1]! - pot[AT.radii]!, 1 / (FOOT_SD * size) ** 2)
  for (let k = 1; k + 1 < KNOTS.length; k++) {
    const [a, b, c] = [KNOTS[k - 1]!, KNOTS[k]!, KNOTS[k + 1]!]
    const part = (b - a) / (c - a)
    row.fill(0)
    row[AT.radii + k - 1] = 1 - part
    row[AT.radii + k] = -1
    row[AT.radii + k + 1] = part
    const bend = (1 - part) * pot[AT.radii + k - 1]! - pot[AT.radii + k]! + part * pot[AT.radii + k + 1]!
    const lip = k >= KNOTS.length - LIP_KNOTS
    const sd = loose * (lip ? LIP : 1) * SMOOTH_SD * size * Math.min(1, (c - a) / 0.18)
    to.add(row, -bend, 1 / (sd * sd) / (lip ? 1 : 1 + (bend / (CORNER * sd)) ** 2))
  }
}
