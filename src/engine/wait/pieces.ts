/** Jar and lid: two pieces of one pot, each with its own waits, fired together. */

import type { Band } from '../contract.ts'

/** The later of some bands, edge by edge. RangeError for none at all. */
export function latestOf(bands: readonly Band[]): Band {
  if (bands.length === 0) throw new RangeError('pieces is empty: must hold at least one piece')
  const latest = (edge: keyof Band): number => Math.max(...bands.map((band) => band[edge]))
  return { lower: latest('lower'), likely: latest('likely'), upper: latest('upper') }
}
