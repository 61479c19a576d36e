/** Edges on a picture: how much the colour changes across a line, and the likeliest way of an edge beside it. */
import type { Cut } from './contract.ts'

/** A change of colour (out of 255) that counts for half: below it is noise and grain, far above it is no surer. */
const HALF = 8
/** Px on each side that are compared. */
const REACH = [0.5, 1.5] as const

/** A colour between pixels, into `out`; beyond the picture its border goes on. */
function colourAt({ width, height, data }: Cut, x: number, y: number, out: Float64Array, sign: number): void {
  const px = Math.max(0, Math.min(width - 1.001, x - 0.5))
  const py = Math.max(0, Math.min(height - 1.001, y - 0.5))
  const i = Math.floor(px)
  const j = Math.floor(py)
  const [u, v] = [px - i, py - j]
  const at = (j * width + i) * 4
  const down = at + width * 4
  for (let k = 0; k < 3; k++) {
    const above = data[at + k]! * (1 - u) + data[at + 4 + k]! * u
    const below = data[down + k]! * (1 - u) + data[down + 4 + k]! * u
    out[k]! += sign * (above * (1 - v) + below * v)
  }
}

const change = new Float64Array(3)

/** How surely there is an edge at (x, y) across the direction (nx, ny), 0 to 1. */
export function edgeAt(cut: Cut, x: number, y: number, nx: number, ny: number): number {
  change.fill(0)
  for (const far of REACH) {
    colourAt(cut, x + far * nx, y + far * ny, change, 1)
    colourAt(cut, x - far * nx, y - far * ny, change, -1)
  }
  const size = Math.hypot(change[0]!, change[1]!, change[2]!) / REACH.length
  return size / (size + HALF)
}

/** What a step aside costs, per square of its slope; and a way far from the line, at the window's end. */
const BEND = 0.6
const FAR = 0.12

/**
 * The offsets, one a row, of the surest edge that runs beside a line (dynamic programming). `sure` has `many` rows of
 * `wide` offsets; rows lie `apart` offsets from each other.
 */
export function likeliestWay(sure: Float64Array, many: number, wide: number, apart: number): Int32Array {
  const middle = (wide - 1) / 2
  const best = new Float64Array(many * wide)
  const came = new Int32Array(many * wide)
  const bend = BEND / (apart * apart)
  const most = Math.ceil(1.2 * apart)
  for (let i = 0; i < many; i++)
    for (let d = 0; d < wide; d++) {
      const own = sure[i * wide + d]! - FAR * ((d - middle) / (middle || 1)) ** 2
      let before = i === 0 ? 0 : -Infinity
      if (i > 0)
        for (let e = Math.max(0, d - most); e <= Math.min(wide - 1, d + most); e++) {
          const value = best[(i - 1) * wide + e]! - bend * (d - e) ** 2
          if (value > before) {
            before = value
            came[i * wide + d] = e
          }
        }
      best[i * wide + d] = own + before
    }
  const way = new Int32Array(many)
  let d = 0
  for (let e = 1; e < wide; e++) if (best[(many - 1) * wide + e]! > best[(many - 1) * wide + d]!) d = e
  for (let i = many - 1; i >= 0; i--) {
    way[i] = d
    d = came[i * wide + d]!
  }
  return way
}
