/**
 * A bucket's density from a dipped tile: what it gained dry over what tiles of the same batch gained in slop whose density
 * was weighed, dipped alike. Too coarse for a reading, good for an alarm.
 */

import { between, inRange } from '../check.ts'
import { normalCdf } from '../numeric/spread.ts'
import { NORMAL_NODES } from '../numeric/student.ts'

/** A tile dipped when the density was weighed: dry gain, g, and g/mL. */
export interface DipReference {
  readonly gainG: number
  readonly gramsPerMl: number
}

/** 10, 50 and 90 % points, g/mL. */
export interface DipDensity {
  readonly low: number
  readonly likely: number
  readonly high: number
}

/**
 * ln gain a g/mL and its spread, from this engine over suctions of 0.06 to 0.4 mm/sqrt s and resistances of 5 to 50 s/mm2;
 * sd of ln of a gain; what a weighed cup is off; what a bucket is off its target, g/mL. Assumptions.
 */
const LN_PER_DENSITY = { mean: 5, sd: 1.1 }
const GAIN_SD = 0.058
const CUP_SD = 0.005
const BUCKET_SD = 0.04

interface Part {
  readonly weight: number
  readonly mean: number
  readonly sd: number
}

/** The law of the density, a normal law for each node of what a g/mL does. */
function partsOf(
  gainG: number,
  references: readonly DipReference[],
  targetGramsPerMl: number,
): readonly Part[] {
  const n = references.length
  const over = references.reduce((sum, { gainG: before }) => sum + Math.log(gainG / before), 0) / n
  const from = references.reduce((sum, { gramsPerMl }) => sum + gramsPerMl, 0) / n
  const gainSd = GAIN_SD * Math.sqrt(1 + 1 / n)
  return NORMAL_NODES.map(([z, node]): Part => {
    const c = Math.max(0.5, LN_PER_DENSITY.mean + LN_PER_DENSITY.sd * z)
    const seen = from + over / c
    const sd = Math.hypot(gainSd / c, CUP_SD / Math.sqrt(n))
    const wide = Math.hypot(sd, BUCKET_SD)
    // How well this node foretold the gain: a density in units of gain.
    const likely = Math.exp(-0.5 * ((seen - targetGramsPerMl) / wide) ** 2) / (wide * c)
    const keeps = BUCKET_SD ** 2 / wide ** 2
    return {
      weight: node * likely,
      mean: targetGramsPerMl + keeps * (seen - targetGramsPerMl),
      sd: (BUCKET_SD * sd) / wide,
    }
  })
}

/**
 * The density that a dipped tile speaks of. RangeError without references, for gains of 0 or less, or densities that no
 * slop has.
 */
export function dipDensity(
  gainG: number,
  references: readonly DipReference[],
  targetGramsPerMl: number,
): DipDensity {
  inRange('references.length', references.length, 1, 1000)
  between('gainG', gainG, 0, 10_000)
  between('targetGramsPerMl', targetGramsPerMl, 1, 3)
  for (const [i, one] of references.entries()) {
    between(`references[${i}].gainG`, one.gainG, 0, 10_000)
    between(`references[${i}].gramsPerMl`, one.gramsPerMl, 1, 3)
  }
  const parts = partsOf(gainG, references, targetGramsPerMl)
  const total = parts.reduce((sum, { weight }) => sum + weight, 0)
  const [low, likely, high] = [0.1, 0.5, 0.9].map((part) => {
    let [a, b] = [targetGramsPerMl - 1, targetGramsPerMl + 1]
    while (b - a > 1e-6) {
      const x = (a + b) / 2
      const below = parts.reduce((sum, { weight, mean, sd }) => sum + weight * normalCdf((x - mean) / sd), 0)
      if (below < part * total) a = x
      else b = x
    }
    return (a + b) / 2
  }) as [number, number, number]
  return { low, likely, high }
}

/** What to call: the whole range lies off the target by more than its tolerance, g/mL. Never a density: weigh a cup. */
export function dipAlarm(
  { low, high }: DipDensity,
  targetGramsPerMl: number,
  toleranceGramsPerMl: number,
): 'thin' | 'thick' | null {
  inRange('toleranceGramsPerMl', toleranceGramsPerMl, 0, 1)
  if (high < targetGramsPerMl - toleranceGramsPerMl) return 'thin'
  return low > targetGramsPerMl + toleranceGramsPerMl ? 'thick' : null
}
