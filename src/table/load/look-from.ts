/** From which heat on a load's cone is worth a look. */
import { endOf } from '../firing/firing.ts'
import type { LoadState } from '../model/load-state.ts'

/** So far below where its list or chart has a cone fall it is looked at, K: no kiln's thermometer is off by more. Assumption. */
export const LOOK_FROM_K = 50

/** What a load's thermometer shows when its cone is worth a look, degC; undefined for a cone without an end point. */
export function lookFromC({ firing }: LoadState): number | undefined {
  const end = endOf(firing)
  return end && end.tempC - LOOK_FROM_K
}

/** Since when a load is read to be near its cone, table time, ms: where no hour of it is told it may be down from then on. */
export function coneNearAt(load: LoadState): number | undefined {
  const from = lookFromC(load)
  return from === undefined ? undefined : load.readings.find(({ tempC }) => tempC >= from)?.at
}
