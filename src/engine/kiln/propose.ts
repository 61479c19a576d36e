/** How pots go into a kiln: levels from below, what stands where, what is left out and why. Pure, the same load the same. */
import { type Built, build, type Missed, type Problem, type Way } from './build.ts'
import { checkLoad } from './check-load.ts'
import type { LeftOut, LeftOutWhy, LoadInput, LoadPlan } from './contract.ts'
import { byOrder, type Item, itemOf, itemOfSpecial } from './items.ts'
import { toldPlan } from './told.ts'

/** Passes of a first answer, and of one that nobody waits for. */
export const FIRST_PASSES = 2
export const FINAL_PASSES = 24

/** Why a pot is not even tried, or null. */
function heldBack(pot: LoadInput['pots'][number]): LeftOutWhy | null {
  if (pot.notYet) return pot.notYet
  return (pot.risk === 'over' || pot.risk === 'unknown') && !pot.onSlab ? 'noSlab' : null
}

/** Fewer left out, then fewer levels, then the lower. */
function isBetter(a: Built, b: Built): boolean {
  const topOf = ({ trays }: Built) => Math.max(0, ...trays.map((tray) => tray.upMm))
  return (a.missed.length - b.missed.length || a.trays.length - b.trays.length || topOf(a) - topOf(b)) < 0
}

/**
 * Proposes a load, better with every pass. Yields the best plan so far after each, `passes` of them, and returns the last.
 * The same input gives the same plans, whatever the order its pots come in; other ids, the same places. Pins and loaded
 * levels stay as they are, even where they are too near to each other.
 *
 * RangeError, before anything else, naming field, value and range: a measure that is no number or cannot be, a shelf larger
 * than the chamber, fewer than three posts of a length, an id twice, a pin or level of what isn't there.
 */
export function* proposing(input: LoadInput, passes: number): Generator<LoadPlan, LoadPlan> {
  checkLoad(input)
  const held: LeftOut[] = []
  const items = new Map<string, Item>()
  const fixed = new Set([
    ...input.pinned.map(({ id }) => id),
    ...input.loaded.flatMap((level) => level.items.map(({ id }) => id)),
  ])
  for (const pot of input.pots) {
    const why = fixed.has(pot.id) ? null : heldBack(pot)
    if (why) held.push({ id: pot.id, why, mostMm: null, would: why === 'noSlab' ? [{ kind: 'slab' }] : [] })
    else items.set(pot.id, itemOf(pot))
  }
  for (const one of input.specials) items.set(one.id, itemOfSpecial(one))
  const problem: Problem = { kiln: input.kiln, items, pinned: input.pinned, loaded: input.loaded }
  const order = [...items.values()].filter(({ id }) => !fixed.has(id)).sort(byOrder)
  const halves = input.kiln.shelves.some(({ kind }) => kind === 'halfRound' || kind === 'halfBox')
  const ways: readonly Way[] = [true, false].flatMap((topFirst) =>
    (halves ? [Infinity, 0] : [Infinity]).map((wholes) => ({
      order,
      wholes,
      topFirst,
      onEnd: false,
      tops: new Map(),
    })),
  )
  let best: Built | null = null
  for (let pass = 0; ; pass++) {
    const way = ways[pass % ways.length]!
    const built: Built = build(problem, way)
    if (!best || isBetter(built, best)) best = built
    const plan = toldPlan(problem, best, [...held, ...best.missed.map(missedOf)], pass + 1)
    if (pass + 1 >= passes) return plan
    yield plan
  }
}

const missedOf = ({ item, why }: Missed): LeftOut => ({ id: item.id, why, mostMm: null, would: [] })

/** The load after so many passes, `FIRST_PASSES` where omitted: see {@link proposing}. */
export function proposeLoad(input: LoadInput, passes = FIRST_PASSES): LoadPlan {
  const steps = proposing(input, passes)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
