/** How a turned pot looks to a pinhole camera: its outline on the picture, from where the camera stands and its radii. */
import type { Cut } from './contract.ts'

/** Heights at which radii are kept, in parts of the pot's: denser where feet and rims turn. */
export const KNOTS = [
  0, 0.03, 0.07, 0.12, 0.19, 0.27, 0.36, 0.45, 0.54, 0.63, 0.72, 0.8, 0.87, 0.93, 0.97, 1,
] as const

/**
 * Places in the list of numbers that say how the pot is seen. Lengths are in distances from camera to axis: how high
 * the camera is above the foot, the pot's height, and from `radii` on its radii at the knots. Angles in radians: to the
 * left, upwards, clockwise. `focal` is the logarithm of the focal length in halves of the photo's longer side.
 */
export const AT = { up: 0, yaw: 1, pitch: 2, roll: 3, focal: 4, height: 5, radii: 6 } as const
export const MANY = AT.radii + KNOTS.length

const SIDE = 40
const ARC = 25
/** Further round than this a ring shows no outline of its own: the wall lies nearly along the line of sight. */
const MOST_COS = 0.95

/** Stretches of the outline, clockwise on the picture; `front` is the rim's near edge where one looks into the pot. */
export const STRETCHES = ['right', 'foot', 'left', 'top', 'front'] as const
const FROM = [0, SIDE, SIDE + ARC, 2 * SIDE + ARC, 2 * SIDE + 2 * ARC, 2 * SIDE + 3 * ARC] as const
export const SAMPLES = FROM[5]
/** First sample of a stretch and the one after its last. */
export const span = (stretch: number): readonly [number, number] => [FROM[stretch]!, FROM[stretch + 1]!]

/** Heights of the sides' samples from the rim down, in parts: closer together at both ends. */
const PART = Float64Array.from({ length: SIDE }, (_, j) => {
  const t = 1 - j / (SIDE - 1)
  return 0.55 * t + 0.225 * (1 - Math.cos(Math.PI * t))
})

/** Radius and its slope at each height of the sides, as sums of the radii at the knots: a cubic between two (Catmull-Rom). */
const RADIUS = new Float64Array(SIDE * KNOTS.length)
const SLOPE = new Float64Array(SIDE * KNOTS.length)
for (let j = 0; j < SIDE; j++) {
  const u = PART[j]!
  for (let k = 0; k < KNOTS.length; k++) {
    RADIUS[j * KNOTS.length + k] = cubic(k, u, false)
    SLOPE[j * KNOTS.length + k] = cubic(k, u, true)
  }
}

/** The share of the radius at knot `k` in the radius at part `u` of the height, or in its slope. */
function cubic(k: number, u: number, slope: boolean): number {
  const y = (i: number) => (i === k ? 1 : 0)
  const last = KNOTS.length - 1
  const m = (i: number) => {
    const [a, b] = [Math.max(0, i - 1), Math.min(last, i + 1)]
    return (y(b) - y(a)) / (KNOTS[b]! - KNOTS[a]!)
  }
  let i = 0
  while (i < last - 1 && u > KNOTS[i + 1]!) i++
  const step = KNOTS[i + 1]! - KNOTS[i]!
  const t = (u - KNOTS[i]!) / step
  const v = 1 - t
  if (slope) {
    const rise = (6 * t * v * (y(i + 1) - y(i))) / step
    return rise + v * (1 - 3 * t) * m(i) + t * (3 * t - 2) * m(i + 1)
  }
  return (
    (1 + 2 * t) * v * v * y(i) +
    t * v * v * step * m(i) +
    t * t * (3 - 2 * t) * y(i + 1) -
    t * t * v * step * m(i + 1)
  )
}

/** The outline as it is seen, px; a sample with `shows` 0 is hidden. */
export interface Seen {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly shows: Uint8Array
}
/** Room for an outline, before it is looked at. */
export const noneSeen = (): Seen => ({
  x: new Float64Array(SAMPLES),
  y: new Float64Array(SAMPLES),
  shows: new Uint8Array(SAMPLES),
})

/** Fills `seen` with the outline of a pot on a cut. */
export function see(pot: Float64Array, cut: Cut, seen: Seen): void {
  const up = pot[AT.up]!
  const h = pot[AT.height]!
  const [cy, sy] = [Math.cos(pot[AT.yaw]!), Math.sin(pot[AT.yaw]!)]
  const [cp, sp] = [Math.cos(pot[AT.pitch]!), Math.sin(pot[AT.pitch]!)]
  const [cr, sr] = [Math.cos(pot[AT.roll]!), Math.sin(pot[AT.roll]!)]
  const focal = (Math.exp(pot[AT.focal]!) * cut.longest) / 2
  const put = (i: number, px: number, py: number, pz: number, shows: boolean) => {
    const [dx, dz] = [px + 1, pz - up]
    const away = dx * cy + py * sy
    const right = dx * sy - py * cy
    const ahead = away * cp + dz * sp
    const over = -away * sp + dz * cp
    seen.x[i] = cut.middle.x + (focal * (right * cr - over * sr)) / ahead
    seen.y[i] = cut.middle.y - (focal * (right * sr + over * cr)) / ahead
    seen.shows[i] = shows ? 1 : 0
  }
  // Where the wall turns away: its normal stands across the line of sight.
  const turn = (r: number, slope: number, z: number) => -(r + slope * (up - z))
  const ends: [number, number] = [0, 0]
  for (let j = 0; j < SIDE; j++) {
    let r = 0
    let slope = 0
    for (let k = 0; k < KNOTS.length; k++) {
      r += RADIUS[j * KNOTS.length + k]! * pot[AT.radii + k]!
      slope += SLOPE[j * KNOTS.length + k]! * pot[AT.radii + k]!
    }
    const z = h * PART[j]!
    const raw = turn(r, slope / h, z)
    const cos = Math.max(-MOST_COS, Math.min(MOST_COS, raw))
    const sin = Math.sqrt(1 - cos * cos)
    put(FROM[0] + j, r * cos, -r * sin, z, raw === cos)
    put(FROM[2] + SIDE - 1 - j, r * cos, r * sin, z, raw === cos)
    if (j === 0) ends[0] = Math.acos(cos)
    if (j === SIDE - 1) ends[1] = Math.acos(cos)
  }
  const [rimR, footR] = [pot[AT.radii + KNOTS.length - 1]!, pot[AT.radii]!]
  const over = up > h
  const [rim, foot] = ends
  for (let j = 0; j < ARC; j++) {
    const u = j / (ARC - 1)
    // From the right, round the front to the left: angles from the far side, the right being negative.
    const low = -foot - (2 * Math.PI - 2 * foot) * u
    put(FROM[1] + j, footR * Math.cos(low), footR * Math.sin(low), 0, true)
    const back = rim - 2 * rim * u
    const near = rim + (2 * Math.PI - 2 * rim) * u
    const top = over ? back : near
    put(FROM[3] + j, rimR * Math.cos(top), rimR * Math.sin(top), h, true)
    put(FROM[4] + j, rimR * Math.cos(-near), rimR * Math.sin(-near), h, over)
  }
}
