/** What a phone writes down of records of others: with them, or not at all. */
import { describe, expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import type { PotFacts } from '../../../shared/nouns.ts'
import { createRecords } from '../../../shared/record.ts'
import { loadJournal } from '../../../src/store/journal.ts'
import { asksOf } from '../../../src/table/meeting/asks.ts'
import {
  fileTaken,
  goneOnAs,
  joinNoted,
  metMaker,
  notedNow,
  seenAt,
  skewOfPhone,
  write,
} from '../../../src/wire/meeting.ts'
import { hall, laidOn, PhoneAtTable } from '../../fixtures/phones.ts'
import { tableOf } from '../../fixtures/seen-by.ts'
import { phone } from '../store/memory.ts'

const KNOWS = { schema: 1, isEvent: () => true, content: async () => () => undefined }
const HOUR_MS = 3_600_000
const YEAR_MS = 365 * 24 * HOUR_MS
const open = (on: ReturnType<typeof phone>, writer = 'own.one') =>
  loadJournal<TableEvent>(on.ports(writer, KNOWS))
type Opened = Awaited<ReturnType<typeof open>>
const hit = (journal: Opened, at = Date.now()) => journal.append([{ kind: 'held' }], { at, tz: 0 }).saved
const theirs = (count: number) =>
  createRecords<TableEvent>(
    Array.from({ length: count }, () => ({ kind: 'stirred', bucketId: 'b' })),
    { writer: 'other.one', seq: 1, order: Date.now() - HOUR_MS },
    { at: Date.now() - HOUR_MS, tz: 0 },
  )
const met = ({ records }: Opened) =>
  records.flatMap(({ event }) => (event.kind === 'met' ? [[event.phone, event.upTo]] : []))

describe('that another phone was met', () => {
  test.each([1, 300])('is kept with its %d records', async (count) => {
    const on = phone()
    const journal = await open(on)
    await hit(journal)
    const brought = theirs(count)
    const upTo = brought[0]?.order ?? 0
    const noted = notedNow([{ kind: 'met', phone: 'other', upTo, aheadMs: 0 }], 0)
    expect(await journal.merge(brought, Date.now(), noted)).toMatchObject({ added: count, known: 0 })
    for (const at of [journal, await open(on, 'own.two')]) {
      expect(met(at)).toEqual([['other', upTo]])
      expect(at.records).toHaveLength(count + 2)
    }
  })

  test('is not kept where its records could not be', async () => {
    const on = phone()
    const journal = await open(on)
    await hit(journal)
    on.trouble.write = true
    const noted = notedNow([{ kind: 'met', phone: 'other', upTo: 9, aheadMs: 0 }], 0)
    await expect(journal.merge(theirs(3), Date.now(), noted)).rejects.toThrow('full')
    on.trouble.write = false
    await hit(journal)
    expect(met(journal)).toEqual([])
    expect(met(await open(on, 'own.two'))).toEqual([])
  })

  test('is written down at the next start where the phone was killed before, once', async () => {
    const on = phone()
    const journal = await open(on)
    await hit(journal)
    const brought = theirs(3)
    await journal.merge(brought, Date.now())
    const next = await open(on, 'own.two')
    const seen = seenAt(next)
    expect(met(next)).toEqual([['other', brought[0]?.order]])
    expect(seen.met).toMatchObject([{ of: 'other' }])
    expect(seen.events).toHaveLength(next.records.length)
    seenAt(next)
    expect(met(next)).toHaveLength(1)
  })
})

describe('what waits for an update', () => {
  const at = hall()
  at.nowMs = Date.now() - HOUR_MS
  const isNew = ({ event }: { readonly event: TableEvent }) =>
    event.kind === 'pot-set' && event.pot.number === 77
  const knowing = (schema: number) => ({
    ...KNOWS,
    schema,
    content: async () => (event: unknown) =>
      schema === 1 && isNew({ event: event as TableEvent }) ? 'pot.number' : undefined,
  })

  test('is known to nobody before, and what is changed meanwhile is asked about after', async () => {
    const b = laidOn(new PhoneAtTable('other', at))
    const on = phone()
    const journal = await loadJournal<TableEvent>(on.ports('own.one', knowing(1)))
    const take = async (aheadMs?: number) => {
      const upTo = b.records.at(-1)?.order ?? 0
      await joinNoted(
        journal,
        b.records,
        Date.now(),
        metMaker({ phone: 'other', upTo, skewMs: 0 }, 0, aheadMs),
      )
      await fileTaken(journal)
    }
    await take(0)
    at.nowMs += 1000
    const facts = b.table.pots['other-0']?.facts as PotFacts
    b.act({ do: 'set-pot', pot: { ...facts, number: 77 } })
    const waits = b.records.at(-1)?.order ?? 0
    at.nowMs += 1000
    b.act({ do: 'waxed', potId: 'other-1' })
    await take(0)
    expect(Math.max(...met(journal).map(([, upTo]) => Number(upTo)))).toBe(waits - 1)
    await journal.append([{ kind: 'pot-set', pot: { ...facts, shape: { ...facts.shape, wallMm: 7 } } }], {
      at: Date.now(),
      tz: 0,
    }).saved
    const next = await loadJournal<TableEvent>(on.ports('own.two', knowing(2)))
    expect(next.records.filter(isNew)).toHaveLength(1)
    const seen = seenAt(next)
    expect(asksOf(tableOf(next.records, 'own'), seen).map(({ is }) => is)).toContain('changed')
    expect(Math.max(...met(next).map(([, upTo]) => Number(upTo)))).toBe(b.records.at(-1)?.order)
  })
})

describe('a clock that was set', () => {
  test('is counted under the names that its phone had before too', () => {
    const at = hall()
    const a = new PhoneAtTable('a', at).act({ do: 'clock-moved', byMs: 60_000 })
    const b = new PhoneAtTable('b', at)
    b.records = a.records
    b.write(
      [
        { kind: 'was-named', phone: 'a' },
        { kind: 'clock-moved', byMs: -9000 },
      ],
      60_000,
    )
    expect(skewOfPhone(b.records, 'b')).toBe(51_000)
    expect(skewOfPhone(b.records, 'a')).toBe(60_000)
  })
})

describe('a backup in an empty phone', () => {
  const maker = { phone: 'other', upTo: Date.now() - HOUR_MS, skewMs: 0 }
  const heldBy = ({ events }: ReturnType<typeof seenAt>) =>
    events.flatMap(({ event, from }) => (event.kind === 'held' ? [from] : []))
  const held = (writer: string) =>
    createRecords<TableEvent>(
      [{ kind: 'held' }],
      { writer, seq: 1, order: Date.now() - HOUR_MS },
      { at: Date.now() - HOUR_MS, tz: 0 },
    )

  test.each([
    [true, [undefined]],
    [false, []],
  ])('is its own where it goes on: %s', async (goesOn, seen) => {
    const on = phone()
    const journal = await open(on)
    await journal.merge(held('other.one'), Date.now(), goesOn ? goneOnAs(maker) : metMaker(maker, 0))
    for (const at of [journal, await open(on, 'own.two')]) expect(heldBy(seenAt(at))).toEqual(seen)
  })

  test('is of nobody that this phone was, where several wrote it and nothing is said', async () => {
    const journal = await open(phone())
    await journal.merge([...theirs(2), ...held('third.one')], Date.now())
    expect(heldBy(seenAt(journal))).toEqual([])
    expect(met(journal).map(([name]) => name)).toEqual(['other'])
  })

  test('is its own at a start that finds one name in it, and not its own', async () => {
    const journal = await open(phone())
    await journal.merge(held('other.one'), Date.now())
    expect(heldBy(seenAt(journal))).toEqual([undefined])
  })
})

test('a year that this phone’s clock was set by mistake is in no order of what it writes down itself', async () => {
  const on = phone()
  const journal = await open(on)
  await hit(journal, Date.now() - YEAR_MS)
  // As if the clock had been set a year on just before.
  const moved = [{ kind: 'clock-moved', byMs: YEAR_MS }] as const
  await journal.append(moved, { at: Date.now(), tz: 0 }, Date.now() - YEAR_MS).saved
  write(journal, [{ kind: 'met', phone: 'third', upTo: 1 }], YEAR_MS)
  expect(journal.records.at(-1)?.order).toBeLessThan(Date.now() - YEAR_MS + 60_000)
})
