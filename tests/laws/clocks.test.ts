/** A phone's clock is set, by an hour or a year, or its zone changes: what dries, counts and is asked about goes on as it was. */
import { describe, expect, test } from 'vitest'
import type { Stamped, TableEvent } from '../../shared/events.ts'
import { type AnyEvent, createRecords, type JournalRecord, nextOrder } from '../../shared/record.ts'
import { loadJournal } from '../../src/store/journal.ts'
import { fold } from '../../src/table/fold/fold.ts'
import { panAsk } from '../../src/table/steps/wax-pan.ts'
import { orderMs } from '../../src/wire/clock-set.ts'
import { duesOf, fiveClocks } from '../fixtures/five-clocks.ts'
import { recordsOfHits } from '../fixtures/hits.ts'
import { tableOf } from '../fixtures/seen-by.ts'
import { phone } from '../unit/store/memory.ts'
import { Play, START_MS } from '../unit/table/play.ts'

const HOUR_MS = 3_600_000
const DAY_MS = 24 * HOUR_MS
/** Daylight saving and a journey move the zone and not the clock; a clock without zones is set by the hour instead. */
const JUMPS: readonly (readonly [string, number])[] = [
  ['an hour on', HOUR_MS],
  ['an hour back', -HOUR_MS],
  ['two days on', 2 * DAY_MS],
  ['two days back', -2 * DAY_MS],
  ['a year on', 365 * DAY_MS],
  ['a year back', -365 * DAY_MS],
]
const KNOWS = { schema: 1, isEvent: () => true, content: async () => () => undefined }

/** The clock is set under a play, and the app has seen it. */
const set = (play: Play, byMs: number): Play => {
  play.nowMs += byMs
  return play.act({ do: 'clock-moved', byMs })
}

/** The demo evening until its bar starts a dip. */
function untilStart(): Play {
  const play = new Play().act({ do: 'lay-demo' })
  while (play.card.big?.do !== 'start') {
    if (play.card.big) play.bar()
    play.wait(20)
  }
  return play
}

describe.each(JUMPS)('a clock set %s', (_name, byMs) => {
  test('in a wait: each pot is due as far from now as before', () => {
    const play = new Play()
    for (const [i, events] of fiveClocks(START_MS).entries()) play.append(events, `h${i}`)
    play.wait(30)
    const left = () => duesOf(play.table).map(({ number, at }) => [number, Math.round(at - play.nowMs)])
    const before = left()
    expect(before.every(([, ms]) => (ms ?? 0) > 0)).toBe(true)
    set(play, byMs)
    expect(left()).toEqual(before)
    set(play, -byMs)
    expect(left()).toEqual(before)
    // Whatever reads the journal anew finds the same.
    expect(duesOf(fold(play.events))).toEqual(duesOf(play.table))
  })

  test('in a count: it runs on, and out when it would have', () => {
    const play = untilStart().bar().wait(3)
    const { card } = play
    if (card.kind !== 'count') throw new Error(`a count, not ${card.kind}`)
    const leftMs = card.dip.outAt - (play.nowMs - play.table.skewMs)
    set(play, byMs)
    const after = play.card
    if (after.kind !== 'count') throw new Error(`still a count, not ${after.kind}`)
    expect(after.dip.outAt - (play.nowMs - play.table.skewMs)).toBe(leftMs)
    play.wait(leftMs / 1000 + 0.2)
    expect(play.card.kind).not.toBe('count')
  })

  test('the pan of hot wax is asked about no later', () => {
    const play = new Play().act({ do: 'lay-demo' }).act({ do: 'wax-pan', is: 'on' })
    const asked = () => panAsk(play.table, play.nowMs - play.table.skewMs) !== undefined
    play.wait(4 * 60)
    expect(asked()).toBe(false)
    set(play, byMs)
    play.wait(62)
    expect(asked()).toBe(true)
  })

  test('no order is poisoned: the other phone takes what was hit meanwhile and after, at its own time', async () => {
    const play = new Play().act({ do: 'lay-demo' })
    const records: JournalRecord<TableEvent>[] = []
    const hit = (events: readonly TableEvent[]) => {
      const order = Math.max(orderMs(play.nowMs, play.table.skewMs, events), (records.at(-1)?.order ?? 0) + 1)
      const at = { writer: 'own.one', seq: records.length + 1, order }
      records.push(...createRecords(events, at, { at: play.nowMs, tz: 0 }))
      play.append(events, `o${records.length}`)
    }
    hit([{ kind: 'held' }])
    play.nowMs += byMs + 1000
    hit([{ kind: 'clock-moved', byMs }])
    play.wait(60)
    hit([{ kind: 'resumed' }])
    play.nowMs -= byMs
    hit([{ kind: 'clock-moved', byMs: -byMs }])
    play.wait(60)
    hit([{ kind: 'held' }])
    const on = phone()
    const journal = await loadJournal<AnyEvent>(on.ports('other', KNOWS))
    await journal.append([{ kind: 'held' }], { at: START_MS, tz: 0 }).saved
    expect(await journal.merge(records, play.nowMs)).toMatchObject({ added: records.length, ahead: 0 })
    for (const { order } of records) expect(Math.abs(order - START_MS)).toBeLessThan(HOUR_MS)
    await journal.append([{ kind: 'resumed' }], { at: play.nowMs + 1000, tz: 0 }).saved
    expect(journal.records.at(-1)?.order).toBe(play.nowMs + 1000)
  })

  test('on the other phone: what this one waits for stays as it was', () => {
    const own = recordsOfHits(fiveClocks(START_MS), START_MS) as readonly Stamped[]
    const theirs = (event: TableEvent, at: number, n: number): Stamped => ({
      id: `b.1-${n}`,
      hit: `b.1-${n}`,
      at,
      writer: 'b.1',
      event,
    })
    const name = own[0]?.writer?.split('.')[0] ?? ''
    const before = tableOf(own, name)
    const after = tableOf(
      [
        ...own,
        theirs({ kind: 'held' }, START_MS + 600_000, 1),
        theirs({ kind: 'clock-moved', byMs }, START_MS + 601_000 + byMs, 2),
        theirs({ kind: 'resumed' }, START_MS + 660_000 + byMs, 3),
      ],
      name,
    )
    expect(duesOf(after)).toEqual(duesOf(before))
    expect(after.skewMs).toBe(before.skewMs)
  })
})

