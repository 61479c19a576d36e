import type { TableEvent } from '../../../shared/events.ts'
import type { Action, Refusal } from '../model/action.ts'
import type { Potter } from '../model/potters.ts'
import type { PotState, Table } from '../model/state.ts'

/** Moment and identity of a hit: `at` is the phone's epoch ms at touch-down, `hit` is unique on all phones. */
export interface HitStamp {
  readonly at: number
  readonly hit: string
  /** Whose hit it is; the first pair of hands where nothing is said. */
  readonly hands?: Potter
}

/** Events to append as one, in order, or why nothing happens. */
export type Decision = { readonly events: readonly TableEvent[] } | { readonly refusal: Refusal }

/** A hit that changes nothing. */
export const NOTHING: Decision = { refusal: { code: 'nothing-to-do' } }
/** Nothing happens, for this reason. */
export const refuse = (code: Refusal['code'], facts?: Refusal['facts']): Decision => ({
  refusal: { code, facts },
})

/** Decides on actions that this file leaves to others. */
export type More = (table: Table, action: Action, stamp: HitStamp) => Decision

/** Decides about a pot that is on the table, else refuses. */
export function onPot(table: Table, potId: string, then: (pot: PotState) => Decision): Decision {
  const pot = table.pots[potId]
  return pot && !pot.gone ? then(pot) : refuse('unknown-pot')
}

/** Decides about a dip that is known, else refuses. */
export function onDip(
  table: Table,
  dipId: string,
  then: (dip: PotState['dips'][number], pot: PotState) => Decision,
): Decision {
  for (const pot of Object.values(table.pots)) {
    const dip = pot.dips.find((d) => d.dipId === dipId)
    if (dip) return then(dip, pot)
  }
  return refuse('unknown-dip')
}
