/** What a kiln is made of. Lengths in mm, heights from the chamber's floor, angles in degrees: see `contract.ts`. */

/** The inside of the kiln. A box's `elements` are the walls that glow; at the others pots keep the usual gap. */
export type Chamber =
  | { readonly kind: 'round'; readonly diameterMm: number; readonly heightMm: number }
  | {
      readonly kind: 'box'
      readonly widthMm: number
      readonly depthMm: number
      readonly heightMm: number
      readonly elements: readonly Side[]
    }

/** A wall of a box. */
export type Side = 'front' | 'left' | 'back' | 'right'

/** A kind of shelf in stock. Half shelves are cut from front to back and lie left or right of the cut: `count` is of halves. */
export interface Shelf {
  readonly id: string
  readonly kind: 'round' | 'halfRound' | 'box' | 'halfBox'
  /** Across, left to right: a round's diameter, of a half shelf that of the whole it was cut from. */
  readonly widthMm: number
  /** Front to back; of a round the diameter again. */
  readonly depthMm: number
  readonly thickMm: number
  readonly count: number
}

/** Posts of one length; a shelf stands on three. */
export interface Posts {
  readonly lengthMm: number
  readonly count: number
}

/** A probe through the wall: how high, where, and how far its tip stands in. */
export interface Thermocouple {
  readonly upMm: number
  readonly angleDeg: number
  readonly reachMm: number
}

export interface SpyHole {
  readonly upMm: number
  readonly angleDeg: number
}

/** What is kept clear. */
export interface Clearances {
  /** From elements. Common practice, no source: 25. */
  readonly elementMm: number
  /** From the lid, or a box's roof. Common practice, no source: 25. */
  readonly lidMm: number
  /** Between pots, and from a pot to a post. From memory: 6 (a quarter of an inch). */
  readonly gapMm: number
  /** Over a pot to the shelf above. From memory: 12.7 (half an inch). */
  readonly headspaceMm: number
  /** About the thermocouple's tip, all round. From memory: 51 (two inches). */
  readonly thermocoupleMm: number
  /** From a foot or slab to the shelf's edge. Assumption: 5. */
  readonly edgeMm: number
  /** The first shelf's underside above the floor, on stilts of its own. Common practice, no source: 25. */
  readonly firstShelfMm: number
}

/** The usual clearances. */
export const CLEARANCES: Clearances = {
  elementMm: 25,
  lidMm: 25,
  gapMm: 6,
  headspaceMm: 12.7,
  thermocoupleMm: 51,
  edgeMm: 5,
  firstShelfMm: 25,
}

export interface Kiln {
  readonly id: string
  readonly chamber: Chamber
  readonly shelves: readonly Shelf[]
  readonly posts: readonly Posts[]
  readonly thermocouple: Thermocouple | null
  readonly spyHoles: readonly SpyHole[]
  readonly clearances: Clearances
}

/** Until kiln and pots are warm once it is on, min: nothing steams before. Common practice, no source. */
export const WARMING_MIN = 60
