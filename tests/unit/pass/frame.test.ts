import { describe, expect, it } from 'vitest'
import { toBase45 } from '../../../src/pass/base45.ts'
import { type Frame, frameText, LARGEST_LENGTH, readFrame, sumOf } from '../../../src/pass/frame.ts'

const body = Uint8Array.from({ length: 40 }, (_, i) => 255 - i)
const FRAMES: readonly Frame[] = [
  { kind: 'hello', body },
  { kind: 'handout', body },
  { kind: 'block', of: 0xfedcba98, length: LARGEST_LENGTH, index: 0x123456, body },
  { kind: 'block', of: 0, length: 1, index: 0, body: body.slice(0, 1) },
]

describe('a code on the screen', () => {
  it('comes back as it was', () => {
    for (const frame of FRAMES) expect(readFrame(frameText(frame))).toEqual(frame)
  })

  it('is known when one letter was misread', () => {
    for (const frame of FRAMES) {
      const text = frameText(frame)
      for (let i = 0; i < text.length; i++) {
        const other = text[i] === '0' ? '1' : '0'
        expect(readFrame(text.slice(0, i) + other + text.slice(i + 1))).toBeUndefined()
      }
    }
  })

  it('of anything else is none', () => {
    const letters = [
      '',
      'A',
      'HTTPS://EXAMPLE.ORG',
      '000000',
      '%%%',
      'hello',
      toBase45(Uint8Array.of(0xb2, 1, 2)),
    ]
    for (const text of letters) expect(readFrame(text)).toBeUndefined()
  })

  it('has the check value of CRC-32', () => {
    // "123456789" gives CBF43926: the check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms.
    expect(sumOf(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
  })

  it('tells no more than its three bytes', () => {
    expect(() => frameText({ kind: 'block', of: 1, length: LARGEST_LENGTH + 1, index: 0, body })).toThrow(
      /length 16777216/,
    )
  })
})
