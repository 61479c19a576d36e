/** One pass: from the order of pots to levels from the floor up. Lengths in mm. */
import type { Column, Kiln, LeftOutWhy, LoadedLevel, Pinned, Shelf } from './contract.ts'
import type { Item } from './items.ts'
import { outsideMm } from './region.ts'
import { isHalf, postFor, type Stock, shelvesFor, stockOf, sumMm, takePosts, takeShelf } from './stock.ts'
import { halfGapMm, openTray, place, probeAt, regionFor, type Tray } from './tray.ts'

/** What a pass starts from. */
export interface Problem {
  readonly kiln: Kiln
  /** By id: everything there is. */
  readonly items: ReadonlyMap<string, Item>
  readonly pinned: readonly Pinned[]
  readonly loaded: readonly LoadedLevel[]
}

/** What one pass does otherwise than another. */
export interface Way {
  /** To be placed, in the order they are tried. */
  readonly order: readonly Item[]
  /** Whole shelves up to this storey, then half ones. */
  readonly wholes: number
  /** The tallest that isn't risky goes to the top before anything else is placed. */
  readonly topFirst: boolean
  /** Two posts on end. */
  readonly onEnd: boolean
  /** The top levels as a pass before this one left them. */
  readonly tops: ReadonlyMap<Column, { readonly storey: number; readonly upMm: number }>
}

export interface Missed {
  readonly item: Item
  readonly why: LeftOutWhy
}

export interface Built {
  readonly trays: readonly Tray[]
  readonly missed: readonly Missed[]
}

/** A column while it grows. */
interface Pile {
  readonly column: Column
  /** Underside of its next shelf. */
  underMm: number
  storey: number
  top: Tray | null
  closed: boolean
}

/** Puts what was fixed by hand where it was put, whatever else is there. */
function putFixed(
  tray: Tray,
  spots: readonly { readonly id: string; readonly xMm: number; readonly yMm: number }[],
  { items, kiln }: Problem,
  pinned: boolean,
): void {
  for (const { id, xMm: x, yMm: y } of spots) {
    const item = items.get(id)
    if (item) tray.stood.push({ item, disc: { x, y, r: item.reachMm + halfGapMm(kiln) }, pinned })
  }
}

/** Loaded levels as trays; what they used is taken from the stock. */
function standLoaded(problem: Problem, stock: Stock, piles: Map<Column, Pile>): Tray[] {
  const { kiln } = problem
  const order = [...problem.loaded].sort(
    (a, b) => Number(a.column !== 'whole') - Number(b.column !== 'whole') || a.storey - b.storey,
  )
  return order.flatMap((level) => {
    const shelf = kiln.shelves.find(({ id }) => id === level.shelfId)
    const pile = pileOf(kiln, piles, level.column)
    if (!shelf) return []
    takeShelf(stock, shelf)
    takePosts(stock, level.postMm)
    const upMm = pile.underMm + shelf.thickMm
    const tray = openTray(
      kiln,
      shelf,
      { column: level.column, storey: level.storey, upMm, limitMm: 0 },
      level.postMm,
    )
    putFixed(tray, level.items, problem, false)
    pile.storey = level.storey + 1
    pile.underMm = upMm + sumMm(level.postMm)
    pile.closed = level.postMm.length === 0
    return [tray]
  })
}

/** The column as far as it stands; half shelves begin where the whole ones end. */
function pileOf(kiln: Kiln, piles: Map<Column, Pile>, column: Column): Pile {
  const known = piles.get(column)
  if (known) return known
  const whole = piles.get('whole')
  const pile: Pile = {
    column,
    underMm: whole ? whole.underMm : kiln.clearances.firstShelfMm,
    storey: 1,
    top: null,
    closed: whole?.closed ?? false,
  }
  piles.set(column, pile)
  return pile
}

/** Fills a tray from the order; what is placed is taken out of `rest`. */
function fill(tray: Tray, rest: Item[], halfGap: number, allowed: (item: Item) => boolean): void {
  // What is no smaller than something that found no spot finds none either.
  const failed: Item[] = []
  for (let i = 0; i < rest.length; i++) {
    const item = rest[i]!
    if (!allowed(item) || item.heightMm > tray.limitMm) continue
    if (failed.some((one) => item.reachMm >= one.reachMm && item.footMm >= one.footMm)) continue
    if (place(tray, item, halfGap)) rest.splice(i--, 1)
    else failed.push(item)
  }
}

/** The uppermost of a column carries nothing: it needs no posts. */
function strip(trays: readonly Tray[], column: Column, ceilingMm: number): void {
  const last = trays.filter((tray) => tray.column === column && tray.limitMm > 0).pop()
  if (last) Object.assign(last, { postMm: [], posts: [], limitMm: ceilingMm - last.upMm })
}

const isClear = (item: Item): boolean => item.risk === 0
const fits = (tray: Tray, item: Item): boolean => {
  const region = regionFor(tray, item)
  const x = (Math.max(region.minX, -region.r) + Math.min(region.maxX, region.r)) / 2
  const y = (Math.max(region.minY, -region.r) + Math.min(region.maxY, region.r)) / 2
  return outsideMm(region, x, y) <= 1e-6
}

