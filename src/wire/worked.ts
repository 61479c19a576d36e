import type { Stamped } from '../../shared/events.ts'
import { isOfOpening } from '../../shared/opening-events.ts'
import { takenBack } from '../table/fold/read-ahead.ts'

/**
 * When a coat went on, or a result came, last: by all that the journal holds, also of a table that was cleared since. Epoch
 * ms as it was written; undefined where nothing was done, or all of it was taken back.
 */
export function workedAt(records: readonly Stamped[]): number | undefined {
  const back = takenBack(records)
  const works = records.filter(
    ({ event, hit }) => (event.kind === 'dipped' || isOfOpening(event)) && !back.has(hit),
  )
  return works.length > 0 ? works.reduce((last, { at }) => Math.max(last, at), 0) : undefined
}
