/**
 * A backup of every version that ever left, read for ever: schemas only widen. Add a file when `SCHEMA` is raised, and
 * one with the new kind when there is a new kind of event: what it holds then is held to what it meant.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { type EventKind, isKnownKind, type TableEvent } from '../../../shared/events.ts'
import type { AnyEvent, JournalRecord } from '../../../shared/record.ts'
import { readBackup } from '../../../src/store/backup.ts'
import { contentFault } from '../../../src/store/events-schema.ts'
import { loadJournal } from '../../../src/store/journal.ts'
import { SCHEMA } from '../../../src/store/marks.ts'
import { fold } from '../../../src/table/fold/fold.ts'
import { LIMITS } from '../../../src/table/model/limits.ts'
import { ALL_KINDS } from '../../fixtures/any-record.ts'
import { RANGES_2 } from '../../fixtures/ranges-2.ts'
import { phone } from './memory.ts'

const FOLDER = new URL('../../fixtures/backups/', import.meta.url)
const files = readdirSync(FOLDER)
const knowledge = {
  schema: SCHEMA,
  isEvent: ({ kind }: AnyEvent) => isKnownKind(kind),
  content: async () => contentFault,
}
const NOW = Date.UTC(2026, 2, 4)

test('there is one of each version', () => {
  expect(files.filter((file) => file.startsWith('version-'))).toHaveLength(SCHEMA)
})

test('every kind of event is in one of them', () => {
  const texts = files.map((file) => readFileSync(new URL(file, FOLDER), 'utf8')).join()
  expect(ALL_KINDS.filter((kind) => !texts.includes(`"kind":"${kind}"`))).toEqual([])
})

describe.each(files)('the backup %s', (file) => {
  test('is taken in whole and folded', async () => {
    const backup = await readBackup(readFileSync(new URL(file, FOLDER), 'utf8'))
    if (!backup.ok) throw new Error(backup.code)
    expect(backup.complete).toBe(true)
    const journal = await loadJournal<TableEvent>(phone().ports('a', knowledge))
    const report = await journal.merge(backup.records, NOW)
    expect(report).toMatchObject({ added: backup.count, faulty: 0, waiting: 0, ahead: 0 })
    const kinds = new Set(journal.records.map(({ event }): EventKind => event.kind))
    if (file.startsWith('version-')) expect(kinds.size).toBeGreaterThanOrEqual(50)
    const table = fold(journal.records as readonly JournalRecord<TableEvent>[])
    expect(Object.keys(table.pots).length).toBeGreaterThan(0)
  })
})

test.each(Object.entries(RANGES_2))(
  'what could be stored as %s can be stored still',
  (field, [least, most]) => {
    const now = Object.entries(LIMITS).find(([name]) => name === field)?.[1]
    expect(now?.least).toBeLessThanOrEqual(least)
    expect(now?.most).toBeGreaterThanOrEqual(most)
  },
)
