/** One pass: from the order of pots to levels from the floor up. Lengths in mm. */
import type { Column, Kiln, LeftOutWhy, Spot } from './contract.ts'
import { fill } from './fill.ts'
import type { Item } from './items.ts'
import type { Built, Hints, Problem, Way } from './problem.ts'
import { middleOf, outsideMm } from './region.ts'
import { seatRiders } from './riders.ts'
import { isHalf, postFor, type Stock, shelvesFor, stockOf, sumMm, takePosts, takeShelf } from './stock.ts'
import { halfGapMm, openTray, place, probeAt, regionFor, type Tray } from './tray.ts'

/** A column while it grows. */
interface Pile {
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
interface Site {
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

const isClear = (item: Item): boolean => item.risk === 0

/** An item has room on a tray that is bare. */
function fitsBare(tray: Tray, item: Item): boolean {
  const region = regionFor(tray, item)
  const { x, y } = middleOf(region)
  return outsideMm(region, x, y) <= 1e-6
}

const tallestMm = (tray: Tray): number =>
  tray.stood.reduce((most, { item }) => Math.max(most, item.heightMm), 0)

/** Puts what was fixed by hand where it was put, whatever else is there. */
function putFixed(site: Site, tray: Tray, spots: readonly Spot[], pinned: boolean): void {
  for (const { id, xMm: x, yMm: y } of spots) {
    const item = site.problem.items.get(id)
    if (item) tray.stood.push({ item, disc: { x, y, r: item.reachMm + site.halfGap }, pinned, fixed: true })
  }
}

/** The column as far as it stands; half shelves begin where the whole ones end. */
function pileOf({ problem, piles }: Site, column: Column): Pile {
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
function standLoaded(site: Site): void {
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

/** A bare tray on the largest shelf that takes the opener; null where none does. */
function openFor(
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

const pinsOf = ({ problem }: Site, column: Column, storey: number) =>
  problem.pinned.filter((one) => one.column === column && one.storey === storey)

const lastPin = ({ problem }: Site, column: Column): number =>
  Math.max(0, ...problem.pinned.filter((one) => one.column === column).map(({ storey }) => storey))

/** Fills what will be the uppermost level of a column before all others: the tallest that isn't risky, and on. */
function reserveTop(site: Site, pile: Pile): void {
  const hint = site.hints.tops.get(pile.column)
  const pins = hint ? pinsOf(site, pile.column, hint.storey) : []
  const opener = site.rest.find((item) => isClear(item) && !pile.noOpener.has(item)) ?? null
  if (!opener && pins.length === 0) return
  const tray = openFor(site, pile, opener, [], hint?.upMm)
  if (!tray) {
    if (opener) pile.noOpener.set(opener, 'noShelf')
    return
  }
  tray.limitMm = site.ceilingMm - (pile.underMm + tray.shelf.thickMm)
  putFixed(site, tray, pins, true)
  if (hint) seatRiders(tray, { ...tray, storey: hint.storey }, site.riders, site.hints, site.problem.kiln)
  fill(tray, site.rest, site.halfGap, isClear, site.way.roll)
  if (tray.stood.length === 0) return
  takeShelf(site.stock, tray.shelf)
  pile.top = tray
}

/** Opens the next level of a column and fills it; false where nothing goes on. */
function grow(site: Site, pile: Pile): boolean {
  const { problem, stock, way, rest } = site
  const { kiln, items } = problem
  const pins = pinsOf(site, pile.column, pile.storey)
  const pinsMm = Math.max(0, ...pins.map(({ id }) => items.get(id)?.heightMm ?? 0))
  const aboveMm = pile.top ? pile.top.shelf.thickMm + tallestMm(pile.top) : 0
  const mustGo = pile.storey <= lastPin(site, pile.column)
  const openers: (Item | null)[] = rest.filter((item) => !pile.noOpener.has(item))
  for (const opener of mustGo ? [...openers, null] : openers) {
    const tallMm = Math.max(opener?.heightMm ?? 0, pinsMm)
    const post = postFor(stock, tallMm + kiln.clearances.headspaceMm, way.onEnd)
    if (!post && pile.top) {
      if (opener) pile.noOpener.set(opener, 'noPosts')
      continue
    }
    const posts = post ?? []
    const tray = openFor(site, pile, opener, posts)
    if (!tray) {
      if (opener) pile.noOpener.set(opener, 'noShelf')
      continue
    }
    const endMm = tray.upMm + (pile.top ? sumMm(posts) + aboveMm : tallMm)
    if (endMm > site.ceilingMm + 1e-9) {
      if (opener) pile.noOpener.set(opener, 'noRoom')
      continue
    }
    tray.limitMm = post ? sumMm(posts) - kiln.clearances.headspaceMm : site.ceilingMm - tray.upMm
    // Posts that leave no room for another shelf carry none.
    if (!pile.top && tray.upMm + tray.limitMm > site.ceilingMm) tray.limitMm = site.ceilingMm - tray.upMm
    takeShelf(stock, tray.shelf)
    takePosts(stock, posts)
    putFixed(site, tray, pins, true)
    seatRiders(tray, tray, site.riders, site.hints, kiln)
    fill(tray, rest, site.halfGap, () => true, way.roll)
    site.trays.push(tray)
    pile.storey++
    pile.underMm = tray.upMm + sumMm(posts)
    pile.closed = !post
    return true
  }
  return false
}

/** Seats the top of a column; where none was filled, the last level carries nothing and needs no posts. */
function finish(site: Site, pile: Pile, grown: number): void {
  const { kiln } = site.problem
  const { top } = pile
  if (top) {
    const upMm = pile.underMm + top.shelf.thickMm
    Object.assign(top, {
      storey: pile.storey,
      upMm,
      limitMm: site.ceilingMm - upMm,
      probe: probeAt(kiln, upMm),
    })
    site.trays.push(top)
    // What meets the thermocouple at this height after all goes elsewhere.
    const { probe } = top
    if (probe)
      for (const one of top.stood.filter(({ pinned }) => !pinned)) {
        const nearMm = Math.hypot(one.disc.x - probe.disc.x, one.disc.y - probe.disc.y)
        if (one.item.heightMm <= probe.overMm || nearMm >= one.disc.r + probe.disc.r - 1e-6) continue
        top.stood.splice(top.stood.indexOf(one), 1)
        ;(one.item.kind === 'pot' ? site.rest : site.riders).push(one.item)
      }
    return
  }
  const last = site.trays.slice(grown).findLast((tray) => tray.column === pile.column)
  if (!last) return
  Object.assign(last, { postMm: [], posts: [], limitMm: site.ceilingMm - last.upMm })
  fill(last, site.rest, site.halfGap, () => true, site.way.roll)
}

/** Builds columns side by side, the lower first, up to a storey. */
function raise(site: Site, columns: readonly Column[], until: number): void {
  const piles = columns.map((column) => pileOf(site, column)).filter(({ closed }) => !closed)
  const grown = site.trays.length
  if (site.way.topFirst && until === Infinity) for (const pile of piles) reserveTop(site, pile)
  for (;;) {
    const wants = ({ column, storey, top }: Pile) =>
      site.rest.length > 0 || storey + (top ? 1 : 0) <= lastPin(site, column)
    const pile = piles
      .filter((one) => !one.closed && one.storey <= until && wants(one))
      .sort((a, b) => a.underMm - b.underMm)[0]
    if (!pile) break
    if (!grow(site, pile)) pile.closed = true
  }
  if (until === Infinity) for (const pile of piles) finish(site, pile, grown)
}

const shelfOf = (kiln: Kiln, half: boolean): boolean =>
  kiln.shelves.some((shelf) => isHalf(shelf) === half && shelf.count > 0)

/** Levels from below, and what is in none. */
export function build(problem: Problem, way: Way, hints: Hints): Built {
  const { kiln, items, pinned, loaded } = problem
  const fixed = new Set([...pinned, ...loaded.flatMap((level) => level.items)].map(({ id }) => id))
  const site: Site = {
    problem,
    way,
    hints,
    stock: stockOf(kiln),
    piles: new Map(),
    trays: [],
    rest: [...way.order],
    riders: [...items.values()]
      .filter(({ id, kind }) => kind !== 'pot' && !fixed.has(id))
      .sort((a, b) => Number(a.kind !== 'cones') - Number(b.kind !== 'cones') || (a.id < b.id ? -1 : 1)),
    halfGap: halfGapMm(kiln),
    ceilingMm: kiln.chamber.heightMm - kiln.clearances.lidMm,
  }
  standLoaded(site)
  const wholes = Math.max(
    way.wholes,
    ...loaded.filter(({ column }) => column === 'whole').map(({ storey }) => storey),
  )
  if (shelfOf(kiln, false) && wholes > 0 && !loaded.some(({ column }) => column !== 'whole'))
    raise(site, ['whole'], shelfOf(kiln, true) ? wholes : Infinity)
  if (shelfOf(kiln, true) && wholes < Infinity) raise(site, ['left', 'right'], Infinity)
  sweep(site)
  const stood = new Set(site.trays.flatMap((tray) => tray.stood.map(({ item }) => item)))
  const whyOf = (item: Item): LeftOutWhy => {
    const whys = [...site.piles.values()].map((pile) => pile.noOpener.get(item))
    return whys.find((why) => why === 'noPosts') ?? whys.find((why) => why !== undefined) ?? 'noRoom'
  }
  const missed = [...items.values()]
    .filter((item) => !stood.has(item))
    .map((item) => ({ item, why: whyOf(item) }))
  return { trays: site.trays, missed }
}

/** A last try for what is left, wherever it goes; nothing risky above others. */
function sweep({ rest, riders, trays, halfGap }: Site): void {
  const below = (tray: Tray) => tray.postMm.length > 0 || tray.storey === 1
  for (const item of [...riders.splice(0), ...rest.splice(0)])
    trays.some((tray) => (isClear(item) || below(tray)) && place(tray, item, halfGap))
}
