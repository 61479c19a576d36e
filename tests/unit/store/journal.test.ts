import { describe, expect, test, vi } from 'vitest'
import { compareRecords, createRecords } from '../../../shared/record.ts'
import type { Change } from '../../../src/store/contract.ts'
import { loadJournal } from '../../../src/store/journal.ts'
import type { Knowledge } from '../../../src/store/marks.ts'
import { phone } from './memory.ts'
import { hitOf, KNOWS_SAMPLES, note, type Sample } from './sample.ts'

const at = (ms: number) => ({ at: 1_700_000_000_000 + ms, tz: 60 })
const NOW = at(0).at
const open = (on: ReturnType<typeof phone>, writer: string, knowledge: Partial<Knowledge> = {}) =>
  loadJournal<Sample>(on.ports(writer, { ...KNOWS_SAMPLES, ...knowledge }))
type Opened = Awaited<ReturnType<typeof open>>
const texts = (journal: Opened) => journal.records.map((record) => record.event.text)

describe('the journal', () => {
  test('gives back, after another opening, what was appended', async () => {
    const on = phone()
    const first = await open(on, 'a')
    await first.append([note('one'), note('two')], at(0)).saved
    await first.append([note('three')], at(1)).saved
    const second = await open(on, 'b')
    expect(second.records).toEqual(first.records)
    expect(texts(second)).toEqual(['one', 'two', 'three'])
  })

  test('orders a hit after all that was seen, even when the clock was set back', async () => {
    const on = phone()
    const first = await open(on, 'b')
    await first.append([note('one')], at(10_000)).saved
    const second = await open(on, 'a')
    await second.append([note('two')], at(0)).saved
    expect(texts(second)).toEqual(['one', 'two'])
    expect([...second.records].sort(compareRecords)).toEqual(second.records)
  })

  test('tells listeners what came, and whether it came at the end', async () => {
    const journal = await open(phone(), 'b')
    const changes: Change<Sample>[] = []
    journal.subscribe((change) => changes.push(change))
    await journal.append([note('one')], at(10)).saved
    await journal.merge(hitOf('a', 1, 5), NOW)
    expect(changes.filter((change) => change.kind === 'records').map((change) => change.atEnd)).toEqual([
      true,
      false,
    ])
    expect(changes.filter((change) => change.kind === 'status').map((change) => change.status)).toEqual([
      'saving',
      'saved',
    ])
    expect(changes.filter((change) => change.kind === 'saved').map(({ records }) => records.length)).toEqual([
      1, 1,
    ])
  })

  test('two tabs see each other at once', async () => {
    const on = phone()
    const [one, two] = [await open(on, 'a'), await open(on, 'b')]
    await one.append([note('from one')], at(0)).saved
    await two.append([note('from two')], at(1)).saved
    expect(texts(one)).toEqual(['from one', 'from two'])
    expect(two.records).toEqual(one.records)
  })

  test('a tab that missed a message catches up', async () => {
    const on = phone()
    const one = await open(on, 'a')
    const deaf = { ...on.ports('b'), channel: { post() {}, listen() {}, close() {} } }
    const two = await loadJournal<Sample>(deaf)
    await one.append([note('one')], at(0)).saved
    expect(texts(two)).toEqual([])
    await two.refresh()
    expect(texts(two)).toEqual(['one'])
    await two.refresh()
    expect(texts(two)).toEqual(['one'])
  })
})

