/** Log-normal ranges: the normal law, mixtures of log-normals, and their lower bounds, medians and upper bounds. */

import type { Band } from '../contract.ts'
import { HORIZON_MIN } from '../parameters.ts'

/** Standard normal density. */
export const normalPdf = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI)

/**
 * Standard normal distribution function, to 1e-14: West 2005 (Wilmott), after Hart 1968, in the shape of a rational
 * fit up to 7.07 and a continued fraction beyond.
 */
export function normalCdf(x: number): number {
  const a = Math.abs(x)
  if (a > 37) return x > 0 ? 1 : 0
  const e = Math.exp((-a * a) / 2)
  let tail: number
  if (a < 7.07106781186547) {
    const n =
      (((((3.52624965998911e-2 * a + 0.700383064443688) * a + 6.37396220353165) * a + 33.912866078383) * a +
        112.079291497871) *
        a +
        221.213596169931) *
        a +
      220.206867912376
    const d =
      ((((((8.83883476483184e-2 * a + 1.75566716318264) * a + 16.064177579207) * a + 86.7807322029461) * a +
        296.564248779674) *
        a +
        637.333633378831) *
        a +
        793.826512519948) *
        a +
      440.413735824752
    tail = (e * n) / d
  } else tail = e / (a + 1 / (a + 2 / (a + 3 / (a + 4 / (a + 0.65))))) / 2.506628274631
  return x > 0 ? 1 - tail : tail
}

/** One possibility: a wait in minutes (Infinity: never) and its weight. */
export interface Likelihood {
  readonly minutes: number
  readonly weight: number
}

/** Edges of the range: one wait in ten is shorter than the lower one, one in ten longer than the upper one. */
const EDGES = [0.1, 0.5, 0.9] as const
/** Quantile of the standard normal at 0.9. */
export const Z90 = 1.2815515655446004
/** A wait can't be told nearer than this, minutes. */
const LEAST_MIN = 1 / 60

/** Nearer than this the logarithm of a quantile needs no further step. */
const NEAR = 1e-9

/**
 * Quantile `part` of a mixture of log-normals with one sd of the logarithm; Infinity where the rest is never. With
 * `after`, minutes, that of the waits longer than that alone.
 */
export function quantile(of: readonly Likelihood[], sd: number, part: number, after = 0): number {
  const logs: number[] = []
  const weights: number[] = []
  let sum = 0
  let finite = 0
  for (const { minutes, weight } of of) {
    sum += weight
    if (!Number.isFinite(minutes)) continue
    finite += weight
    logs.push(Math.log(Math.max(LEAST_MIN, minutes)))
    weights.push(weight)
  }
  const longest = Math.max(...logs) + 6 * sd + NEAR
  if (after > 0) return beyond({ logs, weights, never: sum - finite, longest }, sd, part, Math.log(after))
  const goal = part * sum
  if (!(finite > goal)) return Infinity
  let low = Math.min(...logs) - 6 * sd - NEAR
  let high = longest
  let at = (low + high) / 2
  // Newton's steps, halving instead where one would leave what is known to hold the quantile.
  for (let i = 0; i < 60 && high - low > NEAR; i++) {
    let mass = 0
    let slope = 0
    for (let k = 0; k < logs.length; k++) {
      const z = (at - logs[k]!) / sd
      mass += weights[k]! * normalCdf(z)
      slope += (weights[k]! * normalPdf(z)) / sd
    }
    if (mass < goal) low = at
    else high = at
    const newton = at + (goal - mass) / slope
    const next = newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - at) < NEAR) break
    at = next
  }
  return Math.exp(at)
}

interface Mixture {
  readonly logs: readonly number[]
  readonly weights: readonly number[]
  /** Weight of what never ends. */
  readonly never: number
  /** Logarithm that nearly all of the rest stays under. */
  readonly longest: number
}

/** The quantile of what is left past ln(minutes) `after`, from the tails, which keep their figures far out; by halving. */
function beyond({ logs, weights, never, longest }: Mixture, sd: number, part: number, after: number): number {
  const left = (at: number): number =>
    logs.reduce((sum, log, k) => sum + weights[k]! * normalCdf((log - at) / sd), never)
  const goal = (1 - part) * left(after)
  if (never > 0 && never >= goal) return Infinity
  let low = after
  let high = Math.max(after, longest) + 6 * sd
  while (high - low > NEAR) {
    const at = (low + high) / 2
    if (left(at) > goal) low = at
    else high = at
  }
  return Math.exp(high)
}

/**
 * Lower bound, median and upper bound of a mixture counted from `fromMin`; past seven days is never. With `after`,
 * minutes from there, of the waits that are longer.
 */
export function bandOf(of: readonly Likelihood[], sd: number, fromMin: number, after = 0): Band {
  const alike = after === 0 && of.every(({ minutes }) => minutes === of[0]!.minutes)
  const [lower, likely, upper] = EDGES.map((part, k) => {
    const minutes = alike
      ? Math.max(LEAST_MIN, of[0]!.minutes) * Math.exp((k - 1) * Z90 * sd)
      : quantile(of, sd, part, after)
    return minutes > HORIZON_MIN ? Infinity : fromMin + minutes
  }) as [number, number, number]
  return { lower, likely, upper }
}
