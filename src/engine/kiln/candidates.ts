/**
 * The tightest free spot for one more disc: of all places where it touches two of wall, post and disc, the one whose third
 * nearest neighbour is nearest. Radii are grown by half of the gap, so discs that touch have the gap between them.
 */
import { middleOf, outsideMm, type Region } from './region.ts'

export interface Disc {
  x: number
  y: number
  /** With half of the gap. */
  readonly r: number
}

/** Two places may lie so much inside each other by rounding, mm. */
const ROUNDING_MM = 1e-6

/** Crossings of two circles, added to `to` as x, y. */
function crossings(ax: number, ay: number, a: number, bx: number, by: number, b: number, to: number[]): void {
  const [dx, dy] = [bx - ax, by - ay]
  const square = dx * dx + dy * dy
  if (square < 1e-12) return
  const along = (square + a * a - b * b) / (2 * square)
  const high = (a * a) / square - along * along
  if (high < 0) return
  const up = Math.sqrt(high)
  const [x, y] = [ax + along * dx, ay + along * dy]
  to.push(x - up * dy, y + up * dx, x + up * dy, y - up * dx)
}

/** Crossings of a circle with a region's four sides. */
function sideCrossings(region: Region, cx: number, cy: number, r: number, to: number[]): void {
  for (const x of [region.minX, region.maxX]) {
    const high = r * r - (x - cx) ** 2
    if (high >= 0) to.push(x, cy + Math.sqrt(high), x, cy - Math.sqrt(high))
  }
  for (const y of [region.minY, region.maxY]) {
    const high = r * r - (y - cy) ** 2
    if (high >= 0) to.push(cx + Math.sqrt(high), y, cx - Math.sqrt(high), y)
  }
}

/** Spots where a disc touches two things, as x, y, x, y ... */
function spotsOf(discs: readonly Disc[], region: Region, r: number): number[] {
  const spots: number[] = []
  const mid = middleOf(region)
  for (const x of [region.minX, region.maxX]) for (const y of [region.minY, region.maxY]) spots.push(x, y)
  if (Number.isFinite(region.r)) {
    sideCrossings(region, 0, 0, region.r, spots)
    for (let k = 0; k < 8; k++) {
      const turn = (k * Math.PI) / 4
      spots.push(-region.r * Math.sin(turn), -region.r * Math.cos(turn))
    }
  }
  spots.push(mid.x, mid.y)
  for (let i = 0; i < discs.length; i++) {
    const a = discs[i]!
    const ra = a.r + r
    sideCrossings(region, a.x, a.y, ra, spots)
    if (Number.isFinite(region.r)) crossings(a.x, a.y, ra, 0, 0, region.r, spots)
    for (let j = i + 1; j < discs.length; j++) {
      const b = discs[j]!
      const rb = b.r + r
      if (Math.abs(b.x - a.x) < ra + rb && Math.abs(b.y - a.y) < ra + rb)
        crossings(a.x, a.y, ra, b.x, b.y, rb, spots)
    }
  }
  return spots
}

/** Third smallest gap about a spot, mm; -1 where it isn't free. */
function thirdGapMm(discs: readonly Disc[], region: Region, r: number, x: number, y: number): number {
  if (!(outsideMm(region, x, y) <= ROUNDING_MM)) return -1
  let [first, second, third] = [Infinity, Infinity, Infinity]
  const take = (gap: number) => {
    if (gap < first) [first, second, third] = [gap, first, second]
    else if (gap < second) [second, third] = [gap, second]
    else if (gap < third) third = gap
  }
  for (const disc of discs) {
    const [dx, dy] = [disc.x - x, disc.y - y]
    const reach = disc.r + r
    const square = dx * dx + dy * dy
    if (square < (reach - ROUNDING_MM) ** 2) return -1
    take(Math.sqrt(square) - reach)
  }
  take(x - region.minX)
  take(region.maxX - x)
  take(y - region.minY)
  take(region.maxY - y)
  take(region.r - Math.hypot(x, y))
  return third
}

/** The tightest free spot for a disc of radius `r`, or null. */
export function tightestSpot(
  discs: readonly Disc[],
  region: Region,
  r: number,
): { readonly x: number; readonly y: number } | null {
  const spots = spotsOf(discs, region, r)
  let best: { x: number; y: number } | null = null
  let least = Infinity
  for (let i = 0; i < spots.length; i += 2) {
    const gap = thirdGapMm(discs, region, r, spots[i]!, spots[i + 1]!)
    if (gap < 0 || (best && gap >= least - 1e-9)) continue
    best = { x: spots[i]!, y: spots[i + 1]! }
    least = gap
  }
  return best
}
