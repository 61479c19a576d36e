/** Where the middle of something may lie: inside a rectangle and a disc, both about the chamber's middle. Lengths in mm. */
import type { Chamber, Clearances, Column, PostSpot, Shelf, Side } from './contract.ts'

export interface Region {
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
  /** Farthest from the middle; `Infinity` where nothing is round. */
  readonly r: number
}

/** A post is a disc of this radius: a square of 38 mm with its corners. Assumption. */
export const POST_RADIUS_MM = 27

/** A shelf in its column: what may stand on it where, and its posts. */
export interface Floor {
  /** For a foot, its edge clear of the shelf's, and the reach (the wider of belly and foot) over a cut; radii. */
  readonly onShelf: (footMm: number, reachMm: number) => Region
  /** For a reach, clear of the chamber's walls. */
  readonly inChamber: (reachMm: number) => Region
  /** Both. */
  readonly regionOf: (footMm: number, reachMm: number) => Region
  readonly posts: readonly PostSpot[]
}

const isRound = (shelf: Shelf): boolean => shelf.kind === 'round' || shelf.kind === 'halfRound'

/** Face of a shelf, mm2. */
export function shelfAreaMm2(shelf: Shelf): number {
  const whole = isRound(shelf) ? (Math.PI * shelf.widthMm ** 2) / 4 : shelf.widthMm * shelf.depthMm
  return shelf.kind === 'halfRound' || shelf.kind === 'halfBox' ? whole / 2 : whole
}

/** Three posts: at 120 degrees, the corners of the front and the middle of the back, or both ends of the cut and the rim. */
function postsOf(shelf: Shelf, side: number): PostSpot[] {
  const [x, y] = [shelf.widthMm / 2 - POST_RADIUS_MM, shelf.depthMm / 2 - POST_RADIUS_MM]
  if (side !== 0) {
    const end = isRound(shelf) ? Math.sqrt(Math.max(0, x * x - POST_RADIUS_MM ** 2)) : y
    return [
      { xMm: side * POST_RADIUS_MM, yMm: end },
      { xMm: side * x, yMm: 0 },
      { xMm: side * POST_RADIUS_MM, yMm: -end },
    ]
  }
  if (!isRound(shelf))
    return [
      { xMm: -x, yMm: y },
      { xMm: 0, yMm: -y },
      { xMm: x, yMm: y },
    ]
  return [60, 180, 300].map((deg) => {
    const a = (deg * Math.PI) / 180
    return { xMm: -x * Math.sin(a), yMm: x * Math.cos(a) }
  })
}

const ANYWHERE = { minX: -Infinity, maxX: Infinity, minY: -Infinity, maxY: Infinity, r: Infinity }

/** Where both regions are. */
const both = (a: Region, b: Region): Region => ({
  minX: Math.max(a.minX, b.minX),
  maxX: Math.min(a.maxX, b.maxX),
  minY: Math.max(a.minY, b.minY),
  maxY: Math.min(a.maxY, b.maxY),
  r: Math.min(a.r, b.r),
})

/** The shelf as it lies in a column of the chamber. */
export function floorOf(chamber: Chamber, shelf: Shelf, column: Column, clear: Clearances): Floor {
  const side = column === 'whole' ? 0 : column === 'left' ? -1 : 1
  const [halfX, halfY] = [shelf.widthMm / 2, shelf.depthMm / 2]
  const round = isRound(shelf)
  const onShelf = (footMm: number, reachMm: number): Region => {
    const foot = footMm + clear.edgeMm
    // The belly looks over the cut no further than its half of the gap between two columns.
    const cut = Math.max(foot, reachMm + clear.gapMm / 2)
    const [x, y] = round ? [Infinity, Infinity] : [halfX - foot, halfY - foot]
    return {
      minX: side > 0 ? cut : -x,
      maxX: side < 0 ? -cut : x,
      minY: -y,
      maxY: y,
      r: round ? halfX - foot : Infinity,
    }
  }
  const inChamber = (reachMm: number): Region => {
    if (chamber.kind === 'round')
      return { ...ANYWHERE, r: chamber.diameterMm / 2 - clear.elementMm - reachMm }
    const from = (wall: Side) => (chamber.elements.includes(wall) ? clear.elementMm : clear.gapMm) + reachMm
    return {
      minX: -chamber.widthMm / 2 + from('left'),
      maxX: chamber.widthMm / 2 - from('right'),
      minY: -chamber.depthMm / 2 + from('back'),
      maxY: chamber.depthMm / 2 - from('front'),
      r: Infinity,
    }
  }
  return {
    onShelf,
    inChamber,
    regionOf: (footMm, reachMm) => both(onShelf(footMm, reachMm), inChamber(reachMm)),
    posts: postsOf(shelf, side),
  }
}

/** The middle of a region: where something too large for two touches stands. */
export function middleOf(region: Region): { readonly x: number; readonly y: number } {
  const { minX, maxX, minY, maxY, r } = region
  return {
    x: (Math.max(minX, -r) + Math.min(maxX, r)) / 2,
    y: (Math.max(minY, -r) + Math.min(maxY, r)) / 2,
  }
}

/** How far a point lies outside, mm; 0 inside. `Infinity` where the region is empty. */
export function outsideMm(region: Region, x: number, y: number): number {
  if (region.r < 0 || region.minX > region.maxX || region.minY > region.maxY) return Infinity
  return Math.max(
    0,
    region.minX - x,
    x - region.maxX,
    region.minY - y,
    y - region.maxY,
    Math.hypot(x, y) - region.r,
  )
}
