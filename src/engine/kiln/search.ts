/** Passes over the same load, each another way, and which of two answers is the better. */
import { build } from './build.ts'
import type { Column } from './contract.ts'
import { byOrder, type Item } from './items.ts'
import { type Built, type Hints, NO_HINTS, type Problem, type Way, type Where } from './problem.ts'
import { holeAt } from './riders.ts'
import { isHalf } from './stock.ts'
import { freeMm, type Tray } from './tray.ts'

/** Rounds in which a pass takes up how high its own top levels came. */
const ROUNDS = 3
/** Heights are jittered by so much, least and most, part of them. */
const JITTER = { least: 0.05, most: 0.4 }
/** Every so many passes the tallest are tried last, where something was left out. */
const ASIDE_EVERY = 3

/** Halves whose tops are less apart stand alike, mm. Our choice. */
const STOREY_MM = 120

/** How tall the load stands, from the floor, mm. */
export const topMm = (trays: readonly Tray[]): number =>
  trays.reduce(
    (most, { upMm, stood }) => stood.reduce((high, { item }) => Math.max(high, upMm + item.heightMm), most),
    0,
  )

/** Cone sets that no spy hole sees where they stand. */
export const unseenIn = ({ kiln }: Problem, trays: readonly Tray[]): Item[] =>
  trays.flatMap((tray) => {
    const seen = holeAt(kiln, tray, freeMm(kiln, tray)) !== undefined
    return tray.stood.map(({ item }) => item).filter(({ kind }) => kind === 'cones' && !seen)
  })

/** Cone sets that no hole sees, or that stand nowhere. */
const unsightly = (problem: Problem, { trays, missed }: Built): number =>
  unseenIn(problem, trays).length + missed.filter(({ item }) => item.kind === 'cones').length

/** Pinned items that a post or the thermocouple is in the way of. */
const pressed = (trays: readonly Tray[]): number =>
  trays.reduce(
    (sum, { posts, probe, stood }) =>
      sum +
      stood.filter(
        ({ pinned, disc, item }) =>
          pinned &&
          [...posts, ...(probe && item.heightMm > probe.overMm ? [probe.disc] : [])].some(
            (other) => Math.hypot(other.x - disc.x, other.y - disc.y) < other.r + disc.r - 0.05,
          ),
      ).length,
    0,
  )

/** Pinned items that do not stand on the level they were put on. */
const unpinned = ({ pinned }: Problem, trays: readonly Tray[]): number =>
  pinned.filter(
    ({ id, column, storey }) =>
      !trays.some(
        (tray) =>
          tray.column === column && tray.storey === storey && tray.stood.some(({ item }) => item.id === id),
      ),
  ).length

/** By how many storeys one half stands higher than the other, where half shelves are used: both are built alike. */
const uneven = (trays: readonly Tray[]): number => {
  const topOf = (of: Column) => topMm(trays.filter(({ column }) => column === of))
  return trays.some(({ shelf }) => isHalf(shelf))
    ? Math.floor(Math.abs(topOf('left') - topOf('right')) / STOREY_MM)
    : 0
}

/** What counts, gravest first: the smaller the better. */
function marks(problem: Problem, built: Built): number[] {
  const { trays, missed } = built
  const levels = trays.reduce((sum, { shelf }) => sum + (isHalf(shelf) ? 0.5 : 1), 0)
  const onEnd = trays.filter(({ postMm }) => postMm.length > 1).length
  return [
    unpinned(problem, trays),
    unsightly(problem, built),
    missed.length,
    pressed(trays),
    uneven(trays),
    onEnd,
    levels,
    topMm(trays),
  ]
}

/** Whether `a` is the better answer. */
export function isBetter(problem: Problem, a: Built, b: Built): boolean {
  const other = marks(problem, b)
  for (const [i, mark] of marks(problem, a).entries())
    if (Math.abs(mark - other[i]!) > 1e-6) return mark < other[i]!
  return false
}

/** Where a pass's columns ended, for the next. */
function topsOf(trays: readonly Tray[]): Hints['tops'] {
  const tops = new Map<Column, { storey: number; upMm: number }>()
  for (const { column, storey, upMm } of trays)
    if ((tops.get(column)?.storey ?? 0) < storey) tops.set(column, { storey, upMm })
  return tops
}

