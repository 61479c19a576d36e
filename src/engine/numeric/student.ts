/** Student's law with four degrees of freedom, in closed form, and nodes for an integral over the normal law. */

/** Its density at `t`. */
export function t4Pdf(t: number): number {
  const square = 1 + (t * t) / 4
  return 0.375 / (square * square * Math.sqrt(square))
}

/** Its distribution function at `t`, infinities allowed. */
export function t4Cdf(t: number): number {
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0
  const q = Math.sqrt(1 + (t * t) / 4)
  return 0.5 + ((3 * t) / (8 * q)) * (1 - (t * t) / (12 * q * q))
}

const HALF = [
  [1.0232556637891326, 0.2440975028949391],
  [2.0768479786778302, 0.04991640676521788],
  [3.2054290028564703, 0.002789141321231769],
  [4.512745863399783, 2.234584400774658e-5],
] as const

/** Nine nodes of Gauss and Hermite's rule for the standard normal law, with weights that sum to 1. */
export const NORMAL_NODES: readonly (readonly [x: number, weight: number])[] = [
  ...HALF.toReversed().map(([x, weight]) => [-x, weight] as const),
  [0, 0.4063492063492063],
  ...HALF,
]
