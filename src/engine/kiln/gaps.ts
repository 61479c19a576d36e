/** Pots moved by hand: gaps, and what is in the way. Lengths in mm. */
import type { Kiln, LoadLevel, PlacedItem } from './contract.ts'
import { floorOf, outsideMm } from './region.ts'
import { probeAt } from './tray.ts'

type Disc = Pick<PlacedItem, 'xMm' | 'yMm' | 'bellyRadiusMm' | 'footRadiusMm'>

const reachOf = (one: Disc): number => Math.max(one.bellyRadiusMm, one.footRadiusMm)

/** From one item to another, mm; negative where they overlap. */
export const gapMm = (a: Disc, b: Disc): number =>
  Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) - reachOf(a) - reachOf(b)

/** Why an item stands badly, and what is lacking, mm: over the shelf's edge, at a wall, at the thermocouple, too tall. */
export interface Trouble {
  readonly kind: 'tall' | 'edge' | 'wall' | 'thermocouple'
  readonly mm: number
}

/** So little is none, mm. */
const NONE_MM = 0.05

/**
 * What but a neighbour or a post is against an item at its place on a level, the gravest first; empty where a proposal could
 * have put it there. Nothing is refused for it. `heightMm` is with lid and slab.
 */
export function troublesAt(
  kiln: Kiln,
  level: Pick<LoadLevel, 'shelfId' | 'column' | 'upMm' | 'freeMm' | 'postMm'>,
  item: Disc & Pick<PlacedItem, 'heightMm'>,
): readonly Trouble[] {
  const { chamber, clearances, shelves } = kiln
  const shelf = shelves.find(({ id }) => id === level.shelfId)
  if (!shelf) return []
  const reach = reachOf(item)
  const floor = floorOf(chamber, shelf, level.column, clearances)
  const probe = probeAt(kiln, level.upMm)
  const headMm = level.postMm.length > 0 ? clearances.headspaceMm : 0
  const fromTip =
    probe && item.heightMm > probe.overMm
      ? Math.hypot(probe.disc.x - item.xMm, probe.disc.y - item.yMm) - reach
      : Infinity
  const lacking: readonly Trouble[] = [
    { kind: 'tall', mm: item.heightMm + headMm - level.freeMm },
    // A foot without a belly is held by the shelf's edge; with the belly, what is lacking beyond that is the wall's.
    { kind: 'edge', mm: outsideMm(floor.onShelf(item.footRadiusMm, reach), item.xMm, item.yMm) },
    { kind: 'wall', mm: outsideMm(floor.inChamber(reach), item.xMm, item.yMm) },
    { kind: 'thermocouple', mm: clearances.thermocoupleMm - fromTip },
  ]
  return lacking.filter(({ mm }) => mm > NONE_MM)
}
