import type { PotState, Table } from '../model/state.ts'

/** A bucket at one moment: a coat was dipped, or a cup was weighed. Table time, ms; g/mL. */
export interface DensityPoint {
  readonly at: number
  readonly gramsPerMl: number
  /** The pot that was dipped; left out where a cup was weighed. */
  readonly pot?: PotState
  /** It is thinner than just before, with no new mix noted between: water went in. */
  readonly thinner: boolean
}

export interface DensityCourse {
  /** Oldest first. */
  readonly points: readonly DensityPoint[]
  /** The fill that is in it, if that was said. */
  readonly filledAt: number | undefined
  /** The target and what it may be off by, g/mL. */
  readonly low: number
  readonly high: number
}

/** Two readings nearer than this are one, g/mL: a kitchen scale tells no more. */
const SAME = 0.005

/**
 * A bucket's density over time: what its coats were dipped at, in every fill, and what was weighed of the fill in it now.
 * Undefined for a bucket that is not known.
 */
export function densityCourse(table: Table, bucketId: string): DensityCourse | undefined {
  const bucket = table.buckets[bucketId] ?? table.removed?.[bucketId]
  if (!bucket) return undefined
  const { facts, log } = bucket
  const filledAt = log.findLast(({ what }) => what === 'filled')?.at
  const dipped = Object.values(table.pots).flatMap((pot) =>
    pot.dips
      .filter((dip) => dip.bucketId === bucketId)
      .map(({ outAt, gramsPerMl }) => ({ at: outAt, gramsPerMl, pot })),
  )
  const weighed = log.flatMap(({ at, what, value }) =>
    what === 'density' && value !== undefined ? [{ at, gramsPerMl: value }] : [],
  )
  const all = [...dipped, ...weighed].sort((a, b) => a.at - b.at)
  const points = all.map((point, i): DensityPoint => {
    const before = all[i - 1]
    const isMixed =
      filledAt !== undefined && before !== undefined && before.at < filledAt && point.at >= filledAt
    return {
      ...point,
      thinner: !isMixed && before !== undefined && before.gramsPerMl - point.gramsPerMl >= SAME,
    }
  })
  return {
    points,
    filledAt,
    low: facts.targetGramsPerMl - facts.toleranceGramsPerMl,
    high: facts.targetGramsPerMl + facts.toleranceGramsPerMl,
  }
}
