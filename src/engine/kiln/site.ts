/** Where a pass builds: its columns, and what is left of pots and stock. Lengths in mm. */
import type { Column, LeftOutWhy, Pinned, Spot } from './contract.ts'
import type { Item } from './items.ts'
import type { Hints, Problem, Way } from './problem.ts'
import { middleOf, outsideMm } from './region.ts'
import { type Stock, shelvesFor, sumMm, takePosts, takeShelf } from './stock.ts'
import { openTray, regionFor, type Tray } from './tray.ts'

/** A column while it grows. */
export interface Pile {
  readonly column: Column
  /** Underside of its next shelf. */
  underMm: number
  /** Of its next level. */
  storey: number
  /** Its uppermost level, filled before the others. */
  top: Tray | null
  /** Nothing more goes on. */
  closed: boolean
  /** What can open no level here, and why. */
  readonly noOpener: Map<Item, LeftOutWhy>
}

/** Everything that a pass changes. */
export interface Site {
  readonly problem: Problem
  readonly way: Way
  readonly hints: Hints
  readonly stock: Stock
  readonly piles: Map<Column, Pile>
  readonly trays: Tray[]
  /** Pots in no place yet. */
  readonly rest: Item[]
  /** Cone sets and tiles in no place yet. */
  readonly riders: Item[]
  readonly halfGap: number
  readonly ceilingMm: number
}

/** Puts what was fixed by hand where it was put, whatever else is there. */
export function putFixed(site: Site, tray: Tray, spots: readonly Spot[], pinned: boolean): void {
  for (const { id, xMm: x, yMm: y } of spots) {
    const item = site.problem.items.get(id)
    if (item) tray.stood.push({ item, disc: { x, y, r: item.reachMm + site.halfGap }, pinned, fixed: true })
  }
}

/** The column as far as it stands; half shelves begin where the whole ones end. */
export function pileOf({ problem, piles }: Site, column: Column): Pile {
  const known = piles.get(column)
  if (known) return known
  const whole = piles.get('whole')
  const pile: Pile = {
    column,
    underMm: whole?.underMm ?? problem.kiln.clearances.firstShelfMm,
    storey: 1,
    top: null,
    closed: false,
    noOpener: new Map(),
  }
  piles.set(column, pile)
  return pile
}

/** Loaded levels as trays; what they used is taken from the stock. */
export function standLoaded(site: Site): void {
  const { kiln, loaded } = site.problem
  const order = [...loaded].sort(
    (a, b) => Number(a.column !== 'whole') - Number(b.column !== 'whole') || a.storey - b.storey,
  )
  for (const { column, storey, shelfId, postMm, items } of order) {
    const shelf = kiln.shelves.find(({ id }) => id === shelfId)
    if (!shelf) continue
    const pile = pileOf(site, column)
    takeShelf(site.stock, shelf)
    takePosts(site.stock, postMm)
    const upMm = pile.underMm + shelf.thickMm
    // Nothing is added to a level that is loaded.
    const tray = openTray(kiln, shelf, { column, storey, upMm, limitMm: 0 }, postMm)
    putFixed(site, tray, items, false)
    pile.storey = storey + 1
    pile.underMm = upMm + sumMm(postMm)
    pile.closed = postMm.length === 0
    site.trays.push(tray)
  }
}

/** An item has room on a tray that is bare. */
function fitsBare(tray: Tray, item: Item): boolean {
  const region = regionFor(tray, item)
  const { x, y } = middleOf(region)
  return outsideMm(region, x, y) <= 1e-6
}

/** A bare tray on the largest shelf that takes the opener; null where none does. */
export function openFor(
  { problem, stock }: Site,
  pile: Pile,
  opener: Item | null,
  postMm: readonly number[],
  hintMm?: number,
): Tray | null {
  for (const shelf of shelvesFor(problem.kiln, stock, pile.column)) {
    const upMm = hintMm ?? pile.underMm + shelf.thickMm
    const at = { column: pile.column, storey: pile.storey, upMm, limitMm: 0 }
    const tray = openTray(problem.kiln, shelf, at, postMm)
    if (!opener || fitsBare(tray, opener)) return tray
  }
  return null
}

/** What was put by hand on a level and doesn't stand yet. */
export const pinsOf = (
  { problem, piles, trays }: Site,
  column: Column,
  storey: number,
): readonly Pinned[] => {
  const top = piles.get(column)?.top
  const stands = (id: string) =>
    [...trays, ...(top ? [top] : [])].some((tray) => tray.stood.some(({ item }) => item.id === id))
  return problem.pinned.filter((one) => one.column === column && one.storey === storey && !stands(one.id))
}

/** The highest level of a column that something was put on by hand; 0 without. */
export const lastPin = ({ problem }: Site, column: Column): number =>
  Math.max(0, ...problem.pinned.filter((one) => one.column === column).map(({ storey }) => storey))
