import type { Table } from '../model/state.ts'
import { lastWaxedAt } from './wax-pan.ts'

/** A pan of wax can be used about this long after it was switched on. Common practice, no source. */
const WARMS_MS = 15 * 60_000

/** When a pan that was switched on is warm, table time, ms; undefined while it is off, and once it has waxed a foot. */
export function panWarmAt(table: Table): number | undefined {
  const { pan } = table
  return pan && lastWaxedAt(table) < pan.onAt ? pan.onAt + WARMS_MS : undefined
}

/** How long the next foot waits for the pan to be warm, ms: one that is still off is switched on at `now`. None without hot wax. */
export function panWarmsMs(table: Table, now: number): number {
  if (table.settings.wax !== 'hot') return 0
  return table.pan ? Math.max(0, (panWarmAt(table) ?? now) - now) : WARMS_MS
}
