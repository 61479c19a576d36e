import type { Table } from '../model/state.ts'
import type { Card } from './card.ts'

const DAY_MS = 86_400_000
/** A copy outside the phone is old after so many days. Our choice. */
const OLD_DAYS = 30
/** Who says not now is left alone for so long, ms. Our choice. */
export const LATER_MS = 7 * DAY_MS

/** What is known of copies outside the phone; moments are epoch ms of its clock. */
export interface Copies {
  /** When the last one left it, if ever. */
  readonly copiedAt: number | undefined
  /** When somebody said not now last; 0 where nobody did. */
  readonly putOffAt: number
  /** When a coat or a result was last written into the journal, though the table was cleared since; undefined without one. */
  readonly workedAt: number | undefined
}

/** Whole days since a copy left the phone; undefined without one. A clock that was set back makes none of the future. */
export const daysSince = (copiedAt: number | undefined, nowMs: number): number | undefined =>
  copiedAt === undefined ? undefined : Math.max(0, Math.floor((nowMs - copiedAt) / DAY_MS))

/**
 * Whether it is time to ask for a copy outside the phone: the hands rest, coats went on or results came that no copy has, and
 * the last copy is old, or there never was one. `nowMs`: the phone's clock, epoch ms.
 */
export function isCopyDue(
  table: Table,
  card: Pick<Card, 'kind'>,
  { copiedAt, putOffAt, workedAt }: Copies,
  nowMs: number,
): boolean {
  if (card.kind !== 'closed' && card.kind !== 'empty') return false
  if (table.settings.student) return false
  const sinceMs = nowMs - putOffAt
  if (sinceMs >= 0 && sinceMs < LATER_MS) return false
  const days = daysSince(copiedAt, nowMs)
  if (days !== undefined && days < OLD_DAYS) return false
  if (workedAt !== undefined && workedAt > (copiedAt ?? Number.NEGATIVE_INFINITY)) return true
  const fromMs = (copiedAt ?? Number.NEGATIVE_INFINITY) - table.skewMs
  return Object.values(table.pots).some(
    ({ dips, fired }) => dips.some(({ outAt }) => outAt > fromMs) || fired?.some(({ at }) => at > fromMs),
  )
}
