/** What is noted of other phones once their records are here: all that they said, what is without effect yet too. */
import { expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { loadJournal } from '../../../src/store/journal.ts'
import { fileTaken } from '../../../src/wire/meeting.ts'
import { hall, laidOn, PhoneAtTable } from '../../fixtures/phones.ts'
import { phone } from '../store/memory.ts'

const KNOWS = { schema: 1, isEvent: () => true, content: async () => () => undefined }

test('a removal that waits for an answer is known, so that the answer settles it', async () => {
  const at = hall()
  const c = laidOn(new PhoneAtTable('c', at))
  const facts = c.table.buckets['c-bucket']!.facts
  c.act({ do: 'set-bucket', bucket: { ...facts, bucketId: 'spare', name: 'Weir', letter: 'W' } })
  const b = new PhoneAtTable('b', at).read(c)
  at.nowMs += 5000
  c.act({ do: 'remove-bucket', bucketId: 'spare' })
  b.act({ do: 'stirred', bucketId: 'spare' })
  const removal = c.records.at(-1)!
  const journal = await loadJournal<TableEvent>(phone().ports('own.one', KNOWS))
  await journal.merge([...c.records, ...b.records], at.nowMs)
  await fileTaken(journal)
  const met = journal.records.flatMap(({ writer, event }) =>
    writer.startsWith('own.') && event.kind === 'met' && event.phone === 'c' ? [event.upTo] : [],
  )
  expect(removal.event.kind).toBe('bucket-gone')
  expect(Math.max(...met)).toBe(removal.order)
})
