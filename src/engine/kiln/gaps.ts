/** Pots moved by hand: gaps, what is in the way, two that change places. Lengths in mm. */
import type { Kiln, LoadLevel, Pinned, PlacedItem } from './contract.ts'
import { floorOf, outsideMm, POST_RADIUS_MM } from './region.ts'
import { probeAt } from './tray.ts'

type Standing = Pick<PlacedItem, 'id' | 'xMm' | 'yMm' | 'bellyRadiusMm' | 'footRadiusMm' | 'heightMm'>

const reachOf = (one: Pick<Standing, 'bellyRadiusMm' | 'footRadiusMm'>): number =>
  Math.max(one.bellyRadiusMm, one.footRadiusMm)

/** From one item to another, mm; negative where they overlap. */
export const gapMm = (
  a: Pick<Standing, 'xMm' | 'yMm' | 'bellyRadiusMm' | 'footRadiusMm'>,
  b: Pick<Standing, 'xMm' | 'yMm' | 'bellyRadiusMm' | 'footRadiusMm'>,
): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) - reachOf(a) - reachOf(b)

/** The item of a level nearest to one of its own, and how near, mm; null where it stands alone. */
export function nearestGap(
  level: Pick<LoadLevel, 'items'>,
  item: Standing,
): { readonly id: string; readonly mm: number } | null {
  let nearest: { readonly id: string; readonly mm: number } | null = null
  for (const other of level.items) {
    if (other.id === item.id) continue
    const mm = gapMm(item, other)
    if (!nearest || mm < nearest.mm) nearest = { id: other.id, mm }
  }
  return nearest
}

/** Why an item stands badly, `mm` by how much: too near to another, over an edge or against a wall, at a post, too tall ... */
export type Trouble =
  | { readonly kind: 'near'; readonly id: string; readonly mm: number }
  | { readonly kind: 'edge' | 'wall' | 'post' | 'thermocouple' | 'tall'; readonly mm: number }

/** So little is none, mm. */
const NONE_MM = 0.05

/**
 * What is against an item at its place on a level, the gravest first; empty where a proposal could have put it there. `near`
 * tells the gap that is left, all others what is lacking. Nothing is refused for it.
 */
export function troublesAt(kiln: Kiln, level: Omit<LoadLevel, 'number'>, item: Standing): readonly Trouble[] {
  const { chamber, clearances, shelves } = kiln
  const shelf = shelves.find(({ id }) => id === level.shelfId)
  if (!shelf) return []
  const reach = reachOf(item)
  const troubles: Trouble[] = []
  const add = (kind: Exclude<Trouble['kind'], 'near'>, mm: number) => {
    if (mm > NONE_MM) troubles.push({ kind, mm })
  }
  const floor = floorOf(chamber, shelf, level.column, clearances)
  // A foot without a belly is held by the shelf's edge; with the belly, what is lacking beyond that is the wall's.
  const edgeMm = outsideMm(floor.onShelf(item.footRadiusMm, reach), item.xMm, item.yMm)
  const wallMm = outsideMm(floor.inChamber(reach), item.xMm, item.yMm)
  const headMm = level.postMm.length > 0 ? clearances.headspaceMm : 0
  add('tall', item.heightMm + headMm - level.freeMm)
  add('edge', edgeMm)
  add('wall', wallMm)
  for (const post of level.posts) {
    const mm = Math.hypot(post.xMm - item.xMm, post.yMm - item.yMm) - POST_RADIUS_MM - reach
    add('post', clearances.gapMm - mm)
  }
  const probe = probeAt(kiln, level.upMm)
  if (probe && item.heightMm > probe.overMm)
    add(
      'thermocouple',
      clearances.thermocoupleMm - Math.hypot(probe.disc.x - item.xMm, probe.disc.y - item.yMm) + reach,
    )
  for (const other of level.items) {
    const mm = other.id === item.id ? Infinity : gapMm(item, other)
    if (mm < clearances.gapMm - NONE_MM) troubles.push({ kind: 'near', id: other.id, mm })
  }
  return troubles
}

/** Two items that change places, as pins; empty where one of them is on none of the levels, or both are one. */
export function swapped(levels: readonly LoadLevel[], a: string, b: string): readonly Pinned[] {
  const find = (id: string) => {
    for (const level of levels) {
      const item = level.items.find((one) => one.id === id)
      if (item) return { column: level.column, storey: level.storey, xMm: item.xMm, yMm: item.yMm }
    }
    return null
  }
  const [one, other] = [find(a), find(b)]
  return one && other && a !== b
    ? [
        { id: a, ...other },
        { id: b, ...one },
      ]
    : []
}
