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

/** What a hand would say by KEEP: what is reckoned with stays, and that is an answer to these results, or to none. */
export function keeps(told: FactorTold): ReturnType<typeof takes> {
  const { used, taken, factor, usedDrip, results } = told
  if (!taken) return asTold(told)
  return {
    ...takes(told),
    factor: used,
    low: Math.min(used, factor.low),
    high: Math.max(used, factor.high),
    of: Math.max(1, results.length),
    drip: usedDrip,
  }
}

/** What a hand would say to have a subject run as told again. */
export const asTold = (told: FactorTold): ReturnType<typeof takes> => ({
  ...takes(told),
  factor: 1,
  low: 1,
  high: 1,
  of: 0,
})
