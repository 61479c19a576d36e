import { crc32 } from './crc.ts'

/** Version of a record's shape and of the meaning of its events. */
export const RECORD_VERSION = 1

/** What the journal asks of an event: a name for its kind, and a body that JSON can carry. */
export interface AnyEvent {
  readonly kind: string
}

/** The moment something happened, as the phone that wrote it saw it. */
export interface RecordTime {
  /** Epoch ms. */
  readonly at: number
  /** Minutes ahead of UTC. */
  readonly tz: number
  /** Monotonic ms within one life of the page, where known. */
  readonly mono?: number
}

/** One event as kept, sent and folded. Never changed once written. */
export interface JournalRecord<E extends AnyEvent> extends RecordTime {
  readonly v: typeof RECORD_VERSION
  /** `writer-seq`, unique among all phones. */
  readonly id: string
  /** One opening of the journal on one phone. */
  readonly writer: string
  /** Counts this writer's records from 1. */
  readonly seq: number
  /** Lamport time of the hit: larger than all its writer had seen (doi:10.1145/359545.359563). */
  readonly order: number
  /** Id of the first record that the same hit caused. */
  readonly hit: string
  readonly event: E
  /** CRC-32 of the rest. */
  readonly sum: number
}

/** Why a value is not a record to fold. */
export type Fault =
  /** Not the shape of a record. */
  | 'shape'
  /** The shape of a record, but not as it was written. */
  | 'sum'
  /** An intact record of a kind this program does not know. */
  | 'kind'
  /** Written by a newer program. */
  | 'newer'

export type Examined<E extends AnyEvent> = { readonly record: JournalRecord<E> } | { readonly fault: Fault }

/** A writer's name as it may be. */
export const WRITER = /^[a-z0-9.]{1,64}$/
/** Beyond any real count, so that a forged number cannot exhaust those that follow it. */
const LARGEST_COUNT = 2 ** 48
/** 2090, epoch ms. Orders follow the clock so far; those up to 2100 are left for the hits that come after. */
const LATEST_CLOCK = 3_786_912_000_000
const LARGEST_ORDER = 4_102_444_800_000
/** Offsets reach from -12 to +14 hours (IANA time zone database); a day holds any future one. */
const LARGEST_TZ_MIN = 24 * 60
/** Time values end here (ECMA-262, section 21.4.1.1). */
const LARGEST_EPOCH_MS = 8.64e15

/** Id of a writer's record: two writers never share one. */
export const recordId = (writer: string, seq: number) => `${writer}-${seq}`

/** The phone that a writer was one opening of. */
export function phoneOfWriter(writer: string): string {
  const dot = writer.indexOf('.')
  return dot < 0 ? writer : writer.slice(0, dot)
}

function sumOf(record: Omit<JournalRecord<AnyEvent>, 'sum'>): number {
  const { v, id, order, hit, at, tz, mono, event } = record
  return crc32(JSON.stringify([v, id, order, hit, at, tz, mono ?? null, event]))
}

/** The event as JSON will give it back. RangeError on a number that JSON cannot carry. */
function plain<E extends AnyEvent>(event: E): E {
  const text = JSON.stringify(event, (key, value) => {
    if (typeof value === 'number' && !Number.isFinite(value)) {
      throw new RangeError(`${event.kind}: ${key} is ${value}, not finite`)
    }
    return value
  })
  return JSON.parse(text)
}

/**
 * Records of the events of one hit, in order. `seq` is the first one's; all share `order` and `hit`, so that
 * the fold keeps them together whatever another phone wrote meanwhile. RangeError on a number not finite.
 */
export function createRecords<E extends AnyEvent>(
  events: readonly E[],
  { writer, seq, order }: { readonly writer: string; readonly seq: number; readonly order: number },
  { at, tz, mono }: RecordTime,
): JournalRecord<E>[] {
  const hit = recordId(writer, seq)
  return events.map((event, index) =>
    sealed({
      writer,
      seq: seq + index,
      order,
      hit,
      at,
      tz,
      ...(mono === undefined ? {} : { mono }),
      event: plain(event),
    }),
  )
}

