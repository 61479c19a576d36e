/** Pots and what rides along, as the search sees them. Lengths in mm. */
import { inRange } from '../check.ts'
import type { PotToLoad, Special } from './contract.ts'

/** Height of a catch slab, and how far it looks out from under a foot all round. Assumptions. */
export const SLAB_HIGH_MM = 10
const SLAB_LEDGE_MM = 15
/** Melt on a slab's ledge stands so deep before it goes over. Assumption. */
const LEDGE_DEEP_MM = 2

/**
 * Radius of the catch slab under a foot, mm: 15 mm wider than the foot, or as wide as it takes for its ledge to hold
 * `shelfMl` mL of melt 2 mm deep. RangeError unless the foot is 1 to 1000 mm and the melt 0 to 1000 mL.
 */
export function slabRadiusMm(footRadiusMm: number, shelfMl = 0): number {
  const foot = inRange('footRadiusMm', footRadiusMm, 1, 1000)
  const holds = Math.sqrt(
    foot * foot + (inRange('marginShelfMl', shelfMl, 0, 1000) * 1000) / (Math.PI * LEDGE_DEEP_MM),
  )
  return Math.max(foot + SLAB_LEDGE_MM, holds)
}

export interface Item {
  readonly id: string
  readonly kind: 'pot' | 'tile' | 'cones'
  readonly bellyMm: number
  /** What lies on the shelf. */
  readonly footMm: number
  /** The wider of both. */
  readonly reachMm: number
  readonly heightMm: number
  readonly onSlab: boolean
  /** 0 clear, then near, unknown, over: the lower in the kiln. */
  readonly risk: number
}

const RISK = { clear: 0, near: 1, unknown: 2, over: 3 }

/** A pot with its slab. */
export function itemOf(pot: PotToLoad): Item {
  const footMm = pot.onSlab ? slabRadiusMm(pot.footRadiusMm, pot.marginShelfMl) : pot.footRadiusMm
  return {
    id: pot.id,
    kind: 'pot',
    bellyMm: pot.bellyRadiusMm,
    footMm,
    reachMm: Math.max(pot.bellyRadiusMm, footMm),
    heightMm: pot.heightMm + (pot.onSlab ? SLAB_HIGH_MM : 0),
    onSlab: pot.onSlab,
    risk: RISK[pot.risk],
  }
}

/** A flow tile or a cone set: as wide as its dish. */
export function itemOfSpecial({ id, kind, radiusMm, heightMm }: Special): Item {
  return {
    id,
    kind,
    bellyMm: radiusMm,
    footMm: radiusMm,
    reachMm: radiusMm,
    heightMm,
    onSlab: false,
    risk: 0,
  }
}

/** Risky first, then the taller, then the wider; alike ones by name, so that the order given decides nothing. */
export const byOrder = (a: Item, b: Item): number =>
  b.risk - a.risk ||
  b.heightMm - a.heightMm ||
  b.reachMm - a.reachMm ||
  b.footMm - a.footMm ||
  (a.id < b.id ? -1 : a.id > b.id ? 1 : 0)
