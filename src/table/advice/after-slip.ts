import { worstZone } from '../../engine/wait/grade.ts'
import { forecastOf } from '../forecast/forecast.ts'
import { limitsOf, repairNow } from '../forecast/hypothetical-dip.ts'
import { nextCoat, planOf } from '../model/plan.ts'
import type { PotState, Table } from '../model/state.ts'

/** What a dip came to once its seconds were put right. */
export interface AfterSlip {
  readonly pot: PotState
  readonly holdS: number
  /** Likely coat where it comes nearest to a limit, mm. */
  readonly buildMm: number
  /** The coat that follows as planned, s; undefined when none does. */
  readonly plannedS: number | undefined
  /** Seconds that would be better for it, once this one is ready for it; 0: leave it out. Undefined: as planned. */
  readonly betterS: number | undefined
}

/** A dip as it now counts, and what its pot needs next; undefined for a dip that is on no pot. */
export function afterSlip(table: Table, dipId: string, now: number): AfterSlip | undefined {
  for (const pot of Object.values(table.pots)) {
    const dip = pot.dips.find((one) => one.dipId === dipId)
    const forecast = dip && forecastOf(table, pot)
    if (!dip || !forecast || forecast.pot.zones.length === 0) continue
    const planned = planOf(table, pot)[nextCoat(pot)]?.holdS
    // On the wall as it stands then: as wet as it is now it takes no coat.
    const repair = repairNow(table, pot, Math.max(now, forecast.ready.likely))
    return {
      pot,
      holdS: dip.holdS,
      buildMm: worstZone(forecast.pot.zones, limitsOf(table)).likelyMm,
      plannedS: planned,
      betterS: planned !== undefined && repair ? (repair.holdS ?? 0) : undefined,
    }
  }
  return undefined
}
