/**
 * The nouns of a kiln load. Lengths in mm. Seen from above with the front mark at the bottom of the drawing: x to the right,
 * y down the page, towards the front, both from the chamber's middle; so a drawing takes them as they are. Angles in degrees
 * clockwise from the front mark, 0 to 360: 90 is on the left, 180 at the back. Heights from the chamber's floor.
 */

import type { Kiln } from './nouns.ts'

export * from './nouns.ts'

/** How likely the glaze reaches the shelf, as the bench tells it; unknown: nobody tried that stack. */
export type Risk = 'clear' | 'near' | 'over' | 'unknown'

/** A pot as it goes into the kiln: two discs about one axis. */
export interface PotToLoad {
  readonly id: string
  /** Half of its widest: rim, belly or lid. */
  readonly bellyRadiusMm: number
  readonly footRadiusMm: number
  /** With its lid on; without a slab. */
  readonly heightMm: number
  readonly risk: Risk
  /** It goes on a catch slab, which adds 10 mm of height and widens its foot (`slabRadiusMm`). */
  readonly onSlab: boolean
  /** Glaze that may come down to the shelf, mL; widens the slab. Omitted: the usual slab. */
  readonly marginShelfMl?: number
  /** What keeps it from being proposed today: its foot was not checked, or it will be wet at lighting. */
  readonly notYet?: 'foot' | 'wet'
}

/** What rides along: a flow tile upright on its own dish, a cone set. A disc too; a cone set stands in sight of a spy hole. */
export interface Special {
  readonly id: string
  readonly kind: 'tile' | 'cones'
  readonly radiusMm: number
  readonly heightMm: number
}

/** Whole shelves make one column; half shelves two, each with levels of its own. */
export type Column = 'whole' | 'left' | 'right'

/** Where something was put by hand: proposals leave it there. `storey` counts from 1, from below, in its own column. */
export interface Pinned {
  readonly id: string
  readonly column: Column
  readonly storey: number
  readonly xMm: number
  readonly yMm: number
}

/** A pot's or special's own spot on a level. */
export interface Spot {
  readonly id: string
  readonly xMm: number
  readonly yMm: number
  /** The shelf place it was told with: it keeps it. Omitted, it gets the next free one. */
  readonly place?: string
}

/** A level that stands in the kiln as it is. From below without a hole; `number` is what its places were told with. */
export interface LoadedLevel {
  readonly column: Column
  readonly storey: number
  readonly number: number
  readonly shelfId: string
  /** Lengths of one post on this level, from below (two: on end); empty: nothing stands on it. */
  readonly postMm: readonly number[]
  readonly items: readonly Spot[]
}

/** What a load is proposed from. Ids are of pots and specials alike, each once. */
export interface LoadInput {
  /** Seeds the search: the same load has the same answer. */
  readonly loadId: string
  readonly kiln: Kiln
  /** All pots of the load, those on loaded levels included. */
  readonly pots: readonly PotToLoad[]
  readonly specials: readonly Special[]
  readonly pinned: readonly Pinned[]
  readonly loaded: readonly LoadedLevel[]
}

/** Something in its place. */
export interface PlacedItem {
  readonly id: string
  readonly kind: 'pot' | 'tile' | 'cones'
  readonly xMm: number
  readonly yMm: number
  readonly bellyRadiusMm: number
  /** What lies on the shelf: the foot, or the slab under it. */
  readonly footRadiusMm: number
  /** With lid and slab. */
  readonly heightMm: number
  readonly onSlab: boolean
  readonly pinned: boolean
  /** Shelf place, as `2.4`; null of a cone set. */
  readonly place: string | null
  /** A cone set stands on a stub so high for the spy hole to see it; omitted, on the shelf. */
  readonly raisedMm?: number
}

/** A post's axis on a level; every post of a level is of the same pieces. */
export interface PostSpot {
  readonly xMm: number
  readonly yMm: number
}

export interface LoadLevel {
  /** The first figure of its places: from below, the left column before the right where they are equally high. */
  readonly number: number
  readonly column: Column
  readonly storey: number
  readonly shelfId: string
  /** The shelf's upper face above the chamber's floor. */
  readonly upMm: number
  /** From there to the next shelf's underside, or to the lid less its clearance. */
  readonly freeMm: number
  /** Lengths of one post, from below: one, or two on end; empty on a column's top level. */
  readonly postMm: readonly number[]
  readonly posts: readonly PostSpot[]
  /** By place, cone sets last. */
  readonly items: readonly PlacedItem[]
  readonly loaded: boolean
}

/** Why something is in no place. */
export type LeftOutWhy =
  | 'tooTall' // taller than the chamber leaves over one shelf
  | 'tooWide' // wider than every shelf, or than the chamber leaves
  | 'noShelf' // no shelf is left for another level
  | 'noPosts' // no three posts reach over it
  | 'noRoom' // the kiln is full
  | 'noSlab' // it may run, and has no catch slab
  | 'foot' // its foot was not checked
  | 'wet' // wet at lighting

/** What would get it in. */
export type WouldFit =
  /** Three more posts so long. */
  | { readonly kind: 'posts'; readonly lengthMm: number }
  /** One more shelf. */
  | { readonly kind: 'shelf' }
  /** The tallest stays out: `gains` pots more go in than without. */
  | { readonly kind: 'aside'; readonly potId: string; readonly gains: number }
  /** A firing to come has room for it and all others told the same number: 1 is the one right after this. */
  | { readonly kind: 'nextFiring'; readonly firing: number }
  /** A catch slab under it. */
  | { readonly kind: 'slab' }

export interface LeftOut {
  readonly id: string
  readonly why: LeftOutWhy
  /** The most that there is room for, where one measure decides: height of tooTall, foot or belly across of tooWide; mm. */
  readonly mostMm: number | null
  /** What would make it fit, the least trouble first; empty where nothing here would. */
  readonly would: readonly WouldFit[]
}

/** What no arrangement of these pots in this kiln can beat. */
export interface LoadBound {
  /** Levels, counted over all columns as whole ones. */
  readonly levels: number
  /** Of its shelves, posts and heights: from the floor to the top of the uppermost pot. */
  readonly heightMm: number
}

export interface LoadPlan {
  /** By number. */
  readonly levels: readonly LoadLevel[]
  readonly leftOut: readonly LeftOut[]
  /** Cone sets that no spy hole sees. */
  readonly unseen: readonly string[]
  /** From the floor to the top of the uppermost item. */
  readonly heightMm: number
  /** Of all that may be proposed. */
  readonly bound: LoadBound
  /** Passes of the search it took. */
  readonly passes: number
}
