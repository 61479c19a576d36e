/** Why something is in no place, and what would get it in. Lengths in mm. */
import { randomFrom } from '../numeric/random.ts'
import type { Column, Kiln, LeftOut, WouldFit } from './contract.ts'
import type { Item } from './items.ts'
import type { Built, Problem } from './problem.ts'
import { floorOf, middleOf, outsideMm } from './region.ts'
import { searching } from './search.ts'
import { isHalf, THREE } from './stock.ts'

/** Passes of a try, and how many of those left out are tried for. */
const PASSES = 2
const TRIED = 3
/** Firings looked ahead. */
const FIRINGS = 5
/** Posts come in such steps, mm. */
const POST_STEP_MM = 25

/** Refuses what no level of this kiln takes: taller than the chamber leaves over one shelf, or wider than all of them. */
export function tooLarge(kiln: Kiln, item: Item): LeftOut | null {
  const { chamber, clearances, shelves } = kiln
  const thinMm = Math.min(...shelves.map(({ thickMm }) => thickMm))
  const mostMm = chamber.heightMm - clearances.lidMm - clearances.firstShelfMm - thinMm
  if (item.heightMm > mostMm) return { id: item.id, why: 'tooTall', mostMm, would: [] }
  const fits = (footMm: number, reachMm: number) =>
    shelves.some((shelf) => {
      const columns: Column[] = isHalf(shelf) ? ['left'] : ['whole']
      return columns.some((column) => {
        const region = floorOf(chamber, shelf, column, clearances).regionOf(footMm, reachMm)
        const { x, y } = middleOf(region)
        return outsideMm(region, x, y) <= 1e-6
      })
    })
  if (fits(item.footMm, item.reachMm)) return null
  // The widest of the same proportions that some shelf takes, across.
  let [least, most] = [0, 1]
  for (let k = 0; k < 40; k++) {
    const part = (least + most) / 2
    if (fits(part * item.footMm, part * item.reachMm)) least = part
    else most = part
  }
  return { id: item.id, why: 'tooWide', mostMm: 2 * least * item.reachMm, would: [] }
}

/** What is left out after so many passes of another problem. */
function missedOf(problem: Problem, pots: readonly Item[], seed: number): readonly string[] {
  const search = searching(problem, pots, randomFrom(seed))
  let best: Built = { trays: [], missed: [] }
  for (let pass = 0; pass < PASSES; pass++) best = search.next().value ?? best
  return best.missed.map(({ item }) => item.id)
}

const withPosts = (kiln: Kiln, lengthMm: number): Kiln => ({
  ...kiln,
  posts: [...kiln.posts, { lengthMm, count: THREE }],
})
const withShelf = (kiln: Kiln): Kiln => ({
  ...kiln,
  shelves: kiln.shelves.map((shelf) => ({ ...shelf, count: shelf.count + 1 })),
})

/**
 * In which firing after this one there is room for each of those left out, 1 the next; those that go in none are missing. Cones and tile
 * are in every firing.
 */
function firingsOf(problem: Problem, missed: readonly Item[], seed: number): ReadonlyMap<string, number> {
  const firings = new Map<string, number>()
  const riders = [...problem.items.values()].filter(({ kind }) => kind !== 'pot')
  let left = missed
  for (let firing = 1; firing <= FIRINGS && left.length > 0; firing++) {
    const items = new Map([...left, ...riders].map((item) => [item.id, item]))
    const next = { kiln: problem.kiln, items, pinned: [], loaded: [] }
    const still = new Set(missedOf(next, left, seed))
    for (const { id } of left) if (!still.has(id)) firings.set(id, firing)
    if (still.size === left.length) break
    left = left.filter(({ id }) => still.has(id))
  }
  return firings
}

/** Those left out of what was built; with `would`, what would get them in, which takes a few more passes. */
export function leftOutOf(
  problem: Problem,
  { missed }: Built,
  pots: readonly Item[],
  seed: number,
  would: boolean,
): LeftOut[] {
  if (!would || missed.length === 0)
    return missed.map(({ item, why }) => ({ id: item.id, why, mostMm: null, would: [] }))
  const left = missed.map(({ item }) => item).filter(({ kind }) => kind === 'pot')
  const firings = firingsOf(problem, left, seed)
  const inWith = (kiln: Kiln) => new Set(missedOf({ ...problem, kiln }, pots, seed))
  const shelf = inWith(withShelf(problem.kiln))
  const asides = asideOf(problem, pots, missed.length, seed)
  return missed.map(({ item, why }, i) => {
    const ways: WouldFit[] = []
    if (i < TRIED && item.kind === 'pot') {
      const needMm = item.heightMm + problem.kiln.clearances.headspaceMm
      const lengthMm = Math.ceil(needMm / POST_STEP_MM) * POST_STEP_MM
      if (!inWith(withPosts(problem.kiln, lengthMm)).has(item.id)) ways.push({ kind: 'posts', lengthMm })
    }
    if (!shelf.has(item.id)) ways.push({ kind: 'shelf' })
    if (asides && asides.potId !== item.id && !asides.missed.includes(item.id))
      ways.push({ kind: 'aside', potId: asides.potId, gains: asides.gains })
    const firing = firings.get(item.id)
    if (firing !== undefined) ways.push({ kind: 'nextFiring', firing })
    return { id: item.id, why, mostMm: null, would: ways }
  })
}

/** The tallest pot that is in no one's hands, if others go in without it, and what is still missed then. */
function asideOf(problem: Problem, pots: readonly Item[], missedBefore: number, seed: number) {
  const tallest = pots.reduce<Item | null>(
    (most, item) => (item.heightMm > (most?.heightMm ?? 0) ? item : most),
    null,
  )
  if (!tallest) return null
  const items = new Map([...problem.items].filter(([id]) => id !== tallest.id))
  const missed = missedOf(
    { ...problem, items },
    pots.filter((item) => item !== tallest),
    seed,
  )
  const gains = missedBefore - missed.length - 1
  return gains > 0 ? { potId: tallest.id, gains, missed } : null
}
