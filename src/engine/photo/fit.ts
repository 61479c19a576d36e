/** The likeliest pot of a photo and a trace, sought from several angles of sight. */
import type { Cut, Point, Trace } from './contract.ts'
import { Search } from './search.ts'
import { DEG, USUAL_FOCAL } from './usual.ts'
import { AT, KNOTS, MANY } from './view.ts'

/** Windows of the search in the hand's own error, wide to narrow; at first the camera is held where it is. */
const WINDOWS = [1.7, 1.7, 1.6, 1.4, 1.2, 1, 0.8, 0.6, 0.45, 0.35, 0.3, 0.25, 0.25] as const
const AGAIN = [1, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.25, 0.25] as const
const HELD_STEPS = { first: 6, again: 4 } as const
const LEAST_WINDOW_PX = 3
/** How freely the outline bends at the first step, and how much more at each one after. */
const STIFF = { first: 0.3, again: 0.5, by: 1.25 } as const
const HAND_STEPS = 3
/** Degrees at which the camera looks down on the rim to begin with; below 0 it looks up. */
const OPEN = [1, 2, 3.5, 5, 7, 9.5, 12] as const
const SHUT = [-1, -2.5, -4.5, -7, -10, -14, -19] as const
const EDGE_ON = [-1.5, -0.5, 0.5, 1.5] as const
/** Then the best is tried again from so many degrees beside it. */
const BESIDE = [-2.5, -1, 0, 1, 2.5] as const
const ROUNDS = 2
/** An answer is as good as the best within this. */
const AS_GOOD = 0.04

export interface Fit {
  readonly search: Search
  readonly score: number
  /** Height over widest, of all answers as good: most less least, over the best one's. */
  readonly spread: number
}

const between = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

/** A pot that stands as the hand traced it, looked at so many radians from above its rim. */
function first(cut: Cut, { side, footLeft, rimLeft }: Trace, open: number): Float64Array {
  const pot = new Float64Array(MANY)
  const focal = (Math.exp(USUAL_FOCAL) * cut.longest) / 2
  const [low, high] = [between(side[0]!, footLeft), between(side[side.length - 1]!, rimLeft)]
  const tall = Math.hypot(high.x - low.x, high.y - low.y)
  const axis = { x: (low.x - high.x) / tall, y: (low.y - high.y) / tall }
  pot[AT.focal] = USUAL_FOCAL
  pot[AT.yaw] = ((low.x + high.x) / 2 - cut.middle.x) / focal
  pot[AT.height] = tall / focal
  pot[AT.up] = tall / focal + open
  pot[AT.pitch] = pot[AT.up]! - (low.y - cut.middle.y) / focal
  const across = side.map((p, i) => ({
    u: i === 0 ? 0 : i === side.length - 1 ? 1 : ((low.x - p.x) * axis.x + (low.y - p.y) * axis.y) / tall,
    r: Math.max(0.02 * tall, (p.x - low.x) * axis.y - (p.y - low.y) * axis.x) / focal,
  }))
  across.sort((a, b) => a.u - b.u)
  KNOTS.forEach((u, k) => {
    const i = Math.max(
      1,
      across.findIndex((p) => p.u >= u),
    )
    const [a, b] = [across[i - 1]!, across[i]!]
    const part = b.u > a.u ? Math.max(0, Math.min(1, (u - a.u) / (b.u - a.u))) : 1
    pot[AT.radii + k] = a.r + part * (b.r - a.r)
  })
  return pot
}

const ratioOf = ({ pot }: Search): number => pot[AT.height]! / Math.max(...pot.subarray(AT.radii))

/**
 * The likeliest pot of a photo and a trace of two points or more that make a pot; `ratio` is its height over its widest,
 * where both were measured.
 */
export function fitted(cut: Cut, trace: Trace, ratio?: number): Fit {
  const found: { readonly search: Search; readonly score: number }[] = []
  const narrow = (search: Search, windows: readonly number[], held: number, stiff: number) => {
    windows.forEach((part, i) => {
      const window = Math.max(LEAST_WINDOW_PX, part * trace.handPx)
      search.step(window, i < held, Math.min(1, stiff * STIFF.by ** i))
    })
    found.push({ search, score: search.score() })
    found.sort((a, b) => b.score - a.score)
  }
  for (const open of trace.looksIn === undefined ? EDGE_ON : trace.looksIn ? OPEN : SHUT) {
    const search = new Search(cut, trace, first(cut, trace, open * DEG), ratio)
    for (let i = 0; i < HAND_STEPS; i++) search.step(undefined, true, STIFF.first)
    search.learn()
    narrow(search, WINDOWS, HELD_STEPS.first, STIFF.first)
  }
  for (let round = 0; round < ROUNDS; round++) {
    const best = found[0]!
    for (const by of BESIDE) {
      const search = new Search(cut, trace, best.search.pot.slice(), ratio)
      search.learn()
      search.pot[AT.up]! += by * DEG
      search.pot[AT.pitch]! += by * DEG
      search.pot[AT.focal] = USUAL_FOCAL
      narrow(search, AGAIN, HELD_STEPS.again, STIFF.again)
    }
    if (found[0] === best) break
  }
  const best = found[0]!
  const ratios = found
    .filter(({ score }) => score > best.score - AS_GOOD)
    .map(({ search }) => ratioOf(search))
  const spread = (Math.max(...ratios) - Math.min(...ratios)) / ratioOf(best.search)
  return { ...best, spread }
}
