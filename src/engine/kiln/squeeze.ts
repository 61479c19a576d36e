/**
 * Discs that overlap are pressed apart: the sum of all squared overlaps, with each other, with what stands still and with
 * the edge, is brought down; where that gets stuck, the most pressed disc for its size goes to the emptiest of some spots,
 * or changes places with one of nearly its size.
 */
import { descend } from '../numeric/descent.ts'
import type { Disc } from './candidates.ts'
import type { Region } from './region.ts'

/** A disc that may move, with its own edge. `fixed`: what stands still for it. */
export interface Loose {
  readonly disc: Disc
  readonly region: Region
  readonly fixed: readonly Disc[]
}

/** An overlap below this counts as none, mm: a hair. */
export const ACCEPTED_MM = 0.05
/** Steps of one descent, and the sum of squares, mm2, at which it is done. */
const STEPS = 150
const DONE_MM2 = 1e-4
/** Spots that a kicked disc chooses from. */
const SPOTS = 40
/** Kicks of unlike discs that are an exchange, with one so many ranks of size away at most. Tuned. */
const EXCHANGES = 0.4
const RANKS = 3

/** How far two sides and a rim are crossed, added to `slope` times two; answers the sum of squares. */
function edge(region: Region, x: number, y: number, slope: Float64Array, i: number): number {
  let sum = 0
  const left = region.minX - x
  const right = x - region.maxX
  const back = region.minY - y
  const front = y - region.maxY
  if (left > 0) {
    sum += left * left
    slope[i]! -= 2 * left
  }
  if (right > 0) {
    sum += right * right
    slope[i]! += 2 * right
  }
  if (back > 0) {
    sum += back * back
    slope[i + 1]! -= 2 * back
  }
  if (front > 0) {
    sum += front * front
    slope[i + 1]! += 2 * front
  }
  const square = x * x + y * y
  if (square > region.r * region.r) {
    const far = Math.sqrt(square)
    const over = far - region.r
    sum += over * over
    slope[i]! += (2 * over * x) / far
    slope[i + 1]! += (2 * over * y) / far
  }
  return sum
}

/** Sum of squared overlaps at `at` (x, y, x, y ...), and its slope. */
function pressureAt(loose: readonly Loose[]): (at: Float64Array, slope: Float64Array) => number {
  const n = loose.length
  const r = Float64Array.from(loose, ({ disc }) => disc.r)
  return (at, slope) => {
    slope.fill(0)
    let sum = 0
    for (let i = 0; i < n; i++) {
      const x = at[2 * i]!
      const y = at[2 * i + 1]!
      const ri = r[i]!
      const { region, fixed } = loose[i]!
      sum += edge(region, x, y, slope, 2 * i)
      for (let j = 0; j < fixed.length; j++) {
        const other = fixed[j]!
        const dx = x - other.x
        const dy = y - other.y
        const reach = ri + other.r
        const square = dx * dx + dy * dy
        if (square >= reach * reach) continue
        const far = Math.sqrt(square) || 1e-9
        const over = reach - far
        sum += over * over
        slope[2 * i]! -= (2 * over * dx) / far
        slope[2 * i + 1]! -= (2 * over * dy) / far
      }
      for (let j = i + 1; j < n; j++) {
        const reach = ri + r[j]!
        const dx = x - at[2 * j]!
        if (dx >= reach || dx <= -reach) continue
        const dy = y - at[2 * j + 1]!
        const square = dx * dx + dy * dy
        if (square >= reach * reach) continue
        const far = Math.sqrt(square) || 1e-9
        const over = reach - far
        sum += over * over
        const fx = (2 * over * dx) / far
        const fy = (2 * over * dy) / far
        slope[2 * i]! -= fx
        slope[2 * i + 1]! -= fy
        slope[2 * j]! += fx
        slope[2 * j + 1]! += fy
      }
    }
    return sum
  }
}

