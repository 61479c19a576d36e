import { describe, expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { createRecords, type JournalRecord } from '../../../shared/record.ts'
import { cardOf } from '../../../src/table/card/card-now.ts'
import { reduce } from '../../../src/table/fold/reduce.ts'
import { earliestNow, lastKnownMs, unwritten } from '../../../src/wire/clock-set.ts'
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
