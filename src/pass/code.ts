import encodeQR from 'qr'
import { SIZES, type Size } from './showing.ts'

/** One mask for all: choosing the best takes eight times as long, and a reader is told which it is. */
const MASK = 3

/** The least white that the library draws round a code, modules. */
const WHITE = 1

/** Dark modules of a code (ISO/IEC 18004) of a text that fits the size, row by row, without the white round it. */
export const codeOf = (text: string, size: Size): readonly (readonly boolean[])[] =>
  encodeQR(text, 'raw', {
    ecc: 'low',
    encoding: 'alphanumeric',
    version: SIZES[size].version,
    mask: MASK,
    border: WHITE,
  })
    .slice(WHITE, -WHITE)
    .map((row) => row.slice(WHITE, -WHITE))
