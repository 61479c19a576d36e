import type { ZoneForecast } from '../../engine/contract.ts'
import { dangersFor } from '../fired/danger.ts'
import { crawlDanger } from '../fired/limits.ts'
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

/** Pots crawled with less of this glaze than `zones` would have, and nobody answered yet. */
export function crawledWarning(
  table: Table,
  bucketId: string,
  zones: readonly ZoneForecast[],
): Warning | undefined {
  const danger = crawlDanger(table, bucketId)
  const last = danger?.crawled.at(-1)
  if (!danger || !last) return undefined
  const thickestMm = Math.max(
    ...zones.map(({ coats }) =>
      coats.reduce((sum, { glazeId, likelyMm }) => sum + (glazeId === bucketId ? likelyMm : 0), 0),
    ),
  )
  return thickestMm > danger.limitMm
    ? {
        kind: 'crawled',
        glaze: bucketId,
        number: last.facts.number,
        likelyMm: thickestMm,
        limitMm: danger.limitMm,
      }
    : undefined
}
