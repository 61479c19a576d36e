/** Cone sets in sight of a spy hole, and flow tiles beside them. Lengths in mm. */
import type { Column, Kiln, SpyHole } from './contract.ts'
import type { Item } from './items.ts'
import type { Hints, Where } from './problem.ts'
import { outsideMm, type Region } from './region.ts'
import { discsFor, halfGapMm, regionFor, type Tray } from './tray.ts'

/** A hole sees a cone set whose tips are no more than this below it. Assumption: the eye is at some way from the hole. */
const SEEN_OVER_MM = 50
/** Steps round the rim in search of a free spot. */
const STEP_DEG = 3

/** The hole that looks in on a level, or undefined: a low cone set is raised to it. */
export const holeAt = (
  kiln: Kiln,
  { upMm, column }: Pick<Tray, 'upMm' | 'column'>,
  freeMm: number,
): SpyHole | undefined =>
  kiln.spyHoles.find((hole) => hole.upMm >= upMm && hole.upMm <= upMm + freeMm && facesIn(hole, column))

/** Whether a hole looks in from a column's side. */
const facesIn = ({ angleDeg }: SpyHole, column: Column): boolean =>
  column === 'whole' || angleDeg % 180 === 0 || (column === 'left') === angleDeg < 180

/**
 * How long the posts of a level at `upMm` have to be for a hole to see this cone set there, where the posts it would have,
 * `sumMm` long, and a shelf of `thickMm` on them end below, in front of or closely over the lowest hole that is left; null
 * where that hole is one of another level.
 */
export function sightMm(
  kiln: Kiln,
  cones: Item,
  column: Column,
  upMm: number,
  sumMm: number,
  thickMm: number,
): number | null {
  const holes = kiln.spyHoles.filter((hole) => hole.upMm >= upMm && facesIn(hole, column))
  const lowest = Math.min(...holes.map((hole) => hole.upMm))
  if (lowest > upMm + sumMm + thickMm) return null
  return Math.max(lowest - upMm, cones.heightMm + kiln.clearances.headspaceMm)
}

/** How high a cone set is raised, on a stub, so that a hole sees it, mm. */
export const raisedMm = (hole: SpyHole, upMm: number, heightMm: number): number =>
  Math.max(0, hole.upMm - upMm - heightMm - SEEN_OVER_MM)

/** Where a ray from the middle leaves a region, drawn in to it where it misses. */
function rimAt(region: Region, deg: number): { readonly x: number; readonly y: number } {
  const turn = (deg * Math.PI) / 180
  const [ux, uy] = [-Math.sin(turn), Math.cos(turn)]
  const along = (limit: number, u: number) => (u === 0 ? Infinity : limit / u)
  const far = Math.min(
    region.r,
    ux > 0 ? along(region.maxX, ux) : along(region.minX, ux),
    uy > 0 ? along(region.maxY, uy) : along(region.minY, uy),
  )
  const within = (value: number, least: number, most: number) => Math.min(Math.max(value, least), most)
  const [x, y] = far > 0 && Number.isFinite(far) ? [ux * far, uy * far] : [ux * region.r, uy * region.r]
  return { x: within(x, region.minX, region.maxX), y: within(y, region.minY, region.maxY) }
}

const isFree = (tray: Tray, item: Item, r: number, region: Region, x: number, y: number): boolean =>
  outsideMm(region, x, y) <= 1e-6 &&
  discsFor(tray, item).every((disc) => Math.hypot(disc.x - x, disc.y - y) >= disc.r + r - 1e-6)

/** Stands an item at the rim as near to a direction as there is room; false where there's none. */
export function standAtRim(tray: Tray, item: Item, deg: number, kiln: Kiln): boolean {
  const region = regionFor(tray, item)
  const r = item.reachMm + halfGapMm(kiln)
  if (item.heightMm > tray.limitMm) return false
  for (let off = 0; off <= 180; off += STEP_DEG)
    for (const at of off === 0 ? [deg] : [deg + off, deg - off]) {
      const { x, y } = rimAt(region, at)
      if (!isFree(tray, item, r, region, x, y)) continue
      tray.stood.push({ item, disc: { x, y, r }, pinned: false, fixed: true })
      return true
    }
  return false
}

/** Stands a tile as near beside another item as there is room; false where there's none. */
export function standBeside(
  tray: Tray,
  item: Item,
  other: { x: number; y: number; r: number },
  kiln: Kiln,
): boolean {
  const region = regionFor(tray, item)
  const r = item.reachMm + halfGapMm(kiln)
  if (item.heightMm > tray.limitMm) return false
  // First along the rim on either side of it, then all round, and farther off.
  const out = (Math.atan2(-other.x, other.y) * 180) / Math.PI
  for (let far = other.r + r; far < 3 * (other.r + r); far += r / 2)
    for (let off = 90; off <= 270; off += STEP_DEG)
      for (const deg of [out + off, out - off]) {
        const turn = (deg * Math.PI) / 180
        const [x, y] = [other.x - far * Math.sin(turn), other.y + far * Math.cos(turn)]
        if (!isFree(tray, item, r, region, x, y)) continue
        tray.stood.push({ item, disc: { x, y, r }, pinned: false, fixed: true })
        return true
      }
  return false
}

/** Seats on a new level the cone set that a hole shows there, or what was sent there; tiles go beside cones. */
export function seatRiders(tray: Tray, at: Where, riders: Item[], hints: Hints, kiln: Kiln): void {
  const sent = (item: Item) => {
    const where = hints.riders.get(item.id)
    return where?.column === at.column && where.storey === at.storey
  }
  const take = (item: Item, stands: boolean) => {
    if (stands) riders.splice(riders.indexOf(item), 1)
    return stands
  }
  const hole = holeAt(kiln, tray, tray.limitMm)
  for (const item of riders.filter(({ kind }) => kind === 'cones')) {
    if (!sent(item) && (!hole || hints.riders.has(item.id))) continue
    if (take(item, standAtRim(tray, item, hole?.angleDeg ?? 0, kiln))) break
  }
  const cones = tray.stood.find(({ item }) => item.kind === 'cones')
  for (const item of riders.filter(({ kind }) => kind === 'tile'))
    if (cones) take(item, standBeside(tray, item, cones.disc, kiln))
    else if (sent(item)) take(item, standAtRim(tray, item, 0, kiln))
}
