import type { Stamped } from '../../shared/events.ts'
import { breath, inSlices, SLICE_MS } from '../store/slices.ts'
import { foldSteps } from '../table/fold/fold.ts'
import { forecastOf, needsWalls } from '../table/forecast/forecast.ts'
import type { Table } from '../table/model/state.ts'

/** So many events are a few ms of a slow phone. */
const EACH = 50

/** The fold of many events without freezing the page, and what shows it first computed: it is kept with the pots. */
export async function foldInSlices(events: readonly Stamped[], phone: string): Promise<Table> {
  const table = await folded(events, phone)
  if (needsWalls(table)) await import('./with-coats.ts')
  await inSlices(Object.values(table.pots), (pot) => forecastOf(table, pot), 1)
  // What shows it is work enough for one slice.
  await breath()
  return table
}

async function folded(events: readonly Stamped[], phone: string): Promise<Table> {
  const steps = foldSteps(events, phone, EACH)
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
