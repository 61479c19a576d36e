/** The clock was set, under the page or while it was away: what is written down of it. Fetched when it comes to that. */
import type { Signal } from '@preact/signals'
import type { ClockJump } from '../device/ports.ts'
import type { Away } from '../screens/app.ts'
import type { Action } from '../table/model/action.ts'
import type { Table } from '../table/model/state.ts'
import { JUMP_MS, type Jumps, type WrittenJump } from './clock-set.ts'
import type { Records } from './records.ts'

/** What of a jump of the clock, seen since `sinceMs` of page time, no other window has written down yet; 0 if all is. */
export function unwritten(byMs: number, sinceMs: number, written: readonly WrittenJump[]): number {
  const known = written.filter(({ pageMs }) => pageMs >= sinceMs).reduce((sum, jump) => sum + jump.byMs, 0)
  return Math.abs(byMs - known) <= JUMP_MS ? 0 : byMs - known
}

/** One window at a time. */
const alone = <T>(work: () => Promise<T>): Promise<T> =>
  navigator.locks ? navigator.locks.request('bucketside-clock', work) : work()

/** So long after it was written another window finds a jump in the database, ms. */
const WRITTEN_MS = 400

/** Writes a jump down that was seen, or what of it no other window has written yet. */
export const writeJump = (
  { journal, readOnly }: Pick<Records, 'journal' | 'readOnly'>,
  jumps: Jumps,
  note: (action: Action) => void,
  { byMs, sinceMs }: ClockJump,
): Promise<void> =>
  alone(async () => {
    await journal.refresh().catch(() => {})
    const rest = unwritten(byMs, sinceMs, jumps.written())
    if (rest === 0 || readOnly.peek()) return
    jumps.write(rest, () => note({ do: 'clock-moved', byMs: Math.round(rest) }))
    await new Promise((resolve) => setTimeout(resolve, WRITTEN_MS))
  })

/**
 * How far the clock is to be taken as set on, ms, where it had been set back and the phone has been away at least as long:
 * it was wrong then and is right now, or it was right and that time has passed. The shorter time is believed, so that waits get longer
 * and never shorter, and the table is on the clock's time again; but where something is hot, the longer. 0 where nothing is to be.
 * `knownMs`: when this phone was last at work, on its clock as it went then; `nowMs` on its clock now, epoch ms.
 */
export function setOnMs(table: Table, knownMs: number, nowMs: number): number {
  const byMs = -table.skewMs
  const isLit = Object.values(table.loads ?? {}).some(
    ({ litAt, offAt, openedAt }) => litAt !== undefined && offAt === undefined && openedAt === undefined,
  )
  return byMs > 0 && nowMs >= knownMs + byMs && !table.pan && !isLit ? byMs : 0
}

/** Writes that down, once among all windows; that time was none that the page was away. Resolves to what was written, ms. */
export async function setRight(
  {
    journal,
    table,
    readOnly,
    away,
  }: Pick<Records, 'journal' | 'table' | 'readOnly'> & { readonly away: Signal<Away | undefined> },
  note: (action: Action) => void,
  knownMs: number,
): Promise<number> {
  const look = async () => {
    // Another window may have written it.
    await journal.refresh().catch(() => {})
    const byMs = readOnly.peek() ? 0 : Math.round(setOnMs(table.peek(), knownMs, Date.now()))
    if (byMs > 0) note({ do: 'clock-moved', byMs })
    const seen = away.peek()
    if (seen) away.value = { ...seen, to: seen.to - byMs }
    return byMs
  }
  return alone(look)
}
