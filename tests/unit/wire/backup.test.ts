/** A file of another phone has no clock that runs: what it showed is asked about where coats wait by it. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { lastCopiedMs } from '../../../src/device/seen.ts'
import { writeBackup } from '../../../src/store/backup.ts'
import { loadJournal } from '../../../src/store/journal.ts'
import { unite } from '../../../src/store/union.ts'
import { seenFrom } from '../../../src/table/fold/seen.ts'
import { forecastOf } from '../../../src/table/forecast/forecast.ts'
import { lookInto } from '../../../src/wire/look-into.ts'
import { hall, laidOn, PhoneAtTable } from '../../fixtures/phones.ts'
import { tableOf } from '../../fixtures/seen-by.ts'
import { phone } from '../store/memory.ts'
import '../../../src/table/forecast/walls.ts'

const MIN_MS = 60_000
const KNOWS = { schema: 1, isEvent: () => true, content: async () => () => undefined }

/** A file made just now by a phone whose clock is so far ahead, a minute after its OUT, and where it is read. */
async function fileOf(
  aheadMs: number,
  dips = true,
  first: readonly TableEvent[] = [{ kind: 'held' }],
  skewMs = 0,
) {
  const at = hall()
  at.nowMs = Date.now() - 700_000
  const b = laidOn(new PhoneAtTable('b', at, aheadMs))
  b.act({ do: 'waxed', potId: 'b-0' }).act({ do: 'wiped', potId: 'b-0' })
  at.nowMs += 600_000
  b.act({ do: 'stirred', bucketId: 'b-bucket' })
  if (dips) b.act({ do: 'start', potId: 'b-0', again: false, unstirred: false })
  at.nowMs += 90_000
  const file = new Blob([writeBackup(b.records, { at: b.clockMs, tz: 0 }, [], 0, 'b')])
  const journal = await loadJournal<TableEvent>(phone().ports('own.one', KNOWS))
  if (first.length > 0) await journal.append(first, { at: at.nowMs, tz: 0 }).saved
  const look = async () => {
    const found = await lookInto(journal, file, () => at.nowMs, skewMs)
    if (!found.ok) throw new Error(found.code)
    return found
  }
  const leftMs = () => {
    const table = tableOf(journal.records, 'own')
    const pot = table.pots['b-0']
    return (pot ? (forecastOf(table, pot)?.ready.likely ?? 0) : 0) - (at.nowMs - table.skewMs)
  }
  const own = (b.table.pots['b-0'] && forecastOf(b.table, b.table.pots['b-0'])?.ready.likely) ?? 0
  return { at, journal, look, leftMs, ownLeftMs: own - b.now }
}

describe('a file of a phone whose clock was never compared', () => {
  test.each([-10, 10])('%d min off: made now, its pots wait as long here as there', async (minutes) => {
    const { at, journal, look, leftMs, ownLeftMs } = await fileOf(minutes * MIN_MS)
    const found = await look()
    expect(found.clock).toMatchObject({ thereMs: at.nowMs + minutes * MIN_MS, hereMs: at.nowMs })
    await found.takeIn({ madeNow: true })
    expect(ownLeftMs).toBeGreaterThan(MIN_MS)
    expect(leftMs()).toBeCloseTo(ownLeftMs, 0)
    expect((await look()).clock).toBeUndefined()
    expect(journal.records.filter(({ event }) => event.kind === 'met')).toHaveLength(1)
  })

  test('is asked about no more once it was said that the clocks agree', async () => {
    const { look, leftMs, ownLeftMs } = await fileOf(-10 * MIN_MS)
    await (await look()).takeIn({})
    expect(leftMs()).toBeLessThanOrEqual(Math.max(0, ownLeftMs - 10 * MIN_MS))
    expect((await look()).clock).toBeUndefined()
  })

  test('seconds off is reckoned with and not asked about', async () => {
    const { look, leftMs, ownLeftMs } = await fileOf(-20_000)
    const found = await look()
    expect(found.clock).toBeUndefined()
    await found.takeIn({})
    expect(leftMs()).toBeCloseTo(ownLeftMs, 0)
  })

  test.each([-60, 60])(
    'here set by %d min since: the clocks agree, and its pots wait as long here as there',
    async (minutes) => {
      const byMs = minutes * MIN_MS
      const set: readonly TableEvent[] = [{ kind: 'held' }, { kind: 'clock-moved', byMs }]
      for (const how of [{}, { madeNow: true }]) {
        const { look, leftMs, ownLeftMs } = await fileOf(0, true, set, byMs)
        // Both show the same minute.
        expect((await look()).clock).toBeUndefined()
        await (await look()).takeIn(how)
        expect(leftMs()).toBeCloseTo(ownLeftMs, 0)
        const later = await fileOf(0, true, set, byMs)
        later.at.nowMs += 2 * MIN_MS
        const found = await later.look()
        expect(found.clock).toEqual({ thereMs: later.at.nowMs - 2 * MIN_MS, hereMs: later.at.nowMs })
        await found.takeIn({})
        expect(later.leftMs()).toBeCloseTo(later.ownLeftMs - 2 * MIN_MS, 0)
      }
    },
  )

  test('is not asked about where nothing waits by it', async () => {
    expect((await (await fileOf(-10 * MIN_MS, false)).look()).clock).toBeUndefined()
  })
})

