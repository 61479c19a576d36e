import type { FiringFacts } from '../../../shared/nouns.ts'
import { atLeastOverK, type ConeStood, heatOf, overPlanK } from '../../engine/fired/heat.ts'
import { coneUnder, endOf, reachedBy } from '../firing/firing.ts'
import { mayHaveReached } from '../firing/highest.ts'
import type { ConeSeen, LoadState } from '../model/load-state.ts'

/** A firing's heat at one level of it. Where its own cones were seen it is told apart from the rest of the load. */
export interface Heat {
  readonly key: string
  readonly mean: number
  readonly sd: number
  /** Over the plan, K; null where no cone says it. */
  readonly overK: number | null
  /** It stayed more than a cone below its plan. */
  readonly short: boolean
  /** No cone says how far it went, and its thermometer stayed so far below that it was not fired as planned. */
  readonly unreached: boolean
}

const MIN_MS = 60_000
/** A cone that was looked at no longer before the end stood so at the end: it bends no sooner. Our choice. */
const AT_END_MS = 10 * MIN_MS
/** No kiln's thermometer is off by more, K. Assumption. */
const READ_K = 50

/** How the cones stood at the end. What was seen of one before says no more than how far the fire had come by then. */
function stood({ cones, firing, offAt, openedAt }: LoadState, of: readonly ConeSeen[]): readonly ConeStood[] {
  const fromAt = (offAt ?? openedAt ?? Number.POSITIVE_INFINITY) - AT_END_MS
  // The last word on each cone.
  const last = new Map((of.length > 0 ? of : cones).map((seen) => [seen.cone, seen]))
  return [...last.values()].flatMap(({ cone, is, at }): ConeStood[] => {
    const end = endOf({ ...firing, cone })
    if (!end) return []
    const endC = end.tempC
    if (is === 'flat' || is === 'down') return [{ endC, is: 'down' }]
    return at >= fromAt ? [{ endC, is }] : is === 'bending' ? [{ endC, is: 'bent' }] : []
  })
}

/** Whether a thermometer that was read in the fire says that not even the cone before the wanted one can have fallen. */
function stayedBelow(load: LoadState, underC: number): boolean {
  const { readings, firing, offAt, openedAt } = load
  const endAt = offAt ?? openedAt
  const read = readings.filter(({ at }) => endAt !== undefined && at <= endAt)
  const last = read.at(-1)
  if (!last || endAt === undefined) return false
  if (mayHaveReached(load, underC - READ_K, endAt)) return false
  return !soaked(firing, [...read, { ...last, at: endAt + 1 }], underC)
}

/** Whether the heat of a long hold brought the cone before the wanted one down, cooler than it falls in a plain rise. */
function soaked(firing: FiringFacts, read: LoadState['readings'], underC: number): boolean {
  const log = read.map(({ at, tempC }) => ({ atMin: (at - (read[0]?.at ?? 0)) / MIN_MS, tempC }))
  const cone = firing.make === 'american' ? reachedBy(log)?.reached : undefined
  return cone != null && (endOf({ ...firing, cone })?.tempC ?? 0) >= underC
}

/** What a load's cones say of the heat on a level of it, or its thermometer where they say nothing. */
export function heatAt(load: LoadState, storey: number | undefined): Heat {
  const { firing, cones, loadId } = load
  const own = cones.filter((seen) => seen.storey !== undefined && seen.storey === storey)
  const key = own.length > 0 ? `${loadId} ${storey}` : loadId
  const end = endOf(firing)
  if (!end) return { key, mean: 0, sd: heatOf(null, 0).sd, overK: null, short: false, unreached: false }
  const seen = stood(load, own)
  const overK = overPlanK(seen, end.tempC)
  const under = coneUnder(firing)
  const underC = under === undefined ? undefined : endOf({ ...firing, cone: under })?.tempC
  const fell = underC !== undefined && end.tempC + atLeastOverK(seen, end.tempC) >= underC
  const unreached = overK === null && underC !== undefined && !fell && stayedBelow(load, underC)
  const short = unreached || (overK !== null && underC !== undefined && end.tempC + overK < underC)
  return { key, ...heatOf(overK, end.tempC), overK, short, unreached }
}
