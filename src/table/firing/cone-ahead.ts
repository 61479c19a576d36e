import type { Band } from '../../engine/contract.ts'
import { coneFallsMin } from '../../engine/melt/cone-watch.ts'
import type { Table } from '../model/state.ts'
import { endOf, firingOf, USUAL_FIRING } from './firing.ts'

/** When the cone of the firing to come falls, minutes after the last of the kept readings; undefined while that cannot be told. */
export function coneAheadOf(table: Table): { readonly cone: string; readonly fallsMin: Band } | undefined {
  const firing = firingOf(table) ?? USUAL_FIRING
  const end = endOf(firing)
  if (!table.log || !end || firing.make !== 'american') return undefined
  const fallsMin = coneFallsMin(table.log, firing.cone, end.tempC)
  return fallsMin ? { cone: firing.cone, fallsMin } : undefined
}