describe('a phone that goes on as a lost one', () => {
  test.each([-10, 10])('%d min off: asked, and its pots wait as long here as there', async (minutes) => {
    const { journal, look, leftMs, ownLeftMs } = await fileOf(minutes * MIN_MS, true, [])
    const found = await look()
    expect([found.mayGoOn, found.clock !== undefined]).toEqual([true, true])
    await found.takeIn({ goesOn: true, madeNow: true })
    expect(leftMs()).toBeCloseTo(ownLeftMs, 0)
    expect(seenFrom(journal.records, 'own').events.every(({ from }) => from === undefined)).toBe(true)
  })

  test.each([-10, 10])('%d min off: who had met the lost one has its moments as before', async (minutes) => {
    const { at, journal, look } = await fileOf(minutes * MIN_MS, true, [])
    const c = new PhoneAtTable('c', at)
    const before = journal.records.length
    await (await look()).takeIn({ goesOn: true, madeNow: true })
    const lost = journal.records.slice(before).filter(({ writer }) => writer === 'b.1')
    c.records = lost
    const upTo = lost.at(-1)?.order ?? 0
    c.act({ do: 'meet', phone: 'b', upTo, aheadMs: minutes * MIN_MS })
    const dippedMs = () => c.table.pots['b-0']?.dips[0]?.outAt
    const first = dippedMs()
    c.records = unite(c.records, journal.records).records
    const own = tableOf(journal.records, 'own')
    const aheadMs = at.nowMs - own.skewMs - c.now
    expect(aheadMs).toBe(minutes * MIN_MS)
    c.act({ do: 'meet', phone: 'own', upTo: journal.records.at(-1)?.order ?? 0, aheadMs })
    expect(dippedMs()).toBeCloseTo(first ?? 0, -1)
  })

  test.each([
    [[{ kind: 'settings-set', settings: { hand: 'left' } }], true],
    [[{ kind: 'settings-set', settings: { wax: 'hot' } }], false],
    [[{ kind: 'held' }], false],
  ] as const)('after %j: %s', async (first, mayGoOn) => {
    const { look, journal } = await fileOf(0, true, first)
    const found = await look()
    expect(found.mayGoOn).toBe(mayGoOn)
    if (!mayGoOn) return
    await found.takeIn({ goesOn: true })
    const table = tableOf(journal.records, 'own')
    expect([table.pots['b-0']?.from, table.settings.hand]).toEqual([undefined, 'left'])
  })

  test('is told of no pots that were taken off', async () => {
    const { look, at } = await fileOf(0, true, [])
    expect((await look()).pots).toBe(2)
    const b = laidOn(new PhoneAtTable('b', at)).act({ do: 'gone', potId: 'b-1' })
    const potsIn = async () => {
      const file = new Blob([writeBackup(b.records, { at: b.clockMs, tz: 0 }, [], 0, 'b')])
      const journal = await loadJournal<TableEvent>(phone().ports('own.one', KNOWS))
      const found = await lookInto(journal, file, () => at.nowMs)
      return found.ok && found.pots
    }
    expect(await potsIn()).toBe(1)
    b.act({ do: 'take-back' })
    expect(await potsIn()).toBe(2)
  })
})

