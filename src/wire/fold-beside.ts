import type { TableEvent } from '../../shared/events.ts'
import type { JournalRecord } from '../../shared/record.ts'
import { breath, inSlices, throughSteps } from '../store/slices.ts'
import { foldSteps } from '../table/fold/fold.ts'
import { type Seen, seenSteps } from '../table/fold/seen.ts'
import { forecastOf, needsWalls } from '../table/forecast/forecast.ts'
import type { Table } from '../table/model/state.ts'

export { asksNow } from './asks-now.ts'
export { seenAt } from './meeting.ts'

/** So many events are a few ms of a slow phone. */
const EACH = 50

/** The fold of many records as `phone` sees them, without freezing the page, and what shows it first computed: it is kept with the pots. */
export async function foldInSlices(
  records: readonly JournalRecord<TableEvent>[],
  phone: string,
): Promise<{ readonly table: Table; readonly seen: Seen }> {
  const seen = await throughSteps(seenSteps(records, phone))
  const table = await throughSteps(foldSteps(seen.events, EACH))
  const pots = Object.values(table.pots)
  if (needsWalls(table)) {
    await import('./with-coats.ts')
    const { lessonFor, lessonOf, lessonsUsed, runOf } = await import('../table/forecast/learning.ts')
    await breath()
    // One by one what a lesson learns from: it is kept with what was seen.
    await inSlices(lessonsUsed(table), runOf, 1)
    await breath()
    // Then what all of it teaches, and what of each glaze: else the first pot's wall would bring all of these with it.
    lessonOf(table)
    for (const bucketId of new Set(pots.flatMap(({ dips }) => dips.at(-1)?.bucketId ?? []))) {
      await breath()
      lessonFor(table, bucketId)
    }
    await breath()
  }
  await inSlices(pots, (pot) => forecastOf(table, pot), 1)
  // What shows it is work enough for one slice.
  await breath()
  return { table, seen }
}
