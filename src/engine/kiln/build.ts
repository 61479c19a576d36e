/** One pass: from the order of pots to levels from the floor up. Lengths in mm. */
import type { Column, Kiln, LeftOutWhy } from './contract.ts'
import { fill } from './fill.ts'
import type { Item } from './items.ts'
import type { Built, Hints, Problem, Way } from './problem.ts'
import { seatRiders, sightMm } from './riders.ts'
import { lastPin, openFor, type Pile, pileOf, pinsOf, putFixed, type Site, standLoaded } from './site.ts'
import { isHalf, postFor, shelvesFor, shelvesLeft, stockOf, sumMm, takePosts, takeShelf } from './stock.ts'
import { halfGapMm, place, probeAt, type Tray } from './tray.ts'

const isClear = (item: Item): boolean => item.risk === 0

const tallestMm = (tray: Tray): number =>
  tray.stood.reduce((most, { item }) => Math.max(most, item.heightMm), 0)

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

/** A tray for an opener on these posts (none: it carries nothing), or why there is none. */
function begun(
  site: Site,
  pile: Pile,
  opener: Item | null,
  tallMm: number,
  posts: readonly number[],
): Tray | LeftOutWhy {
  const { clearances } = site.problem.kiln
  const tray = openFor(site, pile, opener, posts)
  if (!tray) return 'noShelf'
  const aboveMm = pile.top ? pile.top.shelf.thickMm + tallestMm(pile.top) : 0
  const endMm = tray.upMm + (pile.top ? sumMm(posts) + aboveMm : tallMm)
  if (endMm > site.ceilingMm + 1e-9) return 'noRoom'
  const underLidMm = site.ceilingMm - tray.upMm
  tray.limitMm = posts.length > 0 ? Math.min(underLidMm, sumMm(posts) - clearances.headspaceMm) : underLidMm
  return tray
}

/** Posts over what is so tall; where sight counts, such that the cone set is seen if its level is this one. */
function postsFor(
  { problem, stock, way, riders }: Site,
  pile: Pile,
  tallMm: number,
): readonly number[] | null {
  const { kiln } = problem
  const needMm = tallMm + kiln.clearances.headspaceMm
  const usual = postFor(stock, needMm, way.onEnd)
  const cones = way.sight ? riders.find(({ kind }) => kind === 'cones') : undefined
  const [shelf] = shelvesFor(kiln, stock, pile.column)
  if (!usual || !cones || !shelf) return usual
  const upMm = pile.underMm + shelf.thickMm
  const seenMm = sightMm(kiln, cones, pile.column, upMm, sumMm(usual), shelf.thickMm)
  return seenMm === null ? usual : (postFor(stock, Math.max(needMm, seenMm), true) ?? usual)
}

/** Opens the next level of a column and fills it; false where nothing goes on. */
function grow(site: Site, pile: Pile): boolean {
  const { problem, stock, rest, way } = site
  const { kiln, items } = problem
  const pins = pinsOf(site, pile.column, pile.storey)
  const pinsMm = Math.max(0, ...pins.map(({ id }) => items.get(id)?.heightMm ?? 0))
  const mustGo = pile.storey <= lastPin(site, pile.column)
  const openers: (Item | null)[] = rest.filter((item) => !pile.noOpener.has(item))
  for (const opener of mustGo ? [...openers, null] : openers) {
    const tallMm = Math.max(opener?.heightMm ?? 0, pinsMm)
    const post = postsFor(site, pile, tallMm)
    // On a level that carries nothing no posts are in the way.
    const choices = [...(post ? [post] : []), ...(pile.top ? [] : [[]])]
    let why: LeftOutWhy = 'noPosts'
    for (const posts of choices) {
      const tray = begun(site, pile, opener, tallMm, posts)
      if (typeof tray === 'string') {
        why = tray
        continue
      }
      putFixed(site, tray, pins, true)
      seatRiders(tray, tray, site.riders, site.hints, kiln)
      fill(tray, rest, site.halfGap, () => true, way.roll)
      if (tray.stood.length === 0 && !mustGo) {
        why = 'noRoom'
        continue
      }
      takeShelf(stock, tray.shelf)
      takePosts(stock, posts)
      site.trays.push(tray)
      pile.storey++
      pile.underMm = tray.upMm + sumMm(posts)
      pile.closed = posts.length === 0
      return true
    }
    if (opener) pile.noOpener.set(opener, why)
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
  const pinsLeft = ({ column, storey }: Pile) => Math.max(0, lastPin(site, column) + 1 - storey)
  const pinned = piles.reduce((sum, pile) => sum + pinsLeft(pile), 0)
  if (site.way.topFirst && until === Infinity)
    for (const pile of piles)
      if (pinsLeft(pile) > 0 || shelvesLeft(site.problem.kiln, site.stock, pile.column) > pinned)
        reserveTop(site, pile)
  for (;;) {
    const must = (pile: Pile) => pinsLeft(pile) > (pile.top ? 1 : 0)
    const pile = piles
      .filter((one) => !one.closed && one.storey <= until && (site.rest.length > 0 || must(one)))
      .sort((a, b) => Number(must(b)) - Number(must(a)) || a.underMm - b.underMm)[0]
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

/** A last try for what is left, wherever it goes; nothing risky above others, and riders only where none was better. */
function sweep({ rest, riders, trays, halfGap, hints }: Site): void {
  const below = (tray: Tray) => tray.postMm.length > 0 || tray.storey === 1
  const hasCones = trays.some(({ stood }) => stood.some(({ item }) => item.kind === 'cones'))
  const last = riders.filter(({ id, kind }) => hints.riders.has(id) || (kind === 'tile' && hasCones))
  for (const item of [...last, ...rest.splice(0)])
    trays.some((tray) => (isClear(item) || below(tray)) && place(tray, item, halfGap))
}