describe('merging', () => {
  test('two phones end up with the same, whoever asks first and however often', async () => {
    const [left, right] = [await open(phone(), 'left'), await open(phone(), 'right')]
    await left.append([note('l1'), note('l2')], at(0)).saved
    await right.append([note('r1')], at(5)).saved
    await left.append([note('l3')], at(10)).saved
    const before = [...left.records]
    expect(await left.merge(right.records, NOW)).toEqual({
      added: 1,
      known: 0,
      displaced: 0,
      faulty: 0,
      waiting: 0,
      ahead: 0,
    })
    expect(await left.merge(right.records, NOW)).toMatchObject({ added: 0, known: 1 })
    expect(await right.merge(before, NOW)).toMatchObject({ added: 3 })
    expect(right.records).toEqual(left.records)
    // What they did apart falls into place by time.
    expect(texts(left)).toEqual(['l1', 'l2', 'r1', 'l3'])
  })

  test('leaves out what is no record, and says how many', async () => {
    const on = phone()
    const journal = await open(on, 'a')
    const [good] = hitOf('b', 1, 1)
    const [unknown] = createRecords([{ kind: 'odd' }], { writer: 'c', seq: 1, order: 1 }, at(0))
    const report = await journal.merge([good, { ...good, at: 1 }, null, unknown, { v: 9 }], NOW)
    expect(report).toEqual({ added: 1, known: 0, displaced: 0, faulty: 2, waiting: 2, ahead: 0 })
    expect([...on.journal.keys()]).toEqual(['b-1'])
    expect([...on.aside.keys()].map((key) => key.split('~')[0])).toEqual(['kind', 'newer'])
  })

  test('one id with two contents: all phones keep the same one, and the other is set aside', async () => {
    const twin = (text: string) => createRecords([note(text)], { writer: 'x', seq: 1, order: 1 }, at(0))
    const [one, two] = [twin('this'), twin('that')]
    const kept: string[] = []
    for (const [first, second] of [
      [one, two],
      [two, one],
    ] as const) {
      const on = phone()
      const journal = await open(on, 'a')
      await journal.merge(first, NOW)
      expect(await journal.merge(second, NOW)).toMatchObject({ displaced: 1 })
      expect(on.aside.size).toBe(1)
      kept.push(...texts(journal))
      expect(texts(await open(on, 'b'))).toEqual(texts(journal))
    }
    expect(kept[0]).toBe(kept[1])
  })
})

describe('what is damaged or unknown', () => {
  test('is set aside and reported, and the rest opens', async () => {
    const on = phone()
    await (await open(on, 'a')).append([note('good'), note('bad')], at(0)).saved
    const bad = on.journal.get('a-2') as object
    on.journal.set('a-2', { ...bad, tz: 61 })
    on.journal.set('what', 'is this')
    const journal = await open(on, 'b')
    expect(texts(journal)).toEqual(['good'])
    expect(journal.opening.quarantined.map((entry) => entry.reason).sort()).toEqual(['shape', 'sum'])
    expect([...on.aside.values()]).toEqual(expect.arrayContaining(['is this', { ...bad, tz: 61 }]))
    expect([...on.journal.keys()]).toEqual(['a-1'])
    // Reported again next time, and not twice.
    expect((await open(on, 'c')).opening.quarantined).toHaveLength(2)
  })

  test('comes back with a program that knows its kind', async () => {
    const on = phone()
    await (await open(on, 'a')).append([note('later known')], at(0)).saved
    const ignorant = await open(on, 'b', { isEvent: () => false })
    expect(ignorant.records).toEqual([])
    expect(ignorant.opening.quarantined.map((entry) => entry.reason)).toEqual(['kind'])
    const knowing = await open(on, 'c')
    expect(texts(knowing)).toEqual(['later known'])
    expect(knowing.opening.quarantined).toEqual([])
    expect(on.aside.size).toBe(0)
  })

  test('two different damages under one key are both kept', async () => {
    const on = phone()
    for (const value of ['first', 'second']) {
      on.journal.set('x', value)
      await open(on, 'a')
    }
    expect([...on.aside.values()].sort()).toEqual(['first', 'second'])
  })

  test('a record of a newer program: read-only, nothing moved', async () => {
    const on = phone()
    await (await open(on, 'a')).append([note('old')], at(0)).saved
    on.journal.set('new', { v: 2, unheard: 'of' })
    on.journal.set('broken', 1)
    const journal = await open(on, 'b')
    expect(journal.readOnly).toBe(true)
    expect(texts(journal)).toEqual(['old'])
    expect(on.journal.size).toBe(3)
    expect(() => journal.append([note('x')], at(1))).toThrow(/newer program/)
    await expect(journal.merge([], NOW)).rejects.toThrow(/newer program/)
  })

  test('a newer program that starts writing in another tab makes this one stale', async () => {
    const on = phone()
    const journal = await open(on, 'a')
    const kinds: string[] = []
    journal.subscribe((change) => kinds.push(change.kind))
    on.ports('z').channel.post({ kind: 'records', records: [{ v: 2 }] })
    expect(kinds).toEqual(['stale'])
    expect(journal.readOnly).toBe(true)
  })
})

