import { dangersFor } from '../fired/danger.ts'
import type { PotState, Table } from '../model/state.ts'
import type { Warning } from './warning.ts'

/** What fired pots say against this glaze on this pot, until it is answered. */
export function ranWarning(table: Table, pot: PotState, bucketId: string): Warning | undefined {
  const [danger] = dangersFor(table, pot, bucketId)
  if (!danger) return undefined
  const { told, worst } = danger
  const to = worst.seen?.kind === 'shelf' ? 'shelf' : worst.pastFoot ? 'past-foot' : 'ran'
  return {
    kind: 'ran',
    over: bucketId,
    ...(told.underId === undefined ? {} : { under: told.underId }),
    factor: told.factor.likely,
    of: told.results.length,
    number: worst.pot.facts.number,
    to,
  }
}
