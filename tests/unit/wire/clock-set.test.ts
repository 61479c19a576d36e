import { signal } from '@preact/signals'
import { describe, expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { createRecords, type JournalRecord } from '../../../shared/record.ts'
import type { Change } from '../../../src/store/contract.ts'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { reduce } from '../../../src/table/fold/reduce.ts'
import { earliestNow, lastKnownMs, watchJumps } from '../../../src/wire/clock-set.ts'
import { setOnMs, unwritten } from '../../../src/wire/jumped.ts'
import type { Records } from '../../../src/wire/records.ts'
import { Play } from '../table/play.ts'

const AT = Date.UTC(2026, 2, 3, 18)
const record = (writer: string, event: TableEvent, at: number): JournalRecord<TableEvent> =>
  createRecords([event], { writer, seq: 1, order: at }, { at, tz: 0 })[0] as JournalRecord<TableEvent>

describe('the last moment a phone was at work', () => {
  const held = record('own.one', { kind: 'held' }, AT)
  test('is its life sign or its own last record, whichever is later', () => {
    expect(lastKnownMs([held], 'own', { atMs: AT + 5, skewMs: 0 }, 0)).toBe(AT + 5)
    expect(lastKnownMs([held], 'own', { atMs: AT - 5, skewMs: 0 }, 0)).toBe(AT)
    expect(lastKnownMs([], 'own', undefined, 0)).toBe(0)
  })
  test("is not another phone's, whose clock may be ahead", () => {
    const other = record('other.one', { kind: 'resumed' }, AT + 600_000)
    expect(lastKnownMs([held, other], 'own', undefined, 0)).toBe(AT)
  })
  test('is on the clock as it goes now, though its life sign was written late, before the clock was set back', () => {
    const moved = record('own.two', { kind: 'clock-moved', byMs: -3_600_000 }, AT - 3_600_000)
    const hit = record('own.two', { kind: 'resumed' }, AT - 3_590_000)
    const seen = { atMs: AT - 2000, skewMs: 0 }
    expect(lastKnownMs([held, moved, hit], 'own', seen, -3_600_000)).toBe(AT - 3_590_000)
    // By an earlier version: on the clock as it goes.
    expect(lastKnownMs([held], 'own', { atMs: AT + 5 }, -3_600_000)).toBe(AT + 5)
  })
})

describe('a clock that was set back while the app was closed', () => {
  const dipping = () => {
    const play = new Play().act({ do: 'lay-demo' })
    while (play.card.big?.do !== 'start') {
      if (play.card.big) play.bar()
      play.wait(20)
    }
    return play.bar().wait(2)
  }

  test.each([5, 60, 2 * 24 * 60])('by %d min: its count is over, and time goes on from there', (minutes) => {
    const play = dipping()
    expect(play.card.kind).toBe('count')
    const startMs = play.nowMs - minutes * 60_000
    const earliestMs = earliestNow(play.table, play.nowMs, startMs)
    const byMs = startMs - (earliestMs ?? Number.NaN)
    const moved = { id: 'm', hit: 'm', at: startMs, event: { kind: 'clock-moved', byMs } } as const
    const table = reduce(play.table, moved)
    const now = startMs - table.skewMs
    expect(cardOf(table, now).kind).not.toBe('count')
    expect(now).toBeGreaterThanOrEqual(play.nowMs)
    expect(now).toBeLessThan(play.nowMs + 60_000)
  })

  test('without a count goes on from the last moment; a clock that went on says nothing', () => {
    const { table, nowMs } = new Play().act({ do: 'lay-demo' })
    expect(earliestNow(table, nowMs, nowMs - 300_000)).toBe(nowMs)
    expect(earliestNow(table, nowMs, nowMs + 10)).toBeUndefined()
    expect(earliestNow(table, nowMs, nowMs - 1500)).toBeUndefined()
  })
})

test.each([Number.NaN, 1e300, 8e15])(
  'a life sign or record that was damaged, %d, is no clock that was set back',
  (knownMs) => {
    expect(earliestNow(new Play().table, knownMs, AT)).toBeUndefined()
  },
)

describe('a clock that was set back long ago', () => {
  const DAY_MS = 86_400_000
  const back = (play = new Play()) => ({ ...play.table, skewMs: -2 * DAY_MS })

  test('is taken as set right once the phone was away for as long: time never runs back', () => {
    expect(setOnMs(back(), AT, AT + 2 * DAY_MS - 1)).toBe(0)
    const nowMs = AT + 2 * DAY_MS + 60_000
    expect(setOnMs(back(), AT, nowMs)).toBe(2 * DAY_MS)
    // A minute after the moment that was known, on the table's time: no wait gets shorter.
    expect(nowMs - (back().skewMs + 2 * DAY_MS) - (AT - back().skewMs)).toBe(60_000)
    expect(setOnMs({ ...back(), skewMs: 2 * DAY_MS }, AT, nowMs)).toBe(0)
  })
  test('but not where something is hot: what is asked of it is never late', () => {
    const lit = back(new Play().act({ do: 'lay-demo' }).act({ do: 'wax-pan', is: 'on' }))
    expect(setOnMs(lit, AT, AT + 3 * DAY_MS)).toBe(0)
  })
})

describe('a jump that two windows see', () => {
  test('is written by one of them', () => {
    expect(unwritten(-300_000, 1000, [])).toBe(-300_000)
    expect(unwritten(-300_000, 1000, [{ byMs: -300_400, pageMs: 1500 }])).toBe(0)
  })
  test('and another one before it is another one', () => {
    expect(unwritten(-300_000, 1000, [{ byMs: -300_000, pageMs: 900 }])).toBe(-300_000)
    expect(unwritten(-600_000, 1000, [{ byMs: -300_000, pageMs: 1100 }])).toBe(-300_000)
  })
})

describe('from the jump of a clock to its record', () => {
  const HOUR_MS = 3_600_000
  /** A page whose clock was set by so much, its journal, and its table, which is folded when the test says so. */
  function page(byMs: number) {
    let untakenMs = byMs
    const table = signal(new Play().table)
    const listeners: ((change: Change<TableEvent>) => void)[] = []
    const journal = {
      phone: 'own',
      subscribe: (listener: (typeof listeners)[number]) => listeners.push(listener),
    } as unknown as Records['journal']
    const clock = {
      pageMs: () => 0,
      untakenMs: () => untakenMs,
      taken: (ms: number) => {
        untakenMs -= ms
      },
    }
    const jumps = watchJumps({ journal, table }, clock)
    const tell = (event: TableEvent, writer = 'own.two') => {
      const change = { kind: 'records', records: [record(writer, event, AT)], atEnd: true } as const
      for (const listener of listeners) listener(change)
    }
    return {
      jumps,
      tell,
      /** Moves by the jump in no moment: clock and table have it together. */
      nowMs: () => AT + byMs - untakenMs - jumps.skewMs(),
      fold: (ms: number) => {
        table.value = { ...table.value, skewMs: table.value.skewMs + ms }
      },
    }
  }

  test.each([HOUR_MS, -HOUR_MS])(
    'time goes on as it went, before it, after it, and once it is folded',
    (byMs) => {
      const { jumps, tell, nowMs, fold } = page(byMs)
      expect(nowMs()).toBe(AT)
      jumps.write(byMs, () => {
        expect(nowMs()).toBe(AT)
        tell({ kind: 'clock-moved', byMs }, 'own.one')
      })
      expect(nowMs()).toBe(AT)
      fold(byMs)
      expect(nowMs()).toBe(AT)
      expect(jumps.written()).toEqual([])
    },
  )

  test('another window wrote it down: the same', () => {
    const { jumps, tell, nowMs, fold } = page(HOUR_MS)
    tell({ kind: 'clock-moved', byMs: HOUR_MS })
    expect(nowMs()).toBe(AT)
    expect(jumps.skewMs()).toBe(HOUR_MS)
    fold(HOUR_MS)
    expect(nowMs()).toBe(AT)
    expect(jumps.written()).toMatchObject([{ byMs: HOUR_MS }])
  })

  test('what this window took for sleep, and what another phone did, moves its clock not', () => {
    const { tell, nowMs, jumps } = page(0)
    tell({ kind: 'clock-moved', byMs: HOUR_MS })
    tell({ kind: 'clock-moved', byMs: HOUR_MS }, 'other.one')
    expect(nowMs()).toBe(AT)
    expect(jumps.written()).toHaveLength(1)
  })

  test('two jumps before either is folded', () => {
    const { jumps, nowMs, fold } = page(HOUR_MS + 300_000)
    jumps.write(HOUR_MS, () => {})
    jumps.write(300_000, () => {})
    expect(nowMs()).toBe(AT)
    fold(HOUR_MS + 300_000)
    expect(nowMs()).toBe(AT)
  })
})
