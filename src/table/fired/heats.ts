import type { FiringFacts } from '../../../shared/nouns.ts'
import { type ConeStood, heatOf, overPlanK } from '../../engine/fired/heat.ts'
import { coneUnder, endOf } from '../firing/firing.ts'
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
}

function stood(cones: readonly ConeSeen[], firing: FiringFacts): readonly ConeStood[] {
  // The last word on each cone.
  const last = new Map(cones.map((seen) => [seen.cone, seen]))
  return [...last.values()].flatMap(({ cone, is }): ConeStood[] => {
    const end = endOf({ ...firing, cone })
    return end ? [{ endC: end.tempC, is: is === 'flat' ? 'down' : is }] : []
  })
}

/** What a load's cones say of the heat on a level of it. */
export function heatAt(load: LoadState, storey: number | undefined): Heat {
  const { firing, cones, loadId } = load
  const own = cones.filter((seen) => seen.storey !== undefined && seen.storey === storey)
  const shared = own.length > 0 ? own : cones
  const key = own.length > 0 ? `${loadId} ${storey}` : loadId
  const end = endOf(firing)
  if (!end) return { key, mean: 0, sd: heatOf(null, 0).sd, overK: null, short: false }
  const overK = overPlanK(stood(shared, firing), end.tempC)
  const under = coneUnder(firing)
  const underC = under === undefined ? undefined : endOf({ ...firing, cone: under })?.tempC
  const short = overK !== null && underC !== undefined && end.tempC + overK < underC
  return { key, ...heatOf(overK, end.tempC), overK, short }
}
