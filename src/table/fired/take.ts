import type { FactorTold } from './lesson.ts'

/** What speaks against it is its drip alone: its front says no more than is reckoned with. */
export const isOfDrip = ({ drips, way }: FactorTold): boolean => drips.length > 0 && way !== 'danger'

/** What a hand would take by USE IT, as the action says it: where its drip alone is a danger the drip, and nothing less. */
export const takes = (told: FactorTold) => {
  const { bucketId, underId, factor, drip, usedDrip } = told
  const results = [...new Set([...told.results, ...told.shelved])]
  return {
    do: 'take-lesson' as const,
    bucketId,
    ...(underId === undefined ? {} : { underId }),
    ...(isOfDrip(told) ? usedOf(told) : { factor: factor.likely, low: factor.low, high: factor.high }),
    of: results.length,
    ...(drip === undefined ? {} : { drip: Math.max(drip, usedDrip) }),
    results: results.map(({ found }) => found.id),
  }
}

/** It would run less than is reckoned with by one firing alone: what is reckoned with is kept as the main answer. */
export const isByOneFiring = ({ way, results }: FactorTold): boolean =>
  way === 'relief' && new Set(results.map(({ load }) => load?.loadId)).size <= 1

const usedOf = ({ used, usedLow, usedHigh }: FactorTold) => ({
  factor: used,
  low: Math.min(used, usedLow),
  high: Math.max(used, usedHigh),
})

/** What a hand would say by KEEP: what is reckoned with stays, and that is an answer to these results, or to none. */
export function keeps(told: FactorTold): ReturnType<typeof takes> {
  const { taken, usedDrip, results } = told
  if (!taken) return asTold(told)
  return { ...takes(told), ...usedOf(told), of: Math.max(1, results.length), drip: usedDrip }
}

/** What a hand would say to have a subject run as told again. */
export const asTold = (told: FactorTold): ReturnType<typeof takes> => ({
  ...takes(told),
  factor: 1,
  low: 1,
  high: 1,
  of: 0,
})
