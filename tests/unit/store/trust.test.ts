/** What a journal takes at its word, and what it doesn't. */
import { describe, expect, test, vi } from 'vitest'
import { type AnyEvent, createRecords } from '../../../shared/record.ts'
import { loadJournal } from '../../../src/store/journal.ts'
import type { Knowledge } from '../../../src/store/marks.ts'
import { fieldOf } from '../../../src/store/quarantine.ts'
import { phone } from './memory.ts'
import { hitOf, KNOWS_SAMPLES, note, type Sample } from './sample.ts'

const at = (ms: number) => ({ at: 1_700_000_000_000 + ms, tz: 60 })
const NOW = at(0).at
const DAY_MS = 86_400_000

/** Texts up to this long are known to this program. */
const knows = (longest: number, schema: number): Knowledge => ({
  ...KNOWS_SAMPLES,
  schema,
  content: vi.fn(
    async () => (event: AnyEvent) => ((event as Sample).text.length > longest ? 'noted.text' : undefined),
  ),
})
const open = (on: ReturnType<typeof phone>, writer: string, knowledge: Knowledge) =>
  loadJournal<Sample>(on.ports(writer, knowledge))
type Opened = Awaited<ReturnType<typeof open>>
const texts = (journal: Opened) => journal.records.map((record) => record.event.text)
const from = (writer: string, ...written: string[]) =>
  createRecords(written.map(note), { writer, seq: 1, order: NOW }, at(0))

describe('contents', () => {
  test('of what this program wrote or took in are known at the next start, without the schemas', async () => {
    const on = phone()
    const first = await open(on, 'a', knows(9, 1))
    await first.append([note('own')], at(1)).saved
    await first.merge(from('b', 'other'), NOW)
    const later = knows(9, 1)
    const second = await open(on, 'c', later)
    expect(texts(second)).toEqual(['other', 'own'])
    expect(later.content).not.toHaveBeenCalled()
  })

  test('without a mark are examined at the start, once', async () => {
    const on = phone()
    for (const record of from('b', 'good', 'much too long')) on.journal.set(record.id, record)
    const journal = await open(on, 'a', knows(9, 1))
    expect(texts(journal)).toEqual(['good'])
    expect(journal.opening.quarantined.map(({ reason, key }) => [reason, fieldOf(key)])).toEqual([
      ['content', 'noted.text'],
    ])
    const later = knows(9, 1)
    const again = await open(on, 'c', later)
    expect(texts(again)).toEqual(['good'])
    expect(again.opening.quarantined).toHaveLength(1)
    expect(later.content).not.toHaveBeenCalled()
  })

  test('that an update knows come back with it', async () => {
    const on = phone()
    const older = await open(on, 'a', knows(9, 1))
    const report = await older.merge(from('b', 'good', 'much too long'), NOW)
    expect(report).toMatchObject({ added: 1, waiting: 1 })
    const newer = await open(on, 'c', knows(99, 2))
    expect(texts(newer)).toEqual(['good', 'much too long'])
    expect(newer.opening.quarantined).toEqual([])
    expect(on.aside.size).toBe(0)
  })

  test('that a newer program of this phone wrote are examined by an older one that came back', async () => {
    const on = phone()
    const newer = await open(on, 'a', knows(99, 2))
    await newer.append([note('short'), note('much too long')], at(0)).saved
    for (let hit = 0; hit < 300; hit++) newer.append([note(`n${hit}`)], at(hit))
    await newer.append([note('last and too long')], at(400)).saved
    await newer.tidy()
    const older = await open(on, 'b', knows(9, 1))
    expect(texts(older)).toHaveLength(301)
    expect(older.opening.quarantined).toHaveLength(2)
  })

  test('that another tab tells are examined unless it knows no more than this one', async () => {
    const on = phone()
    const older = await open(on, 'a', knows(9, 1))
    const newer = await open(on, 'b', knows(99, 2))
    await newer.append([note('short'), note('much too long')], at(0)).saved
    await vi.waitFor(() => expect(texts(older)).toEqual(['short']))
  })

  test('that cannot be examined yet leave the journal unread, and are read when they can', async () => {
    const on = phone()
    for (const record of from('b', 'good')) on.journal.set(record.id, record)
    const knowledge = knows(9, 1)
    const content = vi.fn(knowledge.content)
    content.mockRejectedValueOnce(new TypeError('no network'))
    const journal = await open(on, 'a', { ...knowledge, content })
    expect(journal.opening.failure).toBe('TypeError')
    expect(on.journal.size).toBe(1)
    await journal.refresh()
    expect(texts(journal)).toEqual(['good'])
  })
})

