import type { Table } from '../model/state.ts'

/** An hour of the kiln that passed so long ago is forgotten. */
const DEADLINE_KEPT_MS = 12 * 3_600_000

/** When loading begins, table time ms; undefined without an hour of the kiln, or long after it. */
export function loadAt(table: Table, now: number): number | undefined {
  const { kilnOnAt, loadMin } = table.settings
  if (kilnOnAt === null) return undefined
  const onAt = kilnOnAt - table.skewMs
  return now - onAt > DEADLINE_KEPT_MS ? undefined : onAt - loadMin * 60_000
}
