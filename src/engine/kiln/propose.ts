/** How pots go into a kiln: levels from below, what stands where, what is left out and why. Pure, the same load the same. */
import { randomFrom, seedOf } from '../numeric/random.ts'
import { checkLoad } from './check-load.ts'
import type { LeftOut, LeftOutWhy, LoadInput, LoadPlan, PotToLoad } from './contract.ts'
import { byOrder, type Item, itemOf, itemOfSpecial } from './items.ts'
import { leftOutOf, tooLarge } from './left-out.ts'
import type { Built, Problem } from './problem.ts'
import { searching } from './search.ts'
import { toldPlan } from './told.ts'

/** Passes of a first answer, of one that is waited for, and of one that nobody waits for. */
export const FIRST_PASSES = 2
export const SOON_PASSES = 12
export const FINAL_PASSES = 24
/** Of more pots than this an answer takes so long that the first pass is told, and nothing is tried for those left out. */
const MANY = 100

/** Passes until a load is answered for the last time. */
export const finalPasses = ({ pots }: LoadInput): number => (pots.length > MANY ? SOON_PASSES : FINAL_PASSES)

/** Passes until the first answer of a load. */
export const firstPasses = ({ pots }: LoadInput): number => (pots.length > MANY ? 1 : FIRST_PASSES)

/** Why a pot is not even tried, or null. */
function heldBack(pot: PotToLoad): LeftOutWhy | null {
  if (pot.notYet) return pot.notYet
  return (pot.risk === 'over' || pot.risk === 'unknown') && !pot.onSlab ? 'noSlab' : null
}

/**
 * Proposes a load, better with every pass. Yields the best plan so far after each pass that found a better one, else null,
 * and returns the last after `passes` of them. The same input gives the same plans, whatever the order its pots come in;
 * other ids, the same places. Pins and loaded levels stay as they are, even where they are too near to each other.
 *
 * RangeError, before anything else, naming field, value and range: a measure that is no number or cannot be, a shelf larger
 * than the chamber, fewer than three posts of a length, an id twice, a pin or level of what isn't there.
 */
export function* proposing(input: LoadInput, passes: number): Generator<LoadPlan | null, LoadPlan> {
  checkLoad(input)
  const { kiln, pinned, loaded } = input
  const fixed = new Set([...pinned, ...loaded.flatMap((level) => level.items)].map(({ id }) => id))
  const held: LeftOut[] = []
  const items = new Map<string, Item>()
  const take = (item: Item) => {
    const large = fixed.has(item.id) ? null : tooLarge(kiln, item)
    if (large) held.push(large)
    else items.set(item.id, item)
  }
  // In an order of their own, so that the order given decides nothing.
  const pots = input.pots.map((pot) => ({ pot, item: itemOf(pot) })).sort((a, b) => byOrder(a.item, b.item))
  for (const { pot, item } of pots) {
    const why = fixed.has(pot.id) ? null : heldBack(pot)
    if (why) held.push({ id: pot.id, why, mostMm: null, would: why === 'noSlab' ? [{ kind: 'slab' }] : [] })
    else take(item)
  }
  for (const item of input.specials.map(itemOfSpecial).sort(byOrder)) take(item)
  const problem: Problem = { kiln, items, pinned, loaded }
  const loose = [...items.values()].filter(({ id, kind }) => kind === 'pot' && !fixed.has(id))
  const seed = seedOf(input.loadId)
  const search = searching(problem, loose, randomFrom(seed))
  let best: Built = { trays: [], missed: [] }
  for (let pass = 1; ; pass++) {
    const found = search.next().value
    if (found) best = found
    const last = pass >= passes
    if (last || found) {
      const plan = toldPlan(
        problem,
        best,
        [...held, ...leftOutOf(problem, best, loose, seed, last && loose.length <= MANY)],
        pass,
      )
      if (last) return plan
      yield plan
    } else yield null
  }
}

const run = (steps: Generator<LoadPlan | null, LoadPlan>): LoadPlan => {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The load after so many passes, `SOON_PASSES` where omitted, with what would get in what is left out: see {@link proposing}. */
export const proposeLoad = (input: LoadInput, passes = SOON_PASSES): LoadPlan => run(proposing(input, passes))

/** The load as it is first told, after a few passes and without what would get more in: see {@link proposing}. */
export function firstLoad(input: LoadInput): LoadPlan {
  const steps = proposing(input, FINAL_PASSES)
  let plan: LoadPlan | null = null
  for (let pass = 0; pass < firstPasses(input) || !plan; pass++) plan = steps.next().value ?? plan
  return plan
}