describe('a file of several phones', () => {
  /** b read c, with its clock compared or not; made by b, whose head may be lost. */
  async function ofTwo({
    compared,
    head,
    aheadMs = 0,
  }: {
    compared: boolean
    head: boolean
    aheadMs?: number
  }) {
    const at = hall()
    at.nowMs = Date.now() - 60_000
    const c = laidOn(new PhoneAtTable('c', at, 600_000))
    c.act({ do: 'logged', potId: 'c-0', agoMin: 5 })
    const b = new PhoneAtTable('b', at, aheadMs)
    b.read(c).act({ do: 'waxed', potId: 'c-1' })
    const records = compared
      ? b.records
      : b.records.filter(({ event }) => !(event.kind === 'met' && event.phone === 'c'))
    const file = new Blob([writeBackup(records, { at: b.clockMs, tz: 0 }, [], 0, head ? 'b' : undefined)])
    const journal = await loadJournal<TableEvent>(phone().ports('own.one', KNOWS))
    await journal.append([{ kind: 'held' }], { at: at.nowMs, tz: 0 }).saved
    const look = async (now = at.nowMs) => {
      const found = await lookInto(journal, file, () => now)
      if (!found.ok) throw new Error(found.code)
      return found
    }
    return { at, look, journal }
  }

  test('says of how many nobody compared the clock, through its maker neither', async () => {
    expect((await (await ofTwo({ compared: true, head: true })).look()).unclocked).toBe(0)
    expect((await (await ofTwo({ compared: false, head: true })).look()).unclocked).toBe(1)
  })

  test('says so where nothing in the file tells who made it', async () => {
    const { look } = await ofTwo({ compared: false, head: false })
    expect((await look()).unclocked).toBe(1)
  })

  test('is known for the file of who knew of all the others, and its clock asked about', async () => {
    const { look, at } = await ofTwo({ compared: true, head: false, aheadMs: 30 * MIN_MS })
    const found = await look()
    expect(found.clock).toEqual({ thereMs: at.nowMs + 30 * MIN_MS, hereMs: at.nowMs })
    expect(found.unclocked).toBe(0)
  })

  test('says nothing of coats that wait no more, nor of clocks this phone compared itself', async () => {
    const { at, look, journal } = await ofTwo({ compared: false, head: false })
    expect((await look(at.nowMs + 2 * 86_400_000)).unclocked).toBe(0)
    await journal.append([{ kind: 'met', phone: 'c', upTo: 1, aheadMs: 600_000 }], { at: at.nowMs, tz: 0 })
      .saved
    expect((await look()).unclocked).toBe(0)
  })
})

describe('a file is a copy outside the phone', () => {
  const kept = new Map<string, string>()
  beforeEach(() => {
    kept.clear()
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
    })
  })
  afterEach(() => {
    vi.unstubAllGlobals()
  })

  test('of the day it was made, to a new phone that took it in', async () => {
    const { at, look } = await fileOf(-10 * MIN_MS, true, [])
    await (await look()).takeIn({ goesOn: true })
    expect(lastCopiedMs()).toBe(at.nowMs - 10 * MIN_MS)
  })

  test('of no day that is still to come', async () => {
    const { at, look } = await fileOf(10 * MIN_MS, true, [])
    await (await look()).takeIn({ madeNow: true })
    expect(lastCopiedMs()).toBe(at.nowMs)
  })

  test('of nothing that a phone did before', async () => {
    const { look } = await fileOf(0)
    await (await look()).takeIn({})
    expect(lastCopiedMs()).toBeUndefined()
  })
})