/** A record of its parts, what follows from them added. RangeError where they make none. */
export function sealed<E extends AnyEvent>(
  parts: Omit<JournalRecord<E>, 'v' | 'id' | 'sum'>,
): JournalRecord<E> {
  const { writer, seq, event, ...rest } = parts
  const body = { v: RECORD_VERSION, id: recordId(writer, seq), writer, seq, ...rest, event } as const
  const record = { ...body, sum: sumOf(body) }
  if (!hasShape(record)) throw new RangeError(`no record: ${JSON.stringify({ ...body, event: event?.kind })}`)
  return record
}

const isCount = (value: unknown, largest = LARGEST_COUNT) =>
  Number.isInteger(value) && (value as number) > 0 && (value as number) < largest

/**
 * The order of a hit at `atMs` after one of order `last`. A hybrid logical clock (doi:10.1007/978-3-319-14472-6_2):
 * later than all that was seen, and near the wall clock, so that what two phones did apart falls into place by time
 * when they meet. A clock that is beyond any phone in use is not followed.
 */
export const nextOrder = (last: number, atMs: number): number =>
  Math.max(atMs < LATEST_CLOCK ? Math.floor(atMs) : 0, last + 1, 1)

const isWithin = (value: unknown, limit: number) =>
  Number.isFinite(value) && Math.abs(value as number) <= limit

function hasShape(value: object): value is JournalRecord<AnyEvent> {
  const { id, writer, seq, order, hit, at, tz, mono, event, sum } = value as Record<string, unknown>
  return (
    typeof writer === 'string' &&
    WRITER.test(writer) &&
    isCount(seq) &&
    id === recordId(writer, seq as number) &&
    isCount(order, LARGEST_ORDER) &&
    typeof hit === 'string' &&
    hit !== '' &&
    isWithin(at, LARGEST_EPOCH_MS) &&
    isWithin(tz, LARGEST_TZ_MIN) &&
    (mono === undefined || Number.isFinite(mono)) &&
    typeof event === 'object' &&
    event !== null &&
    typeof (event as Partial<AnyEvent>).kind === 'string' &&
    typeof sum === 'number'
  )
}

/** Tells whether a stored or imported value is a record to fold. `isEvent` knows the kinds. Never throws. */
export function examine<E extends AnyEvent>(
  value: unknown,
  isEvent: (event: AnyEvent) => boolean,
): Examined<E> {
  if (typeof value !== 'object' || value === null) return { fault: 'shape' }
  const { v } = value as { v?: unknown }
  if (typeof v === 'number' && Number.isInteger(v) && v > RECORD_VERSION) return { fault: 'newer' }
  if (v !== RECORD_VERSION || !hasShape(value)) return { fault: 'shape' }
  if (sumOf(value) !== value.sum) return { fault: 'sum' }
  return isEvent(value.event) ? { record: value as JournalRecord<E> } : { fault: 'kind' }
}

/** Clocks of two phones that are further apart are to be set first, ms. */
export const MOST_APART_MS = 86_400_000

/** Whether a record was written by the phone of this name. */
export const isBy = (phone: string) => {
  const begin = `${phone}.`
  return ({ writer }: Pick<JournalRecord<AnyEvent>, 'writer'>): boolean => writer.startsWith(begin)
}

type Place = Pick<JournalRecord<AnyEvent>, 'order' | 'writer' | 'seq'>

/** Order of the fold, the same on every phone: Lamport time, then writer, then the writer's own count. */
export function compareRecords(a: Place, b: Place): number {
  if (a.order !== b.order) return a.order - b.order
  if (a.writer !== b.writer) return a.writer < b.writer ? -1 : 1
  return a.seq - b.seq
}
