import * as z from 'zod/mini'
import { crc32 } from '../../shared/crc.ts'
import { type AnyEvent, type JournalRecord, RECORD_VERSION, type RecordTime } from '../../shared/record.ts'

/** Version of the file's shape; its records carry their own. */
const FILE_VERSION = 1
/** A lifetime's journal is a few MB; a larger text is something else, and would stall a phone. */
const LARGEST_CHARS = 64_000_000

const Head = z.object({ app: z.literal('bucketside'), v: z.int().check(z.gte(1)) })
const File = z.object({
  ...Head.shape,
  madeAt: z.number(),
  tz: z.number(),
  count: z.int().check(z.gte(0)),
  sum: z.number(),
  records: z.array(z.unknown()),
})

export type Backup =
  | {
      readonly ok: true
      /** To be given to `Journal.merge`, which examines each of them. */
      readonly records: readonly unknown[]
      /** Epoch ms; null when the head of the file is gone. */
      readonly madeAt: number | null
      /** False when records are missing or changed since the file was made: what can be read still is. */
      readonly complete: boolean
    }
  | { readonly ok: false; readonly code: 'too-large' | 'not-a-backup' | 'newer' }

const sumOf = (records: readonly unknown[]) =>
  crc32(records.map((record) => (record as { sum?: unknown } | null)?.sum).join())

/** Text of a backup file (JSON, one record a line) of everything in the journal. */
export function writeBackup(records: readonly JournalRecord<AnyEvent>[], { at, tz }: RecordTime): string {
  const head = {
    app: 'bucketside',
    v: FILE_VERSION,
    recordVersion: RECORD_VERSION,
    madeAt: at,
    tz,
    count: records.length,
    sum: sumOf(records),
  }
  const lines = records.map((record) => JSON.stringify(record)).join(',\n')
  return `${JSON.stringify(head).slice(0, -1)},"records":[\n${lines}\n]}\n`
}

/** Reads a backup file. A torn one gives the records whose lines are whole. */
export function readBackup(text: string): Backup {
  if (text.length > LARGEST_CHARS) return { ok: false, code: 'too-large' }
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return salvage(text)
  }
  // Of a newer shape nothing but its head is known.
  const head = Head.safeParse(value)
  if (!head.success) return { ok: false, code: 'not-a-backup' }
  if (head.data.v > FILE_VERSION) return { ok: false, code: 'newer' }
  const read = File.safeParse(value)
  if (!read.success) return { ok: false, code: 'not-a-backup' }
  const { records, count, sum, madeAt } = read.data
  return { ok: true, records, madeAt, complete: records.length === count && sumOf(records) === sum }
}

function salvage(text: string): Backup {
  const records = text.split('\n').flatMap((line) => {
    try {
      const value: unknown = JSON.parse(line.replace(/,\s*$/, ''))
      return typeof value === 'object' && value !== null && 'writer' in value ? [value] : []
    } catch {
      return []
    }
  })
  if (records.length === 0) return { ok: false, code: 'not-a-backup' }
  return { ok: true, records, madeAt: null, complete: false }
}
