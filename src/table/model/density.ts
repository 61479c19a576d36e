import type { BucketState } from './state.ts'

/** Density of a bucket at a moment, g/mL, as far as its fill's readings say: what was read last before, else its target. */
export function densityAt({ facts, gramsPerMl, log }: BucketState, at: number): number {
  const read = log.filter(({ what }) => what === 'density')
  if (read.length === 0) return gramsPerMl
  return read.findLast((line) => line.at <= at)?.value ?? facts.targetGramsPerMl
}
