import type { TableEvent } from '../../shared/events.ts'
import { isBy, type JournalRecord } from '../../shared/record.ts'
import type { Clock } from '../device/ports.ts'
import type { LifeSign } from '../device/seen.ts'
import type { Table } from '../table/model/state.ts'
import type { Records } from './records.ts'

/** A smaller difference is the slow correction of the phone's clock, ms. */
export const JUMP_MS = 2000

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
  // What is no moment, or later than any order, is a life sign or a record that was damaged: it says nothing.
  if (!(knownMs < LATEST_MS) || startMs >= knownMs - JUMP_MS) return undefined
  const outs = Object.values(table.pots).flatMap((pot) =>
    pot.dips
      .filter(({ how, hands }) => how === 'planned' && hands !== 2)
      .map(({ outAt }) => outAt + table.skewMs),
  )
  // Later than any count reaches from there: a moment that was told, not counted.
  const running = outs.filter((outMs) => outMs > knownMs && outMs - knownMs < LONGEST_COUNT_MS)
  return Math.max(knownMs, ...running.map((outMs) => outMs + 1))
}

/** 2100, epoch ms. */
const LATEST_MS = 4_102_444_800_000

const LONGEST_COUNT_MS = 10 * 60_000

/** A jump that another window of this phone wrote down, and when it came here, page time. */
export interface WrittenJump {
  readonly byMs: number
  readonly pageMs: number
}

/** Jumps of this phone's clock: from the moment on that a record tells of one all goes by the clock as it is now. */
export interface Jumps {
  /** By other windows, the latest ten. */
  written(): readonly WrittenJump[]
  /** `note` writes it down. */
  write(byMs: number, note: () => void): void
  /** How far the clock was set all in all, ms: of the table, and what is written down and not folded yet. */
  skewMs(): number
}

/** Before anybody else follows the journal: who folds a jump finds that the clock has it. */
export function watchJumps(
  { journal, table }: Pick<Records, 'journal' | 'table'>,
  clock: Pick<Clock, 'pageMs' | 'untakenMs' | 'taken'>,
): Jumps {
  let own = false
  let written: readonly WrittenJump[] = []
  /** Not folded while the table stands `from` there. */
  let told = { from: Number.NaN, byMs: 0 }
  const skewMs = () => {
    const { skewMs: folded } = table.peek()
    return folded === told.from ? folded + told.byMs : folded
  }
  const take = (byMs: number) => {
    told = { from: table.peek().skewMs, byMs: skewMs() - table.peek().skewMs + byMs }
    clock.taken(byMs)
  }
  journal.subscribe((change) => {
    if (change.kind !== 'records' || own) return
    for (const { event } of change.records.filter(isBy(journal.phone))) {
      if (event.kind !== 'clock-moved') continue
      const { byMs } = event
      written = [...written.slice(-9), { byMs, pageMs: clock.pageMs() }]
      const left = clock.untakenMs()
      // Else this window took it for sleep.
      if (left * byMs > 0 && Math.abs(byMs) <= Math.abs(left) + JUMP_MS) take(byMs)
    }
  })
  return {
    written: () => written,
    write(byMs, note) {
      own = true
      take(byMs)
      note()
      own = false
    },
    skewMs,
  }
}

/**
 * The clock that the order of a hit at `atMs` follows, epoch ms: as it went before it was set, by a jump among the
 * hit's own `events` too, or as it goes, whichever is behind. A year that was set by mistake is in no order, then, nor is one that was set right.
 */
export const orderMs = (atMs: number, skewMs: number, events: readonly TableEvent[]): number =>
  atMs -
  Math.max(
    0,
    events.reduce((sum, event) => (event.kind === 'clock-moved' ? sum + event.byMs : sum), skewMs),
  )
