import { potsOnTable } from '../model/plan.ts'
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
  const { watchedAt } = pan
  const touchedAt = Math.max(watchedAt, table.hits.at(-1)?.at ?? 0)
  const dueAt = Math.min(watchedAt + ASK_EVERY_MS, touchedAt + UNTOUCHED_MS)
  if (now < dueAt) return undefined
  return { onMs: now - pan.onAt, times: 1 + Math.floor((now - dueAt) / UNTOUCHED_MS) }
}

/** When a foot was waxed last, table time, ms; minus infinity where none was. */
export const lastWaxedAt = (table: Table): number =>
  Math.max(
    Number.NEGATIVE_INFINITY,
    ...potsOnTable(table).map(({ waxedAt }) => waxedAt ?? Number.NEGATIVE_INFINITY),
  )

/** The pan is on, no foot is left to wax, and nobody has said since that it is to stay on. */
export function isWaxDone(table: Table): boolean {
  if (!table.pan || table.pan.stays) return false
  const isLeft = potsOnTable(table).some(
    ({ waxedAt, washedAt, dips, later }) =>
      waxedAt === undefined && washedAt === undefined && dips.length === 0 && !later,
  )
  return !isLeft && Number.isFinite(lastWaxedAt(table))
}
