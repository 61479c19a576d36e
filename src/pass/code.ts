import encodeQR from 'qr'
import { SIZES, type Size } from './showing.ts'

/** One mask for all: choosing the best takes eight times as long, and a reader is told which it is. */
const MASK = 3

/** The least white that the library draws round a code, modules. */
const WHITE = 1

/** A code that stands still may be as large as a hand still reads off a screen or a sheet: version 20, in modules. */
const STILL_MOST = 97

const bare = (rows: readonly (readonly boolean[])[]): readonly (readonly boolean[])[] =>
  rows.slice(WHITE, -WHITE).map((row) => row.slice(WHITE, -WHITE))

/** Dark modules of a code (ISO/IEC 18004) of a text that fits the size, row by row, without the white round it. */
export const codeOf = (text: string, size: Size): readonly (readonly boolean[])[] =>
  bare(
    encodeQR(text, 'raw', {
      ecc: 'low',
      encoding: 'alphanumeric',
      version: SIZES[size].version,
      mask: MASK,
      border: WHITE,
    }),
  )

/**
 * The smallest code of a text, of more care where it can be: it may be printed and get wet. Undefined where none would be
 * read.
 */
export const stillCodeOf = (text: string): readonly (readonly boolean[])[] | undefined =>
  stillOf(text, 'medium') ?? stillOf(text, 'low')

function stillOf(text: string, ecc: 'medium' | 'low'): readonly (readonly boolean[])[] | undefined {
  try {
    const rows = bare(encodeQR(text, 'raw', { ecc, encoding: 'alphanumeric', border: WHITE }))
    return rows.length <= STILL_MOST ? rows : undefined
  } catch {
    // Longer than any code holds.
    return undefined
  }
}
