import type { Table } from '../model/state.ts'

/** A pan of hot wax is asked about this long after somebody said that they are beside it. Our choice. */
const ASK_EVERY_MS = 10 * 60_000
/** And when nobody has touched the phone for this long: the hands may have left the room. */
const UNTOUCHED_MS = 5 * 60_000

export interface PanAsk {
  readonly onMs: number
  /** Grows each time it falls due anew, so that it is heard again. */
  readonly times: number
}

/** Whether to ask if somebody is beside the pan, at table time `now`. Nothing while it is off. */
export function panAsk(table: Table, now: number): PanAsk | undefined {
  const { pan } = table
  if (!pan) return undefined
  const touchedAt = Math.max(pan.watchedAt, table.hits.at(-1)?.at ?? pan.watchedAt)
  const dueAt = Math.min(pan.watchedAt + ASK_EVERY_MS, touchedAt + UNTOUCHED_MS)
  if (now < dueAt) return undefined
  return { onMs: now - pan.onAt, times: 1 + Math.floor((now - dueAt) / UNTOUCHED_MS) }
}