/** Overlaps of disc `i` at x, y: their sum, and the largest. */
function pressed(
  loose: readonly Loose[],
  at: Float64Array,
  i: number,
  x: number,
  y: number,
): [number, number] {
  const { disc, region, fixed } = loose[i]!
  let [sum, most] = [0, 0]
  const take = (over: number) => {
    if (over <= 0) return
    sum += over
    if (over > most) most = over
  }
  take(region.minX - x)
  take(x - region.maxX)
  take(region.minY - y)
  take(y - region.maxY)
  take(Math.hypot(x, y) - region.r)
  for (const other of fixed) take(disc.r + other.r - Math.hypot(x - other.x, y - other.y))
  for (let j = 0; j < loose.length; j++)
    if (j !== i) take(disc.r + loose[j]!.disc.r - Math.hypot(x - at[2 * j]!, y - at[2 * j + 1]!))
  return [sum, most]
}

/** A spot drawn in a region, both ends allowed. */
export function drawnIn(region: Region, roll: () => number): { readonly x: number; readonly y: number } {
  const low = (least: number) => Math.max(least, -region.r)
  const high = (most: number) => Math.min(most, region.r)
  const [x0, x1, y0, y1] = [low(region.minX), high(region.maxX), low(region.minY), high(region.maxY)]
  for (let k = 0; k < 20; k++) {
    const x = x0 + (x1 - x0) * roll()
    const y = y0 + (y1 - y0) * roll()
    if (Math.hypot(x, y) <= region.r) return { x, y }
  }
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2 }
}

/** Sends one disc to the emptiest of some spots. */
function send(loose: readonly Loose[], at: Float64Array, i: number, roll: () => number): void {
  const { region } = loose[i]!
  let [least, x, y] = [Infinity, 0, 0]
  for (let k = 0; k < SPOTS; k++) {
    const spot = drawnIn(region, roll)
    const [, most] = pressed(loose, at, i, spot.x, spot.y)
    if (most < least) [least, x, y] = [most, spot.x, spot.y]
  }
  at[2 * i] = x
  at[2 * i + 1] = y
}

/** Two discs of nearly one size change places, `worst` or any with a near rank; false where there's none of another size. */
function exchange(
  bySize: readonly number[],
  loose: readonly Loose[],
  at: Float64Array,
  worst: number,
  roll: () => number,
): boolean {
  const one = roll() < 0.5 ? worst : bySize[Math.floor(roll() * bySize.length)]!
  const away = 1 + Math.floor(roll() * RANKS)
  const other = bySize[bySize.indexOf(one) + (roll() < 0.5 ? away : -away)]
  if (other === undefined || Math.abs(loose[one]!.disc.r - loose[other]!.disc.r) < ACCEPTED_MM) return false
  for (const c of [0, 1]) {
    const kept = at[2 * one + c]!
    at[2 * one + c] = at[2 * other + c]!
    at[2 * other + c] = kept
  }
  return true
}

/**
 * Presses discs apart, from where they are, with at most so many kicks. True, and the discs moved, where no overlap of
 * {@link ACCEPTED_MM} is left; else they stay.
 */
export function squeeze(loose: readonly Loose[], kicks: number, roll: () => number): boolean {
  const at = new Float64Array(2 * loose.length)
  for (const [i, { disc }] of loose.entries()) [at[2 * i], at[2 * i + 1]] = [disc.x, disc.y]
  const pressure = pressureAt(loose)
  const bySize = loose.map((_, i) => i).sort((a, b) => loose[a]!.disc.r - loose[b]!.disc.r)
  for (let kick = 0; ; kick++) {
    descend(pressure, at, STEPS, DONE_MM2)
    let [worst, most, worstPart] = [0, 0, -1]
    for (let i = 0; i < loose.length; i++) {
      const [sum, own] = pressed(loose, at, i, at[2 * i]!, at[2 * i + 1]!)
      if (own > most) most = own
      if (sum / loose[i]!.disc.r > worstPart) [worst, worstPart] = [i, sum / loose[i]!.disc.r]
    }
    if (most < ACCEPTED_MM) break
    if (kick >= kicks) return false
    if (roll() >= EXCHANGES || !exchange(bySize, loose, at, worst, roll)) send(loose, at, worst, roll)
  }
  for (const [i, { disc }] of loose.entries()) [disc.x, disc.y] = [at[2 * i]!, at[2 * i + 1]!]
  return true
}
