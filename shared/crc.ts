const POLYNOMIAL = 0xedb88320

// Signed, as an unsigned word does not fit the engine's small integers: half the time.
const TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let value = byte
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1
  return value
})

/**
 * CRC-32 as in IEEE 802.3 and ISO 3309, of a text's UTF-16 units: one byte for a unit below 256 (so that
 * ASCII gives the usual values), low byte then high byte for the rest.
 */
export function crc32(text: string): number {
  let crc = -1
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index)
    crc = (crc >>> 8) ^ (TABLE[(crc ^ unit) & 0xff] ?? 0)
    if (unit > 0xff) crc = (crc >>> 8) ^ (TABLE[(crc ^ (unit >>> 8)) & 0xff] ?? 0)
  }
  return (crc ^ -1) >>> 0
}
