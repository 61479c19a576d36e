import type { FactorTold } from './lesson.ts'

/** What a hand would take by USE IT, as the action says it. */
export const takes = ({ bucketId, underId, factor, results, drip, usedDrip }: FactorTold) => ({
  do: 'take-lesson' as const,
  bucketId,
  ...(underId === undefined ? {} : { underId }),
  factor: factor.likely,
  low: factor.low,
  high: factor.high,
  of: results.length,
  ...(drip === undefined ? {} : { drip: Math.max(drip, usedDrip) }),
  results: results.map(({ found }) => found.id),
})

/** What a hand would say by KEEP: what is reckoned with stays, and that is an answer to these results. */
export function keeps(told: FactorTold): ReturnType<typeof takes> {
  const { used, factor, usedDrip, drip } = told
  const kept = { ...takes(told), factor: used, ...(drip === undefined ? {} : { drip: usedDrip }) }
  return used === 1
    ? { ...kept, low: 1, high: 1, of: 0 }
    : { ...kept, low: Math.min(used, factor.low), high: Math.max(used, factor.high) }
}

/** What a hand would say to have a subject run as told again. */
export const asTold = (told: FactorTold): ReturnType<typeof takes> => ({
  ...takes(told),
  factor: 1,
  low: 1,
  high: 1,
  of: 0,
})
