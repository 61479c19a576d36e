import { crc32 } from '../../shared/crc.ts'
import type { AnyEvent, JournalRecord } from '../../shared/record.ts'
import type { Entry } from './journal-storage.ts'
import { isMarked, markOf } from './marks.ts'

/**
 * Many records under one key. A browser reads 10,000 values in some 300 ms and one text of the same content in
 * a tenth of it, so what has been at rest for a while is packed: the same records, a line each.
 */
export interface Pack {
  readonly text: string
  /** CRC-32 of the text. */
  readonly sum: number
  /** See `marks.ts`; packs of earlier versions have none. */
  readonly checked?: string
}

/** No record's id contains a tilde. */
const PREFIX = 'pack~'

/** Whether a key of the journal is a pack's, not a record's. */
export const isPackKey = (key: string) => key.startsWith(PREFIX)

/**
 * Key and value of records whose contents have passed `schema`. The key follows from the content: two tabs packing the
 * same write the same.
 */
export function pack(
  records: readonly JournalRecord<AnyEvent>[],
  schema: number,
): readonly [key: string, value: Pack] {
  return packLines(
    records[0]?.id ?? '',
    records.map((record) => JSON.stringify(record)),
    schema,
  )
}

/** The same of their texts; `first` is the id of the first. */
export function packLines(
  first: string,
  lines: readonly string[],
  schema: number,
): readonly [key: string, value: Pack] {
  const text = lines.join('\n')
  const sum = crc32(text)
  return [
    `${PREFIX}${first}~${lines.length}~${sum.toString(36)}`,
    { text, sum, checked: markOf(sum, schema) },
  ]
}

/**
 * What a pack holds. `known`: exactly as packed by a program that knew no more than this one, so each of them is as
 * sound as it was then; else `values` are what its lines give, to be examined singly, a broken line as its text.
 */
export function unpack(
  value: unknown,
  schema: number,
): { readonly known: boolean; readonly values: readonly unknown[] } {
  const { text, sum } = (value ?? {}) as Partial<Pack>
  if (typeof text !== 'string' || typeof sum !== 'number') return { known: false, values: [value] }
  if (crc32(text) === sum && isMarked(value, sum, schema))
    return { known: true, values: JSON.parse(`[${text.replaceAll('\n', ',')}]`) }
  return { known: false, values: text.split('\n').map(lineValue) }
}

function lineValue(line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    return line
  }
}

/** Values under the ids they claim. */
export const keyed = (values: readonly unknown[]): Entry[] =>
  values.map((value) => [String((value as { id?: unknown } | null)?.id ?? ''), value])
