/**
 * Records as bytes to pass: in columns, as what stands in one field resembles itself, without what follows from the
 * rest, deflated (RFC 1951). They come back exactly.
 */

import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate'
import { type AnyEvent, type JournalRecord, recordId, sealed } from '../../shared/record.ts'

/** Of this layout. */
const VERSION = 1
/** Of columns before deflating: more than a lifetime's journal, and what a phone can still hold. */
const LARGEST_BYTES = 64_000_000

const LENGTH_BYTES = 4

/** A field of one kind of event: as it is, or numbers less the record's clock. */
type Column = readonly [mode: 'plain' | 'clock', values: readonly unknown[]]

interface Columns {
  readonly v: typeof VERSION
  readonly writers: readonly string[]
  /** Kinds by the fields they have. */
  readonly kinds: readonly (readonly [fields: readonly string[], columns: readonly Column[]])[]
  /** A record each: writer, kind; count beyond that writer's last record; order beyond the last record's. */
  readonly w: readonly number[]
  readonly k: readonly number[]
  readonly s: readonly number[]
  readonly o: readonly number[]
  /** Clock beyond the order, ms, as text where the difference is not exact; offset, min. */
  readonly a: readonly (number | string)[]
  readonly z: readonly number[]
  /** Page's clock beyond that of the writer's last record, less what the clock went on; null where none is known. */
  readonly m: readonly (number | string | null)[]
  /** Records of that writer back to the hit's first; the hit as it is where it is none of that writer's. */
  readonly h: readonly (number | string)[]
}

interface Last {
  seq: number
  at: number
  mono: number
}

/** `value` beyond `from`, or as text where adding that to `from` gives another number. */
function beyond(value: number, from: number): number | string {
  const more = value - from
  return from + more === value ? more : String(value)
}

const added = (more: number | string, from: number): number =>
  typeof more === 'string' ? Number(more) : from + more

function backTo(hit: string, writer: string, seq: number): number | string {
  const own = Number(hit.slice(writer.length + 1))
  return Number.isInteger(own) && own > 0 && recordId(writer, own) === hit ? seq - own : hit
}

/** Bytes of records in the order of the fold. */
export function writeColumns(records: readonly JournalRecord<AnyEvent>[]): Uint8Array {
  const writers = new Map<string, { readonly index: number; readonly last: Last }>()
  const kinds = new Map<string, { index: number; fields: string[]; rows: AnyEvent[]; clocks: number[] }>()
  const [w, k, s, o, z]: [number[], number[], number[], number[], number[]] = [[], [], [], [], []]
  const [a, h, m]: [(number | string)[], (number | string)[], (number | string | null)[]] = [[], [], []]
  let order = 0
  for (const record of records) {
    const { writer, seq, at, tz, mono, event } = record
    const by = writers.get(writer) ?? { index: writers.size, last: { seq: 0, at: 0, mono: 0 } }
    writers.set(writer, by)
    const fields = Object.keys(event)
    const name = JSON.stringify([event.kind, ...fields])
    const of = kinds.get(name) ?? { index: kinds.size, fields, rows: [], clocks: [] }
    kinds.set(name, of)
    of.rows.push(event)
    of.clocks.push(at)
    w.push(by.index)
    k.push(of.index)
    s.push(seq - by.last.seq)
    o.push(record.order - order)
    a.push(beyond(at, record.order))
    z.push(tz)
    m.push(mono === undefined ? null : beyond(mono, by.last.mono + (at - by.last.at)))
    h.push(backTo(record.hit, writer, seq))
    Object.assign(by.last, { seq, at, mono: mono ?? by.last.mono })
    order = record.order
  }
  const columns: Columns = {
    v: VERSION,
    writers: [...writers.keys()],
    kinds: [...kinds.values()].map(({ fields, rows, clocks }) => [
      fields,
      fields.map((field) =>
        columnOf(
          rows.map((row) => (row as unknown as Record<string, unknown>)[field]),
          clocks,
        ),
      ),
    ]),
    w,
    k,
    s,
    o,
    a,
    z,
    m,
    h,
  }
  return packed(strToU8(JSON.stringify(columns)))
}