describe('orders and clocks', () => {
  test('a forged order neither opens nor is followed', async () => {
    const on = phone()
    const [poison] = from('b', 'late')
    const forged = { ...poison!, order: 2 ** 48 - 1 }
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    await journal.append([note('own')], at(0)).saved
    expect(await journal.merge([forged], NOW)).toMatchObject({ added: 0, faulty: 1 })
    expect(() => createRecords([note('x')], { writer: 'b', seq: 1, order: 4.2e12 }, at(0))).toThrow(
      RangeError,
    )
  })

  test('records a day ahead are refused, as the own order would follow them for good', async () => {
    const on = phone()
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    await journal.append([note('own')], at(0)).saved
    const year = createRecords([note('ahead')], { writer: 'b', seq: 1, order: NOW + 365 * DAY_MS }, at(0))
    const stamped = createRecords([note('too')], { writer: 'c', seq: 1, order: NOW }, at(2 * DAY_MS))
    const near = createRecords([note('near')], { writer: 'd', seq: 1, order: NOW + 60_000 }, at(0))
    expect(await journal.merge([...year, ...stamped, ...near], NOW)).toMatchObject({ added: 1, ahead: 2 })
    await journal.append([note('next')], at(1000)).saved
    expect(journal.records.at(-1)?.order).toBe(NOW + 60_001)
  })

  test('an empty phone takes a backup whose clock was ahead, and counts on from it', async () => {
    const on = phone()
    const year = createRecords([note('mine')], { writer: 'b', seq: 1, order: NOW + 365 * DAY_MS }, at(0))
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    expect(await journal.merge(year, NOW)).toMatchObject({ added: 1, ahead: 0 })
    await journal.append([note('next')], at(1)).saved
    expect(texts(await open(on, 'c', KNOWS_SAMPLES))).toEqual(['mine', 'next'])
  })

  test('a clock beyond all phones keeps every hit', async () => {
    const on = phone()
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    await journal.append([note('one')], { at: 8e15, tz: 0 }).saved
    await journal.append([note('two')], at(0)).saved
    expect(texts(await open(on, 'b', KNOWS_SAMPLES))).toEqual(['one', 'two'])
    expect(journal.records.at(-1)?.order).toBe(NOW)
  })
})

describe('saved before told', () => {
  test('a listener that fails keeps neither the hit from being saved nor the others from hearing of it', async () => {
    const thrown: unknown[] = []
    process.once('uncaughtException', (error) => thrown.push(error))
    const on = phone()
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    journal.subscribe((change) => {
      if (change.kind === 'records') throw new Error('no card for that')
    })
    const heard: string[] = []
    journal.subscribe(({ kind }) => heard.push(kind))
    await journal.append([note('kept')], at(0)).saved
    expect(on.journal.size).toBe(1)
    expect(heard).toContain('records')
    await vi.waitFor(() => expect(thrown).toHaveLength(1))
  })

  test('a merge that cannot be stored changes nothing', async () => {
    const on = phone()
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    on.trouble.write = true
    await expect(journal.merge(hitOf('b', 1, 1, 400), NOW)).rejects.toThrow('full')
    expect(journal.records).toEqual([])
    on.trouble.write = false
    expect(await journal.merge(hitOf('b', 1, 1, 400), NOW)).toMatchObject({ added: 400 })
    // In packs, which are read fast.
    expect(on.journal.size).toBe(1)
  })
})

describe('storage', () => {
  test('that never answers is told after three seconds; what comes meanwhile is kept', async () => {
    vi.useFakeTimers()
    const on = phone()
    for (const record of from('b', 'earlier')) on.journal.set(record.id, record)
    const ports = on.ports('a')
    let answer = () => {}
    const silent = new Promise<void>((resolve) => {
      answer = resolve
    })
    const storage = { ...ports.storage, load: () => silent.then(() => ports.storage.load()) }
    const opening = loadJournal<Sample>({ ...ports, storage })
    await vi.advanceTimersByTimeAsync(3000)
    const journal = await opening
    expect(journal.opening.failure).toBe('TimeoutError')
    const { saved } = journal.append([note('meanwhile')], at(1))
    const changes: string[] = []
    journal.subscribe(({ kind }) => changes.push(kind))
    answer()
    await vi.advanceTimersByTimeAsync(10)
    await saved
    expect(journal.opening.failure).toBeNull()
    expect(changes).toContain('opening')
    expect(texts(journal)).toEqual(['earlier', 'meanwhile'])
    vi.useRealTimers()
  })

  test('that was emptied under the page gets back what is known', async () => {
    const on = phone()
    const journal = await open(on, 'a', KNOWS_SAMPLES)
    await journal.append([note('one'), note('two')], at(0)).saved
    on.journal.clear()
    await journal.refresh()
    expect(texts(await open(on, 'b', KNOWS_SAMPLES))).toEqual(['one', 'two'])
  })
})
