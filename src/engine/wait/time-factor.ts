/** The factor on waits that looks at drying coats teach, other things being known. */

import { normalCdf, normalPdf } from '../numeric/spread.ts'

/** What one look says of ln(wait / computed): it lies between two edges, or is known. */
export interface Interval {
  readonly computedMin: number
  readonly dampMin?: number | undefined
  readonly dryMin?: number | undefined
  readonly exactMin?: number | undefined
  /** Sd of the logarithm from coat to coat. */
  readonly sd: number
}

/** Nodes of the grid, and its reach in sd of the prior. */
const TIME_STEPS = 41
const TIME_REACH = 4

/** Likelihood of a look when ln(time factor) is `b`. */
function likelihood(look: Interval, b: number, labelNoise: number): number {
  const { computedMin, dampMin, dryMin, exactMin, sd } = look
  const z = (min: number): number => (Math.log(min / computedMin) - b) / sd
  if (exactMin !== undefined)
    return labelNoise + (1 - 2 * labelNoise) * (computedMin === Infinity ? 0 : normalPdf(z(exactMin)) / sd)
  const low = dampMin === undefined ? 0 : computedMin === Infinity ? 0 : normalCdf(z(dampMin))
  const high = dryMin === undefined ? 1 : computedMin === Infinity ? 0 : normalCdf(z(dryMin))
  return labelNoise + (1 - 2 * labelNoise) * Math.max(0, high - low)
}

export interface Factor {
  readonly mean: number
  readonly sd: number
  /** Probability of the looks under the prior. */
  readonly evidence: number
}

/**
 * Posterior of ln(time factor) from interval-censored looks with a normal prior, on a grid. Moments agree with the
 * closed form for one look to 1e-3.
 */
export function timeFactor(
  looks: readonly Interval[],
  priorMean: number,
  priorSd: number,
  labelNoise: number,
): Factor {
  let [sum, first, second, prior] = [0, 0, 0, 0]
  for (let k = 0; k < TIME_STEPS; k++) {
    const x = TIME_REACH * ((2 * k) / (TIME_STEPS - 1) - 1)
    const b = priorMean + x * priorSd
    const before = normalPdf(x)
    let weight = before
    for (const look of looks) weight *= likelihood(look, b, labelNoise)
    prior += before
    sum += weight
    first += weight * b
    second += weight * b * b
  }
  const mean = first / sum
  return { mean, sd: Math.sqrt(Math.max(0, second / sum - mean * mean)), evidence: sum / prior }
}
