import type { TableEvent } from '../../shared/events.ts'
import type { JournalRecord } from '../../shared/record.ts'
import { breath, inSlices, SLICE_MS } from '../store/slices.ts'
import { foldSteps } from '../table/fold/fold.ts'
import { type Seen, seenFrom } from '../table/fold/seen.ts'
import { forecastOf, needsWalls } from '../table/forecast/forecast.ts'
import type { Table } from '../table/model/state.ts'

export { asksNow, seenAt } from './meeting.ts'

/** So many events are a few ms of a slow phone. */
const EACH = 50

/** The fold of many records as `phone` sees them, without freezing the page, and what shows it first computed: it is kept with the pots. */
export async function foldInSlices(
  records: readonly JournalRecord<TableEvent>[],
  phone: string,
): Promise<{ readonly table: Table; readonly seen: Seen }> {
  const seen = seenFrom(records, phone)
  await breath()
  const table = await folded(seen.events)
  if (needsWalls(table)) await import('./with-coats.ts')
  await inSlices(Object.values(table.pots), (pot) => forecastOf(table, pot), 1)
  // What shows it is work enough for one slice.
  await breath()
  return { table, seen }
}

async function folded(events: Seen['events']): Promise<Table> {
  const steps = foldSteps(events, EACH)
  for (let since = performance.now(); ; ) {
    const { done, value } = steps.next()
    if (done) {
      await breath()
      return value
    }
    if (performance.now() - since < SLICE_MS) continue
    await breath()
    since = performance.now()
  }
}
