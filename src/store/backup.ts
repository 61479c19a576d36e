import * as z from 'zod/mini'
import { crc32 } from '../../shared/crc.ts'
import { type AnyEvent, type JournalRecord, RECORD_VERSION, type RecordTime } from '../../shared/record.ts'
import { breath, inSlices } from './slices.ts'

// Without `new Function`, which the page's content policy forbids.
z.config({ jitless: true })

/** Version of the file's shape; its records carry their own. */
const FILE_VERSION = 1
/** A lifetime's journal is a few MB; a larger text is something else, and would stall a phone. */
const LARGEST_CHARS = 64_000_000

/** No record's line is shorter. */
const SHORTEST_CHARS = 60
/** So many lines that look like records and are none, before the first that is one: then none is looked for. */
const TRIES_MOST = 1000
/** So many lines are looked at in a moment. */
const SHORT_LINES = 1000

const Shape = z.object({ app: z.literal('bucketside'), v: z.int().check(z.gte(1)) })
const Head = z.object({
  ...Shape.shape,
  madeAt: z.number(),
  tz: z.number(),
  count: z.int().check(z.gte(0)),
  sum: z.number(),
  /** Earlier programs said nothing of them. */
  pictures: z.optional(z.int().check(z.gte(0))),
  phone: z.optional(z.string()),
  records: z.array(z.unknown()),
  aside: z.optional(z.array(z.unknown())),
})

export type Backup =
  | {
      readonly ok: true
      /** To be given to `Journal.merge`, which examines each of them. */
      readonly records: readonly unknown[]
      /** What the phone could not fold when it wrote the file. */
      readonly aside: readonly unknown[]
      /** Epoch ms; null when the head of the file is gone. */
      readonly madeAt: number | null
      /** Records the file was made with; null when the head is gone. */
      readonly count: number | null
      /** False when records are missing or changed since the file was made: what can be read still is. */
      readonly complete: boolean
      /** Pictures it was made with; none where that is not said. */
      readonly pictures: number
      /** The phone that made it; null where that is not said. */
      readonly phone: string | null
    }
  | { readonly ok: false; readonly code: 'too-large' | 'not-a-backup' | 'newer' }

const sumIn = (record: unknown) => (record as { sum?: unknown } | null)?.sum
const sumOf = (records: readonly unknown[]) => crc32(records.map(sumIn).join())

const HEAD_END = ',"records":['
const ASIDE_START = '],"aside":['

/**
 * Text of a backup file (JSON, one record a line) of everything in the journal and what was set aside. `pictures`: how many
 * will follow, so that a file torn before or among them is known for it; `phone`: who makes it.
 */
export function writeBackup(
  records: readonly JournalRecord<AnyEvent>[],
  { at, tz }: RecordTime,
  aside: readonly unknown[] = [],
  pictures = 0,
  phone?: string,
): string {
  const head = {
    app: 'bucketside',
    v: FILE_VERSION,
    recordVersion: RECORD_VERSION,
    madeAt: at,
    tz,
    count: records.length,
    sum: sumOf(records),
    ...(pictures > 0 ? { pictures } : {}),
    ...(phone === undefined ? {} : { phone }),
  }
  const lines = (values: readonly unknown[]) => values.map((value) => JSON.stringify(value)).join(',\n')
  return `${JSON.stringify(head).slice(0, -1)}${HEAD_END}\n${lines(records)}\n${ASIDE_START}\n${lines(aside)}\n]}\n`
}

/** Reads a backup file, or its lines, without freezing the page. A torn one gives the records whose lines are whole. */
export async function readBackup(text: string | readonly string[]): Promise<Backup> {
  const lines = typeof text === 'string' ? text.split('\n') : text
  if (lines.reduce((chars, { length }) => chars + length + 1, -1) > LARGEST_CHARS)
    return { ok: false, code: 'too-large' }
  const line = lines[0]?.trim()
  const head = Head.safeParse(parsed(line?.endsWith(HEAD_END) ? `${line}]}` : ''))
  // Laid out otherwise: by another program, or by hand.
  if (!head.success) return whole(lines)
  if (head.data.v > FILE_VERSION) return { ok: false, code: 'newer' }
  const records: unknown[] = []
  const aside: unknown[] = []
  let into = records
  // The head by itself is no JSON.
  await inSlices(lines, (laid) => {
    const line = laid.trim()
    if (line === ASIDE_START) into = aside
    else if (line.startsWith('{')) {
      const value = parsed(line.endsWith(',') ? line.slice(0, -1) : line)
      if (value !== undefined) into.push(value)
    }
  })
  const sums: unknown[] = []
  await inSlices(records, (record) => sums.push(sumIn(record)))
  await breath()
  const { madeAt, count, sum, pictures = 0, phone = null } = head.data
  const complete = records.length === count && crc32(sums.join()) === sum && into === aside
  await breath()
  return { ok: true, records, aside, madeAt, count, complete, pictures, phone }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** A file of another layout: JSON as a whole, or else the lines of it that are records. */
async function whole(lines: readonly string[]): Promise<Backup> {
  const value = parsed(lines.join('\n'))
  // Of a newer shape nothing but its head is known.
  const shape = Shape.safeParse(value)
  if (shape.success && shape.data.v > FILE_VERSION) return { ok: false, code: 'newer' }
  const read = Head.safeParse(value)
  if (read.success) {
    const { records, aside = [], madeAt, count, sum, pictures = 0, phone = null } = read.data
    const complete = records.length === count && sumOf(records) === sum
    return { ok: true, records, aside, madeAt, count, complete, pictures, phone }
  }
  const records: unknown[] = []
  let refused = 0
  await inSlices(
    lines,
    (line) => {
      // Each try that fails takes long, and what is no file of ours may have millions of lines.
      if (line.length < SHORTEST_CHARS || (records.length === 0 && refused > TRIES_MOST)) return
      const laid = line.trim()
      if (!laid.startsWith('{') || !laid.includes('"writer"')) return
      const value = parsed(laid.endsWith(',') ? laid.slice(0, -1) : laid)
      if (typeof value === 'object' && value !== null && 'writer' in value) records.push(value)
      else refused++
    },
    SHORT_LINES,
  )
  if (records.length === 0) return { ok: false, code: 'not-a-backup' }
  return {
    ok: true,
    records,
    aside: [],
    madeAt: null,
    count: null,
    complete: false,
    pictures: 0,
    phone: null,
  }
}
