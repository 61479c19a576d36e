/** Whatever a journal holds, the bench opens: what is wrong inside is set aside, the rest is folded. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isKnownKind, type TableEvent } from '../../shared/events.ts'
import { type AnyEvent, createRecords, type JournalRecord } from '../../shared/record.ts'
import { contentFault } from '../../src/store/events-schema.ts'
import { loadJournal } from '../../src/store/journal.ts'
import { marked, SCHEMA } from '../../src/store/marks.ts'
import { cardOf } from '../../src/table/card/card-now.ts'
import { judge } from '../../src/table/card/engine-judge.ts'
import { judged } from '../../src/table/card/judged.ts'
import { outputsOf } from '../../src/table/card/outputs.ts'
import { fold } from '../../src/table/fold/fold.ts'
import { histories } from '../fixtures/any-record.ts'
import { forgery } from '../fixtures/forged.ts'
import { lookAt, lookAtKiln, lookAtOpened } from '../fixtures/look.ts'
import { recordsOf, waiting } from '../fixtures/season.ts'
import { tableOf } from '../fixtures/seen-by.ts'
import { phone } from '../unit/store/memory.ts'

const NOW = Date.UTC(2026, 2, 3, 21)
const RUNS = Number(process.env.PROVE_RUNS ? 10_000 : 30)
const records = recordsOf(waiting(4, NOW))
const KNOWLEDGE = {
  schema: SCHEMA,
  isEvent: ({ kind }: AnyEvent) => isKnownKind(kind),
  content: async () => contentFault,
}

const SOUND = new Set(records.map(({ sum }) => sum))

/** Folds what a journal holds and draws its bench's card, now and an hour on; where a forged record passed, all else too. */
function bench(held: readonly JournalRecord<AnyEvent>[]) {
  const table = fold(held as readonly JournalRecord<TableEvent>[])
  if (held.some(({ sum }) => !SOUND.has(sum))) lookAt(table, NOW - table.skewMs)
  return [0, 3_600_000].map((laterMs) => {
    const now = NOW + laterMs - table.skewMs
    const card = cardOf(table, now)
    outputsOf(table, now, card)
    return judged(table, card, now, judge).kind
  })
}

/** The journal with some records exchanged for forged ones, and some gone. */
const forgeries = fc
  .tuple(
    fc.array(forgery(records), { minLength: 1, maxLength: 4 }),
    fc.array(fc.nat(records.length - 1), { maxLength: 20 }),
  )
  .map(([forged, gone]) =>
    records
      .map((record) => forged.find(({ id }) => id === record.id) ?? record)
      .filter((_, index) => !gone.includes(index)),
  )

test('of a backup with forged contents all that is well-formed is taken in, and the bench opens', async () => {
  await fc.assert(
    fc.asyncProperty(forgeries, async (all) => {
      const on = phone()
      const journal = await loadJournal(on.ports('a', KNOWLEDGE))
      const report = await journal.merge(all, NOW)
      expect(report.added + report.waiting).toBe(all.length)
      expect(bench(journal.records)).not.toContain(undefined)
      const again = await loadJournal(on.ports('b', KNOWLEDGE))
      expect(again.records).toEqual(journal.records)
      expect(again.opening.quarantined).toHaveLength(report.waiting)
    }),
    { numRuns: RUNS },
  )
})

test('forged records in the database, under the marks of sound ones, are found and set aside', async () => {
  await fc.assert(
    fc.asyncProperty(forgeries, async (all) => {
      const on = phone()
      const sound = new Map(records.map((record) => [record.id, marked(record, 1).checked]))
      for (const record of all) on.journal.set(record.id, { ...record, checked: sound.get(record.id) })
      const journal = await loadJournal(on.ports('a', KNOWLEDGE))
      expect(journal.records.length + journal.opening.quarantined.length).toBe(all.length)
      expect(bench(journal.records)).not.toContain(undefined)
    }),
    { numRuns: RUNS },
  )
})

/** Records of every kind, some of them forged within their ranges: what an evening at the table does not have too. */
const ofEveryKind = histories
  .filter(({ length }) => length > 5)
  .chain((events) => {
    const drawn = events.map(
      ({ event, at, writer }, i) =>
        createRecords([event], { writer: writer ?? 'a.1', seq: i + 1, order: at + i }, { at, tz: 0 })[0]!,
    )
    const forgeries = fc.array(forgery(drawn), { minLength: 1, maxLength: 12 })
    return forgeries.map((forged) =>
      drawn.map((record) => forged.find(({ id }) => id === record.id) ?? record),
    )
  })

test('forged records of every kind that are well-formed fold, and every screen of the kiln and the open lid has its answer', async () => {
  await fc.assert(
    fc.asyncProperty(ofEveryKind, async (all) => {
      const journal = await loadJournal<TableEvent>(phone().ports('a', KNOWLEDGE))
      await journal.merge(all, NOW)
      const table = tableOf(journal.records, 'a')
      for (const laterMs of [0, 3_600_000, 30 * 86_400_000]) {
        const now = (journal.records.at(-1)?.at ?? NOW) + laterMs - table.skewMs
        const card = cardOf(table, now)
        outputsOf(table, now, card)
        expect(judged(table, card, now, judge).kind).toBeDefined()
        lookAt(table, now)
        lookAtKiln(table, now)
        lookAtOpened(table, now)
      }
    }),
    { numRuns: RUNS * 4 },
  )
})
