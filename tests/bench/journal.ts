/** Times of the journal and the fold of a long life: 10,000 records, in Node. */
import '../../src/table/forecast/walls.ts'
import type { Stamped } from '../../shared/events.ts'
import { compareRecords, type JournalRecord } from '../../shared/record.ts'
import { contentFault } from '../../src/store/events-schema.ts'
import { marked, SCHEMA } from '../../src/store/marks.ts'
import { pack } from '../../src/store/pack.ts'
import { sortOut } from '../../src/store/quarantine.ts'
import { fold, step } from '../../src/table/fold/fold.ts'
import { crowd, recordsOf, season } from '../fixtures/season.ts'

const RUNS = 15
const EVENTS = 10_000
const PACK = 1000
const POTS = 1000

/** Median of `RUNS` after as many to warm up, ms. */
function median(run: () => unknown): number {
  for (let i = 0; i < RUNS; i++) run()
  const times = Array.from({ length: RUNS }, () => {
    const from = performance.now()
    run()
    return performance.now() - from
  })
  return times.sort((a, b) => a - b)[RUNS >> 1]!
}

/** Records in packs, as `tidy` leaves them. */
export const packed = (records: readonly JournalRecord<{ readonly kind: string }>[]) =>
  Array.from({ length: Math.ceil(records.length / PACK) }, (_, index) =>
    pack(records.slice(index * PACK, (index + 1) * PACK), SCHEMA),
  )

export function benchJournal() {
  const events = season(EVENTS)
  const records = recordsOf(events)
  const packs = packed(records)
  const singles = records.map((record) => [record.id, marked(record, SCHEMA)] as const)
  const known = { schema: SCHEMA, isEvent: () => true, content: async () => contentFault }
  const wide = crowd(EVENTS, POTS)
  const table = fold(wide)
  const back: Stamped = {
    id: 'back',
    hit: 'back',
    at: wide.at(-1)?.at ?? 0,
    event: { kind: 'taken-back', hit: table.hits.at(-1)?.hit ?? '' },
  }
  return [
    { name: 'replay of 10,000 events', ms: median(() => fold(events)), budgetMs: 60 },
    { name: 'replay of 10,000 events of 1,000 pots', ms: median(() => fold(wide)), budgetMs: 60 },
    { name: 'taking back the last of them', ms: median(() => step(table, wide, [back])), budgetMs: 15 },
    { name: 'reading 10,000 records from packs', ms: median(() => sortOut(packs, known)), budgetMs: 100 },
    { name: 'checking 10,000 single records', ms: median(() => sortOut(singles, known)), budgetMs: 150 },
    { name: 'sorting 10,000 records', ms: median(() => [...records].sort(compareRecords)), budgetMs: 30 },
  ]
}
