import type { TableEvent } from '../../shared/events.ts'
import { isBy, type JournalRecord } from '../../shared/record.ts'
import type { LifeSign } from '../device/seen.ts'
import type { Table } from '../table/model/state.ts'

/** A smaller difference is the slow correction of the phone's clock, ms. */
const JUMP_MS = 2000

/**
 * When this phone was last known to be at work, epoch ms of its clock as it goes now; 0 where it never was. `seen`: its
 * last life sign, which browsers write late: it may be older than `skewMs`, how far the clock has been set by now.
 */
export function lastKnownMs(
  records: readonly JournalRecord<TableEvent>[],
  phone: string,
  seen: LifeSign | undefined,
  skewMs: number,
): number {
  const own = records.findLast(isBy(phone))
  const seenMs = seen && seen.atMs - (seen.skewMs ?? skewMs) + skewMs
  return Math.max(seenMs ?? 0, own?.at ?? 0)
}

/**
 * Where the clock was set back while the app was closed: the moment that it is now at the earliest, on the clock as it
 * was, epoch ms. A count that was on then is over: no count lives on from an earlier page once its time may be over.
 */
export function earliestNow(table: Table, knownMs: number, startMs: number): number | undefined {
  if (startMs >= knownMs - JUMP_MS) return undefined
  const outs = Object.values(table.pots).flatMap((pot) =>
    pot.dips
      .filter(({ how, hands }) => how === 'planned' && hands !== 2)
      .map(({ outAt }) => outAt + table.skewMs),
  )
  // Later than any count reaches from there: a moment that was told, not counted.
  const running = outs.filter((outMs) => outMs > knownMs && outMs - knownMs < LONGEST_COUNT_MS)
  return Math.max(knownMs, ...running.map((outMs) => outMs + 1))
}

const LONGEST_COUNT_MS = 10 * 60_000

/** A jump that another window of this phone wrote down, and when it came here, page time. */
export interface WrittenJump {
  readonly byMs: number
  readonly pageMs: number
}

/** What of a jump of the clock, seen since `sinceMs` of page time, no other window has written down yet; 0 if all is. */
export function unwritten(byMs: number, sinceMs: number, written: readonly WrittenJump[]): number {
  const known = written.filter(({ pageMs }) => pageMs >= sinceMs).reduce((sum, jump) => sum + jump.byMs, 0)
  return Math.abs(byMs - known) <= JUMP_MS ? 0 : byMs - known
}

/**
 * The clock that the order of a hit at `atMs` follows, epoch ms: as it went before it was set, by a jump among the
 * hit's own `events` too. A year that was set by mistake is in no order, then.
 */
export const orderMs = (atMs: number, skewMs: number, events: readonly TableEvent[]): number =>
  atMs - events.reduce((sum, event) => (event.kind === 'clock-moved' ? sum + event.byMs : sum), skewMs)
