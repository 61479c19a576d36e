/** One code on the screen: what it is of, which part, and a check, in letters that codes hold densely. */

import { crc32 } from '../../shared/crc.ts'
import { fromBase45, toBase45 } from './base45.ts'

/** The first byte; codes of other things begin otherwise. */
const KINDS = { hello: 0xb1, block: 0xb2, handout: 0xb3 } as const
type Kind = keyof typeof KINDS

/** Part of what is passed. */
export interface Block {
  readonly kind: 'block'
  /** CRC-32 of the whole. */
  readonly of: number
  /** Bytes of the whole. */
  readonly length: number
  readonly index: number
  readonly body: Uint8Array
}

/** All that there is, in one code. */
export interface Whole {
  readonly kind: Exclude<Kind, 'block'>
  readonly body: Uint8Array
}

export type Frame = Block | Whole

const CHECK_BYTES = 2
/** Kind, CRC, length and index. */
const BLOCK_HEAD = 11
/** Bytes that a block's frame has beside its body. */
export const BLOCK_EXTRA = BLOCK_HEAD + CHECK_BYTES
/** Of what is passed: three bytes tell it. */
export const LARGEST_LENGTH = 2 ** 24 - 1

/** CRC-32 of bytes. */
export function sumOf(bytes: Uint8Array): number {
  let text = ''
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192))
  return crc32(text)
}

function checked(bytes: Uint8Array): string {
  const whole = new Uint8Array(bytes.length + CHECK_BYTES)
  whole.set(bytes)
  new DataView(whole.buffer).setUint16(bytes.length, sumOf(bytes) & 0xffff)
  return toBase45(whole)
}

/** Text of a code. RangeError for more than frames can tell. */
export function frameText(frame: Frame): string {
  if (frame.kind !== 'block') return checked(Uint8Array.of(KINDS[frame.kind], ...frame.body))
  const { of, length, index, body } = frame
  if (length > LARGEST_LENGTH) throw new RangeError(`length ${length}: at most ${LARGEST_LENGTH} bytes`)
  const bytes = new Uint8Array(BLOCK_HEAD + body.length)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, ((KINDS.block << 24) | length) >>> 0)
  view.setUint32(4, of)
  view.setUint8(8, index >> 16)
  view.setUint16(9, index & 0xffff)
  bytes.set(body, BLOCK_HEAD)
  return checked(bytes)
}

/** What a code says; undefined for a code of anything else, or one that was misread. */
export function readFrame(text: string): Frame | undefined {
  const whole = fromBase45(text)
  if (!whole || whole.length <= CHECK_BYTES) return undefined
  const bytes = whole.subarray(0, -CHECK_BYTES)
  const view = new DataView(whole.buffer)
  if (view.getUint16(bytes.length) !== (sumOf(bytes) & 0xffff)) return undefined
  const kind = (Object.keys(KINDS) as Kind[]).find((name) => KINDS[name] === bytes[0])
  if (kind === undefined) return undefined
  if (kind !== 'block') return { kind, body: bytes.slice(1) }
  if (bytes.length <= BLOCK_HEAD) return undefined
  return {
    kind,
    of: view.getUint32(4),
    length: view.getUint32(0) & LARGEST_LENGTH,
    index: (view.getUint8(8) << 16) | view.getUint16(9),
    body: bytes.slice(BLOCK_HEAD),
  }
}