test('a zone that changes, and daylight saving, move no due time: records keep the instant', () => {
  const zones = [-600, -60, 0, 60, 120, 840]
  const dues = zones.map((tz) =>
    duesOf(
      fold(recordsOfHits(fiveClocks(START_MS), START_MS).map((record) => ({ ...record, tz })) as Stamped[]),
    ),
  )
  for (const due of dues) expect(due).toEqual(dues[0])
})

describe.each(JUMPS.filter(([, ms]) => ms > 0))('a clock set %s while nobody sees it', (_name, byMs) => {
  test('then set right: the other phone takes all of it as soon as it is no day ahead', async () => {
    const records: JournalRecord<TableEvent>[] = []
    let skewMs = 0
    const hit = (clockMs: number, event: TableEvent) => {
      const order = nextOrder(records.at(-1)?.order ?? 0, orderMs(clockMs, skewMs, [event]))
      const at = { writer: 'own.one', seq: records.length + 1, order }
      records.push(...createRecords([event], at, { at: clockMs, tz: 0 }))
      if (event.kind === 'clock-moved') skewMs += event.byMs
    }
    hit(START_MS, { kind: 'held' })
    hit(START_MS + byMs + 1000, { kind: 'resumed' })
    hit(START_MS + 60_000, { kind: 'clock-moved', byMs: -byMs })
    for (let hour = 1; hour * HOUR_MS < byMs + DAY_MS; hour += 12)
      hit(START_MS + hour * HOUR_MS, { kind: 'held' })
    const laterMs = START_MS + Math.max(0, byMs - DAY_MS) + 2 * HOUR_MS
    const on = phone()
    const journal = await loadJournal<AnyEvent>(on.ports('other', KNOWS))
    await journal.append([{ kind: 'held' }], { at: START_MS, tz: 0 }).saved
    const by = records.filter(({ seq, at }) => seq <= 3 || at <= laterMs)
    expect(await journal.merge(by, laterMs)).toMatchObject({ added: by.length, ahead: 0 })
    // Once that time has passed its orders are its clock's again.
    expect(records.at(-1)?.order).toBe(records.at(-1)?.at)
  })
})