/** Deflated, its length before that ahead of it. */
export function packed(text: Uint8Array): Uint8Array {
  const deflated = deflateSync(text, { level: 9 })
  const bytes = new Uint8Array(LENGTH_BYTES + deflated.length)
  new DataView(bytes.buffer).setUint32(0, text.length)
  bytes.set(deflated, LENGTH_BYTES)
  return bytes
}

function columnOf(values: readonly unknown[], clocks: readonly number[]): Column {
  const all = values[0]
  if (values.every((value) => value === all) && typeof all !== 'object') return ['plain', [all]]
  const near = values.map((value, r) =>
    typeof value === 'number' && value > 1e12 ? beyond(value, clocks[r] ?? 0) : '',
  )
  return near.every((more) => typeof more === 'number') ? ['clock', near] : ['plain', values]
}

/** The text in it, or undefined where there is none of the length it says. */
export function inflated(bytes: Uint8Array): string | undefined {
  if (bytes.length <= LENGTH_BYTES) return undefined
  const length = new DataView(bytes.buffer, bytes.byteOffset).getUint32(0)
  if (length > LARGEST_BYTES) return undefined
  try {
    // What goes beyond the room there is gets lost, however much that would be.
    const text = inflateSync(bytes.subarray(LENGTH_BYTES), { out: new Uint8Array(length) })
    return text.length === length ? strFromU8(text) : undefined
  } catch {
    return undefined
  }
}

/**
 * Records of the bytes that `writeColumns` gave, to be examined like any other; `newer` for those of a newer program, and
 * undefined for other bytes.
 */
export function readColumns(bytes: Uint8Array): readonly JournalRecord<AnyEvent>[] | 'newer' | undefined {
  const text = inflated(bytes)
  if (text === undefined) return undefined
  try {
    const columns = JSON.parse(text)
    if (isNewer(columns)) return 'newer'
    return [...recordsOf(columns)]
  } catch {
    return undefined
  }
}

/** A handout bears a version too, of its own. */
const isNewer = (columns: Partial<Columns> | null): boolean =>
  typeof columns?.v === 'number' && columns.v > VERSION && Array.isArray(columns.writers)

function* recordsOf({ v, writers, kinds, ...rows }: Columns): Generator<JournalRecord<AnyEvent>> {
  if (v !== VERSION) throw new RangeError(`columns of version ${v}, ${VERSION} is wanted`)
  const count = rows.w.length
  if (Object.values(rows).some((column) => !Array.isArray(column) || column.length !== count))
    throw new RangeError('columns of different lengths')
  const lasts = writers.map((): Last => ({ seq: 0, at: 0, mono: 0 }))
  const taken = kinds.map(() => 0)
  let order = 0
  for (let r = 0; r < count; r++) {
    const by = rows.w[r] as number
    const kind = rows.k[r] as number
    const [writer, last, columnsOf] = [
      writers[by] as string,
      lasts[by] as Last,
      kinds[kind] as Columns['kinds'][number],
    ]
    order += rows.o[r] as number
    const seq = last.seq + (rows.s[r] as number)
    const at = added(rows.a[r] as number | string, order)
    const more = rows.m[r] ?? null
    const mono = more === null ? undefined : added(more, last.mono + (at - last.at))
    const back = rows.h[r] as number | string
    const row = taken[kind] as number
    taken[kind] = row + 1
    yield sealed({
      writer,
      seq,
      order,
      hit: typeof back === 'string' ? back : recordId(writer, seq - back),
      at,
      tz: rows.z[r] as number,
      ...(mono === undefined ? {} : { mono }),
      event: eventOf(columnsOf, row, at),
    })
    Object.assign(last, { seq, at, mono: mono ?? last.mono })
  }
}

function eventOf([fields, columns]: Columns['kinds'][number], row: number, at: number): AnyEvent {
  return Object.fromEntries(
    fields.map((field, f) => {
      const [mode, values] = columns[f] as Column
      const value = values.length === 1 ? values[0] : values[row]
      return [field, mode === 'clock' ? added(value as number, at) : value]
    }),
  ) as unknown as AnyEvent
}
