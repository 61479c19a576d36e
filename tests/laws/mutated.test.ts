/** Backups that were torn, edited or forged in whatever way: refused, or read as far as they are sound; never half. */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isKnownKind, type TableEvent } from '../../shared/events.ts'
import { type AnyEvent, createRecords, type JournalRecord } from '../../shared/record.ts'
import { readBackup, writeBackup } from '../../src/store/backup.ts'
import { contentFault } from '../../src/store/events-schema.ts'
import { loadJournal } from '../../src/store/journal.ts'
import { cardOf } from '../../src/table/card/card-now.ts'
import { judge } from '../../src/table/card/engine-judge.ts'
import { judged } from '../../src/table/card/judged.ts'
import { outputsOf } from '../../src/table/card/outputs.ts'
import { fold } from '../../src/table/fold/fold.ts'
import { ALL_KINDS } from '../fixtures/any-record.ts'
import { forgery, NASTY } from '../fixtures/forged.ts'
import { PATIENCE_MS, processorMs } from '../fixtures/patience.ts'
import { armed, recordsOf, waiting } from '../fixtures/season.ts'
import { phone } from '../unit/store/memory.ts'

const NOW = Date.UTC(2026, 2, 3, 21)
const RUNS = process.env.PROVE ? 20_000 : 40
const records = recordsOf(waiting(4, NOW))
const text = writeBackup(records, { at: NOW, tz: 0 })
const lines = text.split('\n')
/** What was on the phone before. */
const OWN = recordsOf(armed(NOW)).flatMap(({ event, seq, order, at, tz }) =>
  createRecords([event], { writer: 'own.a', seq, order }, { at, tz }),
)
const BACKUPS = new URL('../fixtures/backups/', import.meta.url)
/** Backups of the latest versions between them hold events of every kind. */
const kept = await Promise.all(
  readdirSync(BACKUPS)
    .filter((file) => !/^version-[12]\./.test(file))
    .map(async (file) => {
      const backup = await readBackup(readFileSync(new URL(file, BACKUPS), 'utf8'))
      return backup.ok ? (backup.records as JournalRecord<AnyEvent>[]) : []
    }),
)
const everyKind = [...new Map(kept.flat().map((record) => [record.id, record])).values()]
const byKind = ALL_KINDS.map((kind) => kept.flat().filter(({ event }) => event.kind === kind))
const KNOWLEDGE = {
  schema: 1,
  isEvent: ({ kind }: AnyEvent) => isKnownKind(kind),
  content: async () => contentFault,
}

test('every kind of event is forged', () => {
  expect(ALL_KINDS.filter((_kind, i) => byKind[i]?.length === 0)).toEqual([])
})

const within = (end: number) => fc.nat(Math.max(0, end - 1))
const cut = (of: string, from: number, length: number, put = '') =>
  of.slice(0, from) + put + of.slice(from + length)
const nasty = fc.constantFrom(...NASTY).map((value) => JSON.stringify(value))

/** Every way that a file is changed on its way, by name. */
const CLASSES: Readonly<Record<string, fc.Arbitrary<string>>> = {
  torn: within(text.length).map((end) => text.slice(0, end)),
  headless: within(text.length).map((from) => text.slice(from)),
  'a hole': fc
    .tuple(within(text.length), fc.integer({ min: 1, max: 4000 }))
    .map(([at, n]) => cut(text, at, n)),
  'characters changed': fc
    .array(fc.tuple(within(text.length), fc.string({ minLength: 1, maxLength: 3 })), {
      minLength: 1,
      maxLength: 6,
    })
    .map((changes) => changes.reduce((all, [at, put]) => cut(all, at, put.length, put), text)),
  'lines gone, doubled and exchanged': fc
    .array(fc.tuple(within(lines.length), within(lines.length), fc.nat(2)), { minLength: 1, maxLength: 20 })
    .map((changes) => {
      const left = [...lines]
      for (const [a, b, how] of changes) {
        if (how === 0) left.splice(a, 1)
        else if (how === 1) left.splice(b, 0, left[a] ?? '')
        else [left[a], left[b]] = [left[b] ?? '', left[a] ?? '']
      }
      return left.join('\n')
    }),
  'values exchanged, checksums left': fc
    .array(fc.tuple(within(text.length), nasty), { minLength: 1, maxLength: 4 })
    .map((changes) =>
      changes.reduce((all, [from, value]) => {
        const at = all.indexOf(':', from) + 1
        const end = all.slice(at).search(/[,}\]]/)
        return at > 0 && end > 0 ? cut(all, at, end, value) : all
      }, text),
    ),
  'forged, every checksum mended': fc.array(forgery(records), { minLength: 1, maxLength: 6 }).map((forged) =>
    writeBackup(
      records.map((record) => forged.find(({ id }) => id === record.id) ?? record),
      { at: NOW, tz: 0 },
      forged,
    ),
  ),
  'forged of every kind, every checksum mended': fc
    .array(
      fc.nat(byKind.length - 1).chain((i) => forgery(byKind[i] ?? [])),
      { minLength: 1, maxLength: 6 },
    )
    .map((forged) =>
      writeBackup(
        everyKind.map((record) => forged.find(({ id }) => id === record.id) ?? record),
        { at: NOW, tz: 0 },
      ),
    ),
  'the phone’s own records forged': fc
    .array(forgery(OWN), { minLength: 1, maxLength: 6 })
    .map((forged) => writeBackup([...records, ...forged], { at: NOW, tz: 0 })),
  'another head': fc
    .tuple(fc.constantFrom('app', 'v', 'recordVersion', 'madeAt', 'tz', 'count', 'sum'), nasty)
    .map(([key, value]) => text.replace(new RegExp(`"${key}":[^,]+`), `"${key}":${value}`)),
  'no text of ours': fc.oneof(fc.json(), fc.string({ maxLength: 2000 })),
}

/** Folds what a journal holds and draws its bench's card. */
function opens(held: readonly JournalRecord<AnyEvent>[]): void {
  const table = fold(held as readonly JournalRecord<TableEvent>[])
  const now = NOW - table.skewMs
  const card = cardOf(table, now)
  outputsOf(table, now, card)
  expect(judged(table, card, now, judge).kind).toBeDefined()
}

test.each(Object.entries(CLASSES))('a backup: %s', { timeout: 7_200_000 }, async (_name, mutated) => {
  let longestMs = 0
  await fc.assert(
    fc.asyncProperty(mutated, async (file) => {
      const sinceMs = processorMs()
      const on = phone()
      const journal = await loadJournal(on.ports('own', KNOWLEDGE))
      await journal.merge(OWN, NOW)
      const read = await readBackup(file)
      if (read.ok) {
        const candidates = [...read.records, ...read.aside]
        const { added, known, displaced, faulty, waiting, ahead } = await journal.merge(candidates, NOW)
        // Every one of them is accounted for; of two contents under one id one is set aside.
        const told = added + known + faulty + waiting + ahead
        expect(told).toBeLessThanOrEqual(candidates.length)
        expect(told + displaced).toBeGreaterThanOrEqual(candidates.length)
      }
      const ids = new Set(journal.records.map(({ id }) => id))
      expect(OWN.every(({ id }) => ids.has(id))).toBe(true)
      opens(journal.records)
      const again = await loadJournal(on.ports('b', KNOWLEDGE))
      expect(again.records).toEqual(journal.records)
      longestMs = Math.max(longestMs, processorMs() - sinceMs)
    }),
    { numRuns: Math.ceil(RUNS / Object.keys(CLASSES).length) },
  )
  expect(longestMs).toBeLessThan(PATIENCE_MS)
})
