/** One level while it is filled. Lengths in mm. */
import { type Disc, tightestSpot } from './candidates.ts'
import type { Column, Kiln, Shelf } from './contract.ts'
import type { Item } from './items.ts'
import { type Floor, floorOf, POST_RADIUS_MM, type Region } from './region.ts'
import { sumMm } from './stock.ts'

/** An item where it stands. */
export interface Stood {
  readonly item: Item
  readonly disc: Disc
  /** Put there by hand. */
  readonly pinned: boolean
  /** Stays where it is while others are pressed in. */
  readonly fixed: boolean
}

/** The thermocouple's tip on a level: a disc for all that reach up to it. */
export interface Probe {
  readonly disc: Disc
  /** Only what is taller meets it. */
  readonly overMm: number
}

export interface Tray {
  readonly column: Column
  readonly storey: number
  readonly shelf: Shelf
  readonly floor: Floor
  upMm: number
  /** The tallest that may stand here. */
  limitMm: number
  postMm: readonly number[]
  probe: Probe | null
  /** Posts that stand on it. */
  posts: Disc[]
  stood: Stood[]
}

/** Half of the gap: by so much every disc is grown. */
export const halfGapMm = (kiln: Kiln): number => kiln.clearances.gapMm / 2

/** A bare level, its posts up unless it carries nothing. */
export function openTray(
  kiln: Kiln,
  shelf: Shelf,
  at: { readonly column: Column; readonly storey: number; readonly upMm: number; readonly limitMm: number },
  postMm: readonly number[],
): Tray {
  const floor = floorOf(kiln.chamber, shelf, at.column, kiln.clearances)
  const grown = POST_RADIUS_MM + halfGapMm(kiln)
  const posts = postMm.length === 0 ? [] : floor.posts.map(({ xMm: x, yMm: y }) => ({ x, y, r: grown }))
  return { ...at, shelf, floor, postMm, probe: probeAt(kiln, at.upMm), posts, stood: [] }
}

/** From a level's face to the next shelf's underside, or to the lid less its clearance, mm. */
export const freeMm = (kiln: Kiln, { postMm, upMm }: Tray): number =>
  postMm.length > 0 ? sumMm(postMm) : kiln.chamber.heightMm - kiln.clearances.lidMm - upMm

/** The thermocouple as a level at `upMm` meets it; null where it stays below. */
export function probeAt(kiln: Kiln, upMm: number): Probe | null {
  const { thermocouple: tip, chamber, clearances } = kiln
  if (!tip || upMm >= tip.upMm + clearances.thermocoupleMm) return null
  const turn = (tip.angleDeg * Math.PI) / 180
  const [ux, uy] = [-Math.sin(turn), Math.cos(turn)]
  const wall =
    chamber.kind === 'round'
      ? chamber.diameterMm / 2
      : Math.min(
          chamber.widthMm / 2 / Math.max(Math.abs(ux), 1e-9),
          chamber.depthMm / 2 / Math.max(Math.abs(uy), 1e-9),
        )
  const far = wall - tip.reachMm
  const r = clearances.thermocoupleMm - halfGapMm(kiln)
  return {
    disc: { x: ux * far, y: uy * far, r },
    overMm: tip.upMm - clearances.thermocoupleMm - upMm,
  }
}

/** All that an item has to keep clear of on a tray. */
export function discsFor(tray: Tray, item: Item): Disc[] {
  const discs = [...tray.posts, ...tray.stood.map(({ disc }) => disc)]
  if (tray.probe && item.heightMm > tray.probe.overMm) discs.push(tray.probe.disc)
  return discs
}

/** Where the middle of an item may lie on a tray. */
export const regionFor = (tray: Tray, item: Item): Region => tray.floor.regionOf(item.footMm, item.reachMm)

/** Puts an item where it fits tightest; false where it doesn't. */
export function place(tray: Tray, item: Item, halfGap: number): boolean {
  if (item.heightMm > tray.limitMm) return false
  const r = item.reachMm + halfGap
  const spot = tightestSpot(discsFor(tray, item), regionFor(tray, item), r)
  if (!spot) return false
  tray.stood.push({ item, disc: { ...spot, r }, pinned: false, fixed: false })
  return true
}
