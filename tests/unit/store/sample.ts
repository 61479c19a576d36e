import fc from 'fast-check'
import { createRecords, type JournalRecord } from '../../../shared/record.ts'
import type { Knowledge } from '../../../src/store/marks.ts'

export type Sample = { readonly kind: 'noted'; readonly text: string; readonly value?: number }

export const isSample = (event: { readonly kind: string }) => event.kind === 'noted'

/** A program that folds samples, with any text. */
export const KNOWS_SAMPLES: Knowledge = { schema: 1, isEvent: isSample, content: async () => () => undefined }

/** Cases a law is tried on. */
export const RUNS = Number(process.env.PROVE_RUNS ?? 200)

export const note = (text: string): Sample => ({ kind: 'noted', text })

/** `count` records of one hit. */
export const hitOf = (writer: string, seq: number, order: number, count = 1): JournalRecord<Sample>[] =>
  createRecords(
    Array.from({ length: count }, (_, index) => note(`${writer} ${seq + index}`)),
    { writer, seq, order },
    { at: 1_700_000_000_000 + order, tz: 60 },
  )

/**
 * Journals of a few writers who know of each other now and then. One id never has two contents, unless
 * `forged`.
 */
export const journals = (forged: boolean) =>
  fc
    .array(
      fc.record({
        writer: fc.constantFrom('a', 'b', 'c'),
        seq: fc.integer({ min: 1, max: 6 }),
        twist: forged ? fc.integer({ min: 0, max: 2 }) : fc.constant(0),
      }),
      { maxLength: 14 },
    )
    .map((drawn) => {
      const byId = new Map<string, JournalRecord<Sample>>()
      for (const { writer, seq, twist } of drawn) {
        // The order follows from the id, so that a record drawn twice is the same.
        const [record] = createRecords(
          [note(`${twist}`)],
          { writer, seq, order: seq * 2 + (writer === 'c' ? 1 : 0) },
          { at: 1_700_000_000_000, tz: 0 },
        )
        byId.set(record!.id, record!)
      }
      return [...byId.values()]
    })
