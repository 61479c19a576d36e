/** Where the middle of something may lie: inside a rectangle and a disc, both about the chamber's middle. Lengths in mm. */
import type { Chamber, Clearances, Column, PostSpot, Shelf } from './contract.ts'

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
  /** For a foot and a reach (the wider of belly and foot), radii. */
  readonly regionOf: (footMm: number, reachMm: number) => Region
  readonly areaMm2: number
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

/** The shelf as it lies in a column of the chamber. */
export function floorOf(chamber: Chamber, shelf: Shelf, column: Column, clear: Clearances): Floor {
  const side = column === 'whole' ? 0 : column === 'left' ? -1 : 1
  const [halfX, halfY] = [shelf.widthMm / 2, shelf.depthMm / 2]
  const round = isRound(shelf)
  const fromWall = (wall: 'front' | 'left' | 'back' | 'right') =>
    chamber.kind === 'box' && chamber.elements.includes(wall) ? clear.elementMm : clear.gapMm
  return {
    regionOf(footMm, reachMm) {
      const foot = footMm + clear.edgeMm
      // The belly looks over the cut no further than its half of the gap between two columns.
      const cut = Math.max(foot, reachMm + clear.gapMm / 2)
      const sides =
        chamber.kind === 'box'
          ? {
              minX: -chamber.widthMm / 2 + fromWall('left') + reachMm,
              maxX: chamber.widthMm / 2 - fromWall('right') - reachMm,
              minY: -chamber.depthMm / 2 + fromWall('back') + reachMm,
              maxY: chamber.depthMm / 2 - fromWall('front') - reachMm,
            }
          : { minX: -Infinity, maxX: Infinity, minY: -Infinity, maxY: Infinity }
      const x = round ? Infinity : halfX - foot
      const y = round ? Infinity : halfY - foot
      const across = chamber.kind === 'round' ? chamber.diameterMm / 2 - clear.elementMm - reachMm : Infinity
      return {
        minX: Math.max(sides.minX, side > 0 ? cut : -x),
        maxX: Math.min(sides.maxX, side < 0 ? -cut : x),
        minY: Math.max(sides.minY, -y),
        maxY: Math.min(sides.maxY, y),
        r: Math.min(across, round ? halfX - foot : Infinity),
      }
    },
    areaMm2: shelfAreaMm2(shelf),
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
