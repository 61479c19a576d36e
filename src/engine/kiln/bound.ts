/**
 * What no arrangement can beat: pots that share no shelf, the area they cover, the posts their heights ask for. Lengths in
 * mm; radii grown by half of the gap.
 */
import type { LoadBound, Shelf } from './contract.ts'
import type { Item } from './items.ts'
import type { Problem } from './problem.ts'
import { floorOf, type Region, shelfAreaMm2 } from './region.ts'
import { isHalf } from './stock.ts'

/**
 * The most equal discs of radius 1 in a convex region (H. Groemer, Monatsh. Math. 65 (1961) 74): not rounded down.
 * `area` and `girth` are the region's, in radii.
 */
export function mostEqualDiscs(area: number, girth: number): number {
  const root3 = Math.sqrt(3)
  return 1 + (area - girth * (1 - root3 / 2) - Math.PI * (root3 - 1)) / (2 * root3)
}

/**
 * The part of the plane that discs can cover whose radii differ by the factor `q`, 0 to 1, at most, as A. Florian has it
 * (Rend. Circ. Mat. Palermo 9 (1960) 300; from memory): 1 gives pi over the root of 12.
 */
export function densestPart(q: number): number {
  if (q <= 0) return 1
  const corner = 2 * (1 - q * q) * Math.asin(q / (1 + q))
  return (Math.PI * q * q + corner) / (2 * q * Math.sqrt(1 + 2 * q))
}

/** Farthest apart that the middles of two items can be on one shelf. */
function farthestMm(a: Region, b: Region): number {
  const apart = (min: number, max: number, min2: number, max2: number) => Math.max(max2 - min, max - min2)
  const box = Math.hypot(apart(a.minX, a.maxX, b.minX, b.maxX), apart(a.minY, a.maxY, b.minY, b.maxY))
  return Math.min(box, a.r + b.r)
}

/** Face that an item's disc may lie over, mm2, and its girth, mm. */
function faceOf(region: Region, r: number): { readonly area: number; readonly girth: number } {
  const disc = region.r + r
  const [wide, deep] = [region.maxX - region.minX + 2 * r, region.maxY - region.minY + 2 * r]
  const faces = [
    { area: Math.PI * disc * disc, girth: 2 * Math.PI * disc },
    { area: wide * deep, girth: 2 * (wide + deep) },
  ]
  return faces.reduce((least, one) => (one.area < least.area ? one : least))
}

/** A bound for items on levels of one kind of shelf, the largest of its kind; half ones in pairs. */
function levelsOn(
  problem: Problem,
  shelf: Shelf,
  items: readonly Item[],
): { readonly levels: number; readonly most: number } {
  const { chamber, clearances } = problem.kiln
  const floor = floorOf(chamber, shelf, isHalf(shelf) ? 'left' : 'whole', clearances)
  const share = isHalf(shelf) ? 2 : 1
  const discs = items
    .map((item) => ({
      region: floor.regionOf(item.footMm, item.reachMm),
      r: item.reachMm + clearances.gapMm / 2,
    }))
    .sort((a, b) => b.r - a.r)
  const alone: typeof discs = []
  for (const one of discs)
    if (alone.every((other) => farthestMm(one.region, other.region) < one.r + other.r - 0.1)) alone.push(one)
  // On a half shelf the rim's disc is that of the whole: twice as much as there is, so still no more than it takes.
  const face = Math.max(...discs.map(({ region, r }) => faceOf(region, r).area))
  const square = shelf.kind === 'box' || shelf.kind === 'halfBox'
  const part = square && chamber.kind === 'box' ? densestPart(discs.at(-1)!.r / discs[0]!.r) : 1
  const covered = discs.reduce((sum, { r }) => sum + Math.PI * r * r, 0)
  const alike = discs.every(({ r, region }) => r === discs[0]!.r && region.r === discs[0]!.region.r)
  const { area, girth } = faceOf(discs[0]!.region, discs[0]!.r)
  const { r } = discs[0]!
  const equal = alike ? Math.floor(mostEqualDiscs(area / (r * r), girth / r) + 1e-9) : Infinity
  // How many of the smallest one level can take.
  let [most, sum] = [0, 0]
  for (const disc of [...discs].reverse()) {
    sum += Math.PI * disc.r ** 2
    if (sum > part * face) break
    most++
  }
  most = Math.max(1, Math.min(most, equal))
  const levels = Math.max(
    alone.length,
    Math.ceil(covered / (part * face) - 1e-9),
    Math.ceil(items.length / most),
  )
  return { levels: levels / share, most }
}

/** The bound of a problem: of all its items that stand or may be placed, loaded ones too. */
export function boundOf(problem: Problem): LoadBound {
  const { kiln } = problem
  const items = [...problem.items.values()]
  if (items.length === 0) return { levels: 0, heightMm: 0 }
  const shelves = kiln.shelves.filter(({ count }) => count > 0)
  const each = [...new Set(shelves.map((shelf) => shelf.kind))].map((kind) => {
    const largest = shelves
      .filter((shelf) => shelf.kind === kind)
      .sort((a, b) => shelfAreaMm2(b) - shelfAreaMm2(a))[0]!
    return { ...levelsOn(problem, largest, items), share: isHalf(largest) ? 2 : 1 }
  })
  if (each.length === 0) return { levels: 0, heightMm: 0 }
  const best = each.reduce((least, one) => (one.levels < least.levels ? one : least))
  const most = Math.max(...each.map((one) => one.most))
  const share = Math.max(...each.map((one) => one.share))
  const thinMm = Math.min(...shelves.map(({ thickMm }) => thickMm))
  const heights = items.map(({ heightMm }) => heightMm).sort((a, b) => b - a)
  const single = kiln.posts.map(({ lengthMm }) => lengthMm)
  const lengths = [...single, ...single.flatMap((a) => single.map((b) => a + b))].sort((a, b) => a - b)
  const postMm = (heightMm: number) => {
    const need = heightMm + kiln.clearances.headspaceMm
    return lengths.find((length) => length >= need) ?? need
  }
  // The tallest of each further level is at least the next whose shelf those before it have filled.
  const tall = heights.filter((_, i) => i % most === 0)
  const onPosts = tall.reduce((sum, heightMm) => sum + postMm(heightMm) + thinMm, 0)
  const saved = Math.max(...tall.map((heightMm) => postMm(heightMm) - heightMm))
  const alone = kiln.clearances.firstShelfMm + thinMm + heights[0]!
  const stacked = kiln.clearances.firstShelfMm + (onPosts - share * saved) / share
  return { levels: best.levels, heightMm: Math.max(alone, stacked) }
}