/** The level nearest to a spy hole's height, or the middle one: there goes what no hole sees. */
function ridersOf({ kiln, items }: Problem, { trays, missed }: Built): Hints['riders'] {
  const riders = new Map<string, Where>()
  const open = trays.filter(({ limitMm }) => limitMm > 0)
  const wantMm = kiln.spyHoles[0]?.upMm ?? topMm(trays) / 2
  const hasCones = [...items.values()].some(({ kind }) => kind === 'cones')
  for (const { item } of missed) {
    if (item.kind === 'pot' || (item.kind === 'tile' && hasCones)) continue
    const fit = open.filter(({ limitMm }) => limitMm >= item.heightMm)
    const offMm = ({ upMm, limitMm }: Tray) => Math.max(upMm - wantMm, wantMm - upMm - limitMm, 0)
    const level = fit.sort((a, b) => offMm(a) - offMm(b) || a.upMm - b.upMm)[0]
    if (level) riders.set(item.id, { column: level.column, storey: level.storey })
  }
  return riders
}

/** One pass, told again how high its top levels came until that stands. */
function passed(problem: Problem, way: Way, hints: Hints): { readonly built: Built; readonly hints: Hints } {
  const { kiln, items, pinned } = problem
  const once =
    !kiln.thermocouple && pinned.length === 0 && [...items.values()].every(({ kind }) => kind === 'pot')
  let known = hints
  let best: Built | null = null
  for (let round = 0; ; round++) {
    // How high the tops come is first learnt from a quick pass.
    const quick = !once && known === NO_HINTS
    const built = build(problem, quick ? { ...way, roll: null } : way, known)
    if (!best || isBetter(problem, built, best)) best = built
    if (once) return { built, hints }
    const tops = topsOf(built.trays)
    const riders = new Map([...known.riders, ...ridersOf(problem, built)])
    const same =
      !quick &&
      riders.size === known.riders.size &&
      [...tops].every(([column, { storey, upMm }]) => {
        const before = known.tops.get(column)
        return before?.storey === storey && Math.abs(before.upMm - upMm) < 1e-6
      })
    known = { tops, riders }
    if (!same && round + 1 < ROUNDS) continue
    // A top that is filled last always comes to stand where its pins are.
    if (way.topFirst && unpinned(problem, best.trays) > 0) {
      const last = build(problem, { ...way, topFirst: false }, known)
      if (isBetter(problem, last, best)) best = last
    }
    return { built: best, hints: known }
  }
}

/** The order of a pass: as it should be, or with heights that are off a little. */
function orderOf(items: readonly Item[], jitter: number, aside: number, roll: () => number): Item[] {
  const heights = new Map(items.map((item) => [item, item.heightMm * (1 + jitter * (2 * roll() - 1))]))
  const order = [...items].sort(
    (a, b) => b.risk - a.risk || heights.get(b)! - heights.get(a)! || byOrder(a, b),
  )
  if (aside === 0) return order
  const tallest = [...items].sort((a, b) => b.heightMm - a.heightMm || byOrder(a, b)).slice(0, aside)
  return [...order.filter((item) => !tallest.includes(item)), ...tallest]
}

/** Answers better and better: what is found after each pass, null where it is no better. Never ends. */
export function* searching(
  problem: Problem,
  pots: readonly Item[],
  roll: () => number,
): Generator<Built | null, never> {
  const { shelves, posts } = problem.kiln
  const wholes = shelves.filter((shelf) => !isHalf(shelf)).reduce((sum, { count }) => sum + count, 0)
  const halves = shelves.some((shelf) => isHalf(shelf) && shelf.count > 0)
  const layouts = halves ? (wholes > 0 ? [Infinity, 0, 1, 2] : [0]) : [Infinity]
  const sorted = [...pots].sort(byOrder)
  const holes = problem.kiln.spyHoles.length > 0
  let best: Built | null = null
  let hints = NO_HINTS
  for (let pass = 0; ; pass++) {
    const missed: number = best?.missed.length ?? 0
    const first = pass < 2 * layouts.length
    const jitter = first ? 0 : JITTER.least + (JITTER.most - JITTER.least) * roll()
    const aside = !first && missed > 0 && pass % ASIDE_EVERY === 0 ? 1 + Math.floor(roll() * missed) : 0
    const way: Way = {
      order: orderOf(sorted, jitter, aside, roll),
      wholes: layouts[pass % layouts.length]!,
      topFirst: first ? pass < layouts.length : roll() < 0.7,
      sight: false,
      onEnd: missed > 0 && posts.length > 0 && pass % 2 === 1,
      roll,
    }
    let found = passed(problem, way, hints)
    if (holes && unsightly(problem, found.built) > 0) {
      const seen = passed(problem, { ...way, sight: true }, { ...found.hints, riders: NO_HINTS.riders })
      if (isBetter(problem, seen.built, found.built)) found = seen
    }
    const better = !best || isBetter(problem, found.built, best)
    if (better) {
      best = found.built
      hints = found.hints
    }
    yield better ? found.built : null
  }
}