describe('when storage fails', () => {
  test('the hit stays in the fold, beside the database, and is taken up by the next life', async () => {
    vi.useFakeTimers()
    const on = phone()
    const first = await open(on, 'a')
    on.trouble.write = true
    first.append([note('kept')], at(0))
    await vi.advanceTimersByTimeAsync(0)
    expect(texts(first)).toEqual(['kept'])
    expect(first.status).toBe('not-saved')
    expect(on.lines.size).toBe(1)
    on.trouble.write = false
    const second = await open(on, 'b')
    expect(texts(second)).toEqual(['kept'])
    expect(second.opening.recovered).toBe(1)
    await vi.advanceTimersByTimeAsync(0)
    expect([...on.journal.keys()]).toEqual(['a-1'])
    expect(on.lines.size).toBe(0)
    vi.useRealTimers()
  })

  test('a spilled line that is garbage harms nothing', async () => {
    const on = phone()
    on.lines.set('bucketside-unsaved.q', '{not json')
    on.lines.set('bucketside-unsaved.r', '[1, null]')
    const journal = await open(on, 'a')
    expect(journal.records).toEqual([])
    expect(journal.opening.quarantined).toHaveLength(2)
  })

  test('an opening that cannot read says so, takes hits, and reads later', async () => {
    vi.useFakeTimers()
    const on = phone()
    await (await open(on, 'a')).append([note('earlier')], at(0)).saved
    on.trouble.read = true
    on.trouble.write = true
    const journal = await open(on, 'b')
    expect(journal.opening.failure).toBe('UnknownError')
    journal.append([note('meanwhile')], at(60_000))
    await vi.advanceTimersByTimeAsync(0)
    on.trouble.read = false
    on.trouble.write = false
    await journal.refresh()
    expect(journal.opening.failure).toBeNull()
    expect(texts(journal)).toEqual(['earlier', 'meanwhile'])
    await vi.advanceTimersByTimeAsync(10_000)
    expect(journal.status).toBe('saved')
    expect(on.lines.size).toBe(0)
    vi.useRealTimers()
  })
})

describe('tidying', () => {
  test('packs what lies singly and changes nothing else', async () => {
    const on = phone()
    const journal = await open(on, 'a')
    for (let hit = 0; hit < 300; hit++) journal.append([note(`${hit}`)], at(hit))
    await journal.append([note('last')], at(300)).saved
    await journal.tidy()
    expect(on.journal.size).toBe(1)
    const again = await open(on, 'b')
    expect(again.records).toEqual(journal.records)
    await journal.refresh()
    expect(journal.records).toHaveLength(301)
  })

  test('leaves a small journal alone', async () => {
    const on = phone()
    const journal = await open(on, 'a')
    await journal.append([note('one')], at(0)).saved
    await journal.tidy()
    expect([...on.journal.keys()]).toEqual(['a-1'])
  })

  test('by two tabs at once keeps every record once', async () => {
    const on = phone()
    const [one, two] = [await open(on, 'a'), await open(on, 'b')]
    for (let hit = 0; hit < 300; hit++) await one.append([note(`${hit}`)], at(hit)).saved
    await Promise.all([one.tidy(), two.tidy()])
    expect((await open(on, 'c')).records).toEqual(one.records)
  })
})
