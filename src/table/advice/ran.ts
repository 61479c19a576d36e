import type { ZoneForecast } from '../../engine/contract.ts'
import { dangersFor } from '../fired/danger.ts'
import { crawlDangers, thickestMm } from '../fired/limits.ts'
import { onShelf } from '../fired/results.ts'
import type { PotState, Table } from '../model/state.ts'
import type { Warning } from './warning.ts'

/** What fired pots say against this glaze on this pot, until it is taken, or says no more than is reckoned with. */
export function ranWarning(table: Table, pot: PotState, bucketId: string): Warning | undefined {
  const [danger] = dangersFor(table, pot, bucketId)
  if (!danger) return undefined
  const { told, why, worst } = danger
  const { underId, used, factor } = told
  const of = {
    kind: 'ran',
    over: bucketId,
    used,
    ...(underId === undefined ? {} : { under: underId }),
  } as const
  if (!worst) return { ...of, to: 'gone' }
  const { number } = worst.pot.facts
  if (why !== 'more') return { ...of, number, to: why === 'drip' ? 'drip' : 'all-the-same' }
  const to = onShelf(worst.found.run) ? 'shelf' : worst.pastFoot ? 'past-foot' : 'ran'
  return { ...of, number, to, factor: factor.likely }
}

/** Pots crawled with less of this glaze than `zones` would have, and nobody took that yet. */
export function crawledWarning(
  table: Table,
  bucketId: string,
  zones: readonly ZoneForecast[],
): Warning | undefined {
  for (const told of crawlDangers(table, bucketId)) {
    const { underId, crawled, limitMm } = told
    const likelyMm = thickestMm(zones, told)
    const last = crawled.at(-1)
    if (last && likelyMm > limitMm) {
      const under = underId === undefined ? {} : { under: underId }
      const { number } = last.pot.facts
      return { kind: 'crawled', glaze: bucketId, ...under, number, likelyMm, limitMm }
    }
  }
  return undefined
}
