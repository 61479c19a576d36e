/** What a phone has of each phone's records, in a few bytes: enough to know what it lacks, and whether it lacks any. */

import { crc32 } from '../../shared/crc.ts'
import { type AnyEvent, type JournalRecord, phoneOfWriter, WRITER } from '../../shared/record.ts'

/** Of one phone's records. */
export interface Head {
  readonly phone: string
  /** Order of the last. */
  readonly last: number
  readonly count: number
  /** Sum of all ids' numbers. */
  readonly mixed: number
}

type Row = Pick<JournalRecord<AnyEvent>, 'id' | 'writer' | 'order'>

/** CRC-32 alone is linear: ids that count up would cancel each other. The last steps of MurmurHash3 undo that. */
function numberOf(id: string): number {
  let mixed = crc32(id)
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b)
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35)
  return (mixed ^ (mixed >>> 16)) >>> 0
}

/** Heads of a journal's records, those of the phone that wrote last first. */
export function headsOf(records: readonly Row[]): readonly Head[] {
  const heads = new Map<string, { phone: string; last: number; count: number; mixed: number }>()
  for (const { id, writer, order } of records) {
    const phone = phoneOfWriter(writer)
    const head = heads.get(phone) ?? { phone, last: 0, count: 0, mixed: 0 }
    heads.set(phone, head)
    head.last = Math.max(head.last, order)
    head.count++
    head.mixed = (head.mixed + numberOf(id)) >>> 0
  }
  return [...heads.values()].sort((a, b) => b.last - a.last || (a.phone < b.phone ? -1 : 1))
}

/**
 * Which of `records` whoever has `theirs` lacks: of each phone those later than its head there; all of that phone's where
 * the two do not agree up to there, for then one lies before it.
 */
export function lacking<R extends Row>(records: readonly R[], theirs: readonly Head[]): readonly R[] {
  const known = new Map(theirs.map((head) => [head.phone, head]))
  const upTo = new Map(
    headsOf(
      records.filter(({ writer, order }) => order <= (known.get(phoneOfWriter(writer))?.last ?? 0)),
    ).map((head) => [head.phone, head]),
  )
  const agrees = (phone: string) => {
    const [there, here] = [known.get(phone), upTo.get(phone)]
    return there !== undefined && there.count === here?.count && there.mixed === here.mixed
  }
  const agreed = new Map([...known.keys()].map((phone) => [phone, agrees(phone)]))
  return records.filter(({ writer, order }) => {
    const phone = phoneOfWriter(writer)
    return !agreed.get(phone) || order > (known.get(phone)?.last ?? 0)
  })
}

/** Whether these are all records up to where `theirs` end, of each phone that they tell of. */
export function holds(records: readonly Row[], theirs: readonly Head[]): boolean {
  const until = new Map(theirs.map(({ phone, last }) => [phone, last]))
  const ours = headsOf(
    records.filter(({ writer, order }) => order <= (until.get(phoneOfWriter(writer)) ?? 0)),
  )
  const here = new Map(ours.map((head) => [head.phone, head]))
  return theirs.every(
    ({ phone, count, mixed }) => here.get(phone)?.count === count && here.get(phone)?.mixed === mixed,
  )
}

/** Whether who has these heads can have shown those records, as far as they tell of all phones. */
export function covers(heads: readonly Head[], records: readonly Row[]): boolean {
  const last = new Map(heads.map((head) => [head.phone, head.last]))
  const beyond = heads.length < HEADS_MOST ? 0 : Number.POSITIVE_INFINITY
  return records.every(({ writer, order }) => order <= (last.get(phoneOfWriter(writer)) ?? beyond))
}

/** What a phone says of itself before all else. */
export interface Hello {
  /** Its name among writers. */
  readonly phone: string
  /** Its clock, epoch ms. */
  readonly clockMs: number
  readonly heads: readonly Head[]
}

const NAME_BYTES = 8
const CLOCK_BYTES = 6
/** Name, order of the last, count, ids. */
const HEAD_BYTES = NAME_BYTES + 6 + 3 + 4
/** So many fit a code of the usual size: the phones that wrote last. */
export const HEADS_MOST = 20

/** 48 bits hold any clock and order there is. */
function putLong(view: DataView, at: number, value: number): void {
  view.setUint16(at, Math.floor(value / 2 ** 32))
  view.setUint32(at + 2, value % 2 ** 32)
}
const longAt = (view: DataView, at: number) => view.getUint16(at) * 2 ** 32 + view.getUint32(at + 2)

/** Body of a hello's frame. */
export function writeHello({ phone, clockMs, heads }: Hello): Uint8Array {
  const told = heads.slice(0, HEADS_MOST)
  const bytes = new Uint8Array(NAME_BYTES + CLOCK_BYTES + told.length * HEAD_BYTES)
  const view = new DataView(bytes.buffer)
  const putName = (at: number, name: string) =>
    bytes.set(new TextEncoder().encode(name).subarray(0, NAME_BYTES), at)
  putName(0, phone)
  putLong(view, NAME_BYTES, Math.floor(clockMs))
  told.forEach((head, i) => {
    const at = NAME_BYTES + CLOCK_BYTES + i * HEAD_BYTES
    putName(at, head.phone)
    putLong(view, at + NAME_BYTES, head.last)
    view.setUint8(at + 14, head.count >> 16)
    view.setUint16(at + 15, head.count & 0xffff)
    view.setUint32(at + 17, head.mixed)
  })
  return bytes
}

/** What `writeHello` gave; undefined for other bytes, and where a name is none that a phone may have. */
export function readHello(bytes: Uint8Array): Hello | undefined {
  const heads = (bytes.length - NAME_BYTES - CLOCK_BYTES) / HEAD_BYTES
  if (!Number.isInteger(heads) || heads < 0) return undefined
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
  const nameAt = (at: number) =>
    new TextDecoder().decode(bytes.subarray(at, at + NAME_BYTES)).replaceAll('\0', '')
  const read: Hello = {
    phone: nameAt(0),
    clockMs: longAt(view, NAME_BYTES),
    heads: Array.from({ length: heads }, (_, i) => {
      const at = NAME_BYTES + CLOCK_BYTES + i * HEAD_BYTES
      return {
        phone: nameAt(at),
        last: longAt(view, at + NAME_BYTES),
        count: (view.getUint8(at + 14) << 16) | view.getUint16(at + 15),
        mixed: view.getUint32(at + 17),
      }
    }),
  }
  const isName = ({ phone }: { readonly phone: string }) =>
    WRITER.test(phone) && phoneOfWriter(phone) === phone
  return isName(read) && read.heads.every(isName) ? read : undefined
}
