import { decodeQR } from 'qr/decode.js'
import { describe, expect, it } from 'vitest'
import { codeOf } from '../../../src/pass/code.ts'
import { SIZES } from '../../../src/pass/showing.ts'

const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'
const textOf = (length: number) =>
  Array.from({ length }, (_, i) => LETTERS[(i * 7) % LETTERS.length]).join('')

/** As a camera would give it: four modules of white round it, so many pixels a module. */
function picture(rows: readonly (readonly boolean[])[], pixels: number) {
  const side = (rows.length + 8) * pixels
  const data = new Uint8ClampedArray(side * side * 4).fill(255)
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      if (rows[Math.floor(y / pixels) - 4]?.[Math.floor(x / pixels) - 4])
        data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3)
  return { width: side, height: side, data }
}

describe.each(['fine', 'coarse'] as const)('a %s code', (size) => {
  // ISO/IEC 18004, table 7: letters that versions 15 and 10 hold in level L; 5.3.1.1: 17 modules and four a version.
  it('holds all the letters of its version, and is read again', () => {
    const text = textOf(SIZES[size].letters)
    const rows = codeOf(text, size)
    expect(rows).toHaveLength(17 + 4 * SIZES[size].version)
    for (const row of rows) expect(row).toHaveLength(rows.length)
    expect(decodeQR(picture(rows, 4))).toBe(text)
    expect(() => codeOf(`${text}A`, size)).toThrow()
  })
})
