/** What one pass is told and what it answers. Lengths in mm. */
import type { Column, Kiln, LeftOutWhy, LoadedLevel, Pinned } from './contract.ts'
import type { Item } from './items.ts'
import type { Tray } from './tray.ts'

/** What every pass starts from. */
export interface Problem {
  readonly kiln: Kiln
  /** By id: everything that is to be placed or stands. */
  readonly items: ReadonlyMap<string, Item>
  readonly pinned: readonly Pinned[]
  readonly loaded: readonly LoadedLevel[]
}

/** A level by its column and number from below. */
export interface Where {
  readonly column: Column
  readonly storey: number
}

/** What one pass does otherwise than another. */
export interface Way {
  /** Pots to be placed, in the order they are tried. */
  readonly order: readonly Item[]
  /** Whole shelves up to this storey, then half ones. */
  readonly wholes: number
  /** The tallest that isn't risky goes to the top before anything else is placed. */
  readonly topFirst: boolean
  /** Two posts on end. */
  readonly onEnd: boolean
  /** Posts are chosen so that a spy hole sees the cone set, whatever height it costs. */
  readonly sight: boolean
  /** Chance for pressing pots in; null: none is pressed in. */
  readonly roll: (() => number) | null
}

/** What a pass takes from the one before it: how high the top levels came, and where riders go that nothing sees. */
export interface Hints {
  readonly tops: ReadonlyMap<Column, { readonly storey: number; readonly upMm: number }>
  readonly riders: ReadonlyMap<string, Where>
}

export const NO_HINTS: Hints = { tops: new Map(), riders: new Map() }

export interface Missed {
  readonly item: Item
  readonly why: LeftOutWhy
}

export interface Built {
  /** Loaded ones too. */
  readonly trays: readonly Tray[]
  readonly missed: readonly Missed[]
}