/** Levels from below. */
export function build(problem: Problem, way: Way): Built {
  const { kiln, pinned } = problem
  const halfGap = halfGapMm(kiln)
  const stock = stockOf(kiln)
  const piles = new Map<Column, Pile>()
  const trays = standLoaded(problem, stock, piles)
  const rest = [...way.order]
  const missed: Missed[] = []
  const ceilingMm = kiln.chamber.heightMm - kiln.clearances.lidMm

  const pinsOf = (column: Column, storey: number) =>
    pinned.filter((one) => one.column === column && one.storey === storey)
  const lastPin = (column: Column) =>
    pinned.reduce((last, one) => (one.column === column ? Math.max(last, one.storey) : last), 0)
  const tallest = (tray: Tray) => tray.stood.reduce((most, { item }) => Math.max(most, item.heightMm), 0)

  /** A shelf that takes the opener, and the tray on it. */
  const open = (
    pile: Pile,
    opener: Item | null,
    limitMm: number,
    postMm: readonly number[],
    upHint?: number,
  ) => {
    for (const shelf of shelvesFor(kiln, stock, pile.column)) {
      const upMm = upHint ?? pile.underMm + shelf.thickMm
      const tray = openTray(kiln, shelf, { column: pile.column, storey: pile.storey, upMm, limitMm }, postMm)
      if (!opener || fits(tray, opener)) return tray
    }
    return null
  }

  const reserveTop = (pile: Pile) => {
    const hint = way.tops.get(pile.column)
    const opener = rest.find(isClear) ?? null
    const shelf = shelvesFor(kiln, stock, pile.column)[0]
    if (!opener || !shelf) return
    const limit = ceilingMm - pile.underMm - shelf.thickMm
    const tray = open(pile, opener, limit, [], hint?.upMm)
    if (!tray || opener.heightMm > limit) return
    if (hint) putFixed(tray, pinsOf(pile.column, hint.storey), problem, true)
    fill(tray, rest, halfGap, isClear)
    if (tray.stood.length === 0) return
    takeShelf(stock, tray.shelf)
    pile.top = tray
  }

  /** Opens one more level; false where nothing goes on. */
  const grow = (pile: Pile): boolean => {
    const pins = pinsOf(pile.column, pile.storey)
    const pinsMm = pins.reduce((most, { id }) => Math.max(most, problem.items.get(id)?.heightMm ?? 0), 0)
    const above = pile.top ? pile.top.shelf.thickMm + tallest(pile.top) : 0
    for (let i = 0; i < rest.length || (i === 0 && pinsMm > 0); i++) {
      const opener = rest[i] ?? null
      const needMm = Math.max(opener?.heightMm ?? 0, pinsMm) + kiln.clearances.headspaceMm
      const post = postFor(stock, needMm, way.onEnd)
      const bare = post === null && !pile.top ? [] : post
      if (!bare) {
        miss(i--, 'noPosts')
        continue
      }
      const isTop = bare.length === 0
      const tray = open(pile, opener, 0, bare)
      if (!tray) {
        if (shelvesFor(kiln, stock, pile.column).length === 0) return false
        miss(i--, 'tooWide')
        continue
      }
      const ends = tray.upMm + (isTop ? needMm - kiln.clearances.headspaceMm : sumMm(bare) + above)
      if (ends > ceilingMm + 1e-9) {
        miss(i--, 'noRoom')
        continue
      }
      tray.limitMm = isTop ? ceilingMm - tray.upMm : sumMm(bare) - kiln.clearances.headspaceMm
      putFixed(tray, pins, problem, true)
      takeShelf(stock, tray.shelf)
      takePosts(stock, bare)
      fill(tray, rest, halfGap, () => true)
      trays.push(tray)
      pile.storey++
      pile.underMm = tray.upMm + sumMm(bare)
      pile.closed = isTop
      return true
    }
    return false
  }

  const miss = (at: number, why: LeftOutWhy) => {
    const [item] = rest.splice(at, 1)
    if (item) missed.push({ item, why })
  }

  const run = (columns: readonly Column[], until: number) => {
    const open = columns.map((column) => pileOf(kiln, piles, column))
    if (way.topFirst && until === Infinity) for (const pile of open) if (!pile.closed) reserveTop(pile)
    for (;;) {
      const pile = open
        .filter((one) => !one.closed && one.storey <= until)
        .sort((a, b) => a.underMm - b.underMm)[0]
      if (!pile || (rest.length === 0 && pile.storey > lastPin(pile.column))) break
      if (!grow(pile)) pile.closed = true
    }
    for (const pile of open) {
      if (until === Infinity && !pile.top) strip(trays, pile.column, ceilingMm)
      if (!pile.top) continue
      const top = pile.top
      Object.assign(top, { storey: pile.storey, upMm: pile.underMm + top.shelf.thickMm })
      top.limitMm = ceilingMm - top.upMm
      top.probe = probeAt(kiln, top.upMm)
      trays.push(top)
    }
  }

  const hasWhole = kiln.shelves.some((shelf: Shelf) => !isHalf(shelf))
  if (hasWhole && way.wholes > 0) run(['whole'], way.wholes)
  if (way.wholes < Infinity) run(['left', 'right'], Infinity)
  for (const item of [...rest.splice(0), ...missed.splice(0).map(({ item }) => item)])
    if (!trays.some((tray) => place(tray, item, halfGap))) missed.push({ item, why: 'noRoom' })
  return { trays, missed }
}
