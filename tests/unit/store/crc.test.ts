import { describe, expect, test } from 'vitest'
import { crc32 } from '../../../shared/crc.ts'

describe('CRC-32', () => {
  // The customary check value of the IEEE 802.3 polynomial; zlib's crc32() gives it too.
  test('gives the customary check value', () => {
    expect(crc32('123456789')).toBe(0xcbf43926)
  })

  test.each([
    ['', 0],
    ['a', 0xe8b7be43],
    ['The quick brown fox jumps over the lazy dog', 0x414fa339],
  ])('of %j agrees with zlib', (text, sum) => {
    expect(crc32(text)).toBe(sum)
  })

  test('tells apart texts beyond ASCII', () => {
    const sums = ['ł', 'ń', 'B', 'Ł', '木', '朩'].map(crc32)
    expect(new Set(sums).size).toBe(sums.length)
  })
})
