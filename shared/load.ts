/**
 * Nouns of the kiln and its loads that are stored in the journal. Lengths mm. Seen from above with the front mark at the
 * bottom: x to the right, y towards the front, both from the chamber's middle; angles in degrees clockwise from the mark.
 */

export type KilnWall = 'front' | 'left' | 'back' | 'right'
export const KILN_WALLS: readonly KilnWall[] = ['front', 'left', 'back', 'right']

/** The inside of a kiln. `elements` are a box's walls that glow; round a round one they go all the way. */
export type ChamberFacts =
  | { readonly kind: 'round'; readonly diameterMm: number; readonly heightMm: number }
  | {
      readonly kind: 'box'
      readonly widthMm: number
      readonly depthMm: number
      readonly heightMm: number
      readonly elements: readonly KilnWall[]
    }

export type ShelfKind = 'round' | 'halfRound' | 'box' | 'halfBox'
export const SHELF_KINDS: readonly ShelfKind[] = ['round', 'halfRound', 'box', 'halfBox']

/** Shelves of one kind in stock. Measures of a half shelf are those of the whole it was cut from; `count` is of halves. */
export interface ShelfFacts {
  readonly id: string
  readonly kind: ShelfKind
  readonly widthMm: number
  readonly depthMm: number
  readonly thickMm: number
  readonly count: number
}

export interface PostFacts {
  readonly lengthMm: number
  readonly count: number
}

/** A kiln and its furniture. */
export interface KilnFacts {
  readonly kilnId: string
  readonly chamber: ChamberFacts
  readonly shelves: readonly ShelfFacts[]
  readonly posts: readonly PostFacts[]
  /** A probe through the wall; left out where nobody said. */
  readonly couple?: { readonly upMm: number; readonly angleDeg: number; readonly reachMm: number }
  readonly spyHoles: readonly { readonly upMm: number; readonly angleDeg: number }[]
}

/** Half shelves stand in two columns, each with levels of its own. */
export type Column = 'whole' | 'left' | 'right'
export const COLUMNS: readonly Column[] = ['whole', 'left', 'right']

/** What stands on a shelf. A lid rides on its jar and is no thing of its own. */
export type LoadedKind = 'pot' | 'tile' | 'cones'
export const LOADED_KINDS: readonly LoadedKind[] = ['pot', 'tile', 'cones']

/** How a cone stands in its place. */
export type ConeStand = 'standing' | 'bending' | 'down' | 'flat'
export const CONE_STANDS: readonly ConeStand[] = ['standing', 'bending', 'down', 'flat']
