/**
 * A text of bytes in blocks that may get lost: each once in order, then sums (exclusive or) of random blocks for ever,
 * so that whoever joins late, or looks away, needs no certain one. What came is solved for by elimination over GF(2).
 */

/** Blocks in a sum at frame `index` of `count`: the block itself in the first round, then each with even odds. */
function blocksAt(index: number, count: number): Uint8Array {
  const mask = new Uint8Array(count)
  if (index < count) {
    mask[index] = 1
    return mask
  }
  // The same on both phones: xorshift32 (Marsaglia, doi:10.18637/jss.v008.i14), begun with what the frame says.
  let state = Math.imul(index + 1, 0x9e3779b1) ^ Math.imul(count, 0x85ebca6b) || 1
  let any = 0
  for (let block = 0; block < count; block++) {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    const bit = (state >>> 16) & 1
    mask[block] = bit
    any |= bit
  }
  if (any === 0) mask[index % count] = 1
  return mask
}

function add(into: Uint8Array, from: Uint8Array): void {
  for (let i = 0; i < into.length; i++) into[i] = (into[i] as number) ^ (from[i] as number)
}

/** Blocks of `size` bytes that `length` bytes take. */
export const blocksOf = (length: number, size: number): number => Math.max(1, Math.ceil(length / size))

/** Body of frame `index`, from 0: `size` bytes, those beyond the end 0. */
export function blockAt(bytes: Uint8Array, size: number, index: number): Uint8Array {
  const body = new Uint8Array(size)
  blocksAt(index, blocksOf(bytes.length, size)).forEach((within, block) => {
    if (within) add(body, padded(bytes.subarray(block * size, (block + 1) * size), size))
  })
  return body
}

function padded(part: Uint8Array, size: number): Uint8Array {
  if (part.length === size) return part
  const whole = new Uint8Array(size)
  whole.set(part)
  return whole
}

/** What was read so far of `length` bytes in blocks of `size`. */
export interface Gathering {
  /** Blocks that are known or follow from sums, of all. */
  readonly known: number
  readonly of: number
  /** Whether that frame told anything new. */
  take(index: number, body: Uint8Array): boolean
  /** All of it, once `known` is `of`. */
  whole(): Uint8Array | undefined
}

export function gathering(length: number, size: number): Gathering {
  const of = blocksOf(length, size)
  /** In row `block`: a sum whose first block is that one. */
  const rows: ({ readonly mask: Uint8Array; readonly body: Uint8Array } | undefined)[] = new Array(of)
  let known = 0
  return {
    get known() {
      return known
    },
    of,
    take(index, body) {
      const mask = blocksAt(index, of)
      const rest = body.slice()
      for (let block = 0; block < of; block++) {
        if (mask[block] === 0) continue
        const row = rows[block]
        if (!row) {
          rows[block] = { mask, body: rest }
          known++
          return true
        }
        add(mask, row.mask)
        add(rest, row.body)
      }
      return false
    },
    whole() {
      if (known < of) return undefined
      const bytes = new Uint8Array(of * size)
      for (let block = of - 1; block >= 0; block--) {
        const { mask, body } = rows[block] as { mask: Uint8Array; body: Uint8Array }
        const own = body.slice()
        for (let other = block + 1; other < of; other++)
          if (mask[other]) add(own, bytes.subarray(other * size, (other + 1) * size))
        bytes.set(own, block * size)
      }
      return bytes.slice(0, length)
    },
  }
}
