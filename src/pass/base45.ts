/** Base45 (RFC 9285): bytes in the letters of a code's alphanumeric mode, three for two bytes. */

const LETTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:'

export function toBase45(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += 2) {
    const pair = i + 1 < bytes.length
    let value = pair ? ((bytes[i] ?? 0) << 8) | (bytes[i + 1] ?? 0) : (bytes[i] ?? 0)
    for (let digits = pair ? 3 : 2; digits > 0; digits--) {
      text += LETTERS[value % 45]
      value = Math.floor(value / 45)
    }
  }
  return text
}

/** Undefined for a text that no bytes give. */
export function fromBase45(text: string): Uint8Array | undefined {
  const rest = text.length % 3
  if (rest === 1) return undefined
  const bytes = new Uint8Array(Math.floor(text.length / 3) * 2 + (rest === 2 ? 1 : 0))
  for (let i = 0, at = 0; i < text.length; i += 3) {
    const digits = [...text.slice(i, i + 3)].map((letter) => LETTERS.indexOf(letter))
    if (digits.includes(-1)) return undefined
    const [low = 0, middle = 0, high = 0] = digits
    const value = low + 45 * middle + 45 * 45 * high
    if (value > (digits.length === 3 ? 0xffff : 0xff)) return undefined
    if (digits.length === 3) bytes[at++] = value >> 8
    bytes[at++] = value & 0xff
  }
  return bytes
}
