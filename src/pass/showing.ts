/** The codes that a phone shows, one after the other. */

import type { AnyEvent, JournalRecord } from '../../shared/record.ts'
import { blockAt, blocksOf } from './blocks.ts'
import { writeColumns } from './columns.ts'
import { BLOCK_EXTRA, frameText, sumOf } from './frame.ts'
import { type Head, type Hello, headsOf, lacking, writeHello } from './heads.ts'

/** Versions of a code (ISO/IEC 18004) and what they hold in level L, alphanumeric: letters. */
export const SIZES = { fine: { version: 15, letters: 758 }, coarse: { version: 10, letters: 395 } } as const
export type Size = keyof typeof SIZES

/** Codes a second: what a phone's camera still sees whole. */
export const CODES_A_SECOND = 8
/** Every so many codes one that says who this is; sooner where all the others are fewer, as it follows what it is of. */
const HELLO_EACH = 4
/** What is passed unasked, bytes: half a minute. */
const UNASKED_BYTES = 60_000
/** Of a journal that is longer: what a sitting takes, ms. */
const SITTING_MS = 18 * 3_600_000

/** Base45: three letters for two bytes. */
const bytesIn = (size: Size) => Math.floor(SIZES[size].letters / 3) * 2

export interface Showing {
  /** Records in it. */
  readonly records: number
  /** More than these are on the phone: who lacks those has to say so. */
  readonly part: boolean
  /** Codes after which a phone that misses none has all. */
  readonly codes: number
  /** Code `index`, from 0; `clockMs` is this phone's clock as it is drawn. */
  code(index: number, clockMs: number): string
}

interface Shown {
  readonly phone: string
  readonly records: readonly JournalRecord<AnyEvent>[]
  readonly size: Size
  /** What the other phone said of itself, if it was read. */
  readonly other?: Pick<Hello, 'heads'> | undefined
  readonly nowMs: number
}

/** What to show: what the other lacks, as far as it said; else all there is, or the latest sitting of much. */
export function showing({ phone, records, size, other, nowMs }: Shown): Showing {
  const heads = headsOf(records)
  const { chosen, bytes } = choose(records, other?.heads, nowMs)
  const block = Math.min(bytesIn(size) - BLOCK_EXTRA, Math.max(1, bytes.length))
  const of = sumOf(bytes)
  const blocks = chosen.length === 0 ? 0 : blocksOf(bytes.length, block)
  const each = Math.min(HELLO_EACH, blocks + 1)
  return {
    records: chosen.length,
    part: other === undefined && chosen.length < records.length,
    codes: blocks === 0 ? 1 : Math.ceil((blocks * each) / (each - 1)) + 1,
    code(index, clockMs) {
      if (blocks === 0 || index % each === 0)
        return frameText({ kind: 'hello', body: writeHello({ phone, clockMs, heads }) })
      const at = index - Math.floor(index / each) - 1
      return frameText({
        kind: 'block',
        of,
        length: bytes.length,
        index: at,
        body: blockAt(bytes, block, at),
      })
    },
  }
}

function choose(
  records: readonly JournalRecord<AnyEvent>[],
  theirs: readonly Head[] | undefined,
  nowMs: number,
): { readonly chosen: readonly JournalRecord<AnyEvent>[]; readonly bytes: Uint8Array } {
  const all = theirs ? lacking(records, theirs) : records
  const bytes = writeColumns(all)
  if (theirs || bytes.length <= UNASKED_BYTES) return { chosen: all, bytes }
  const latest = records.filter(({ at }) => at > nowMs - SITTING_MS)
  return { chosen: latest, bytes: writeColumns(latest) }
}
