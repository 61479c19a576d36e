import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blockAt, blocksOf, gathering } from '../../../src/pass/blocks.ts'

const bytesOf = (length: number) =>
  Uint8Array.from({ length }, (_, i) => (Math.imul(i + 7, 2654435761) >>> 13) & 0xff)
const SIZE = 492

/** Frames shown until all was there, for a reader who joins at `from` and misses what `isLost` says. */
function shown(length: number, from: number, isLost: (frame: number) => boolean, size = SIZE): number {
  const bytes = bytesOf(length)
  const got = gathering(length, size)
  let frame = from
  for (; got.known < got.of; frame++) if (!isLost(frame)) got.take(frame, blockAt(bytes, size, frame))
  expect(got.whole()).toEqual(bytes)
  return frame - from
}

/** The same at every run. */
function lost(share: number, seed: number): () => boolean {
  let state = seed
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32 < share
  }
}

const at = (sorted: readonly number[], share: number) => sorted[Math.floor(sorted.length * share)] as number

describe('blocks', () => {
  it('are whole after as many frames where none is lost', () => {
    for (const length of [1, 491, 492, 493, 5000, 60_000])
      expect(shown(length, 0, () => false)).toBe(blocksOf(length, SIZE))
  })

  it('come together from any frames, in any order, and whole only once all is known', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4000 }),
        fc.integer({ min: 20, max: 300 }),
        fc.array(fc.integer({ min: 0, max: 2000 }), { maxLength: 60 }),
        (length, size, frames) => {
          const bytes = bytesOf(length)
          const got = gathering(length, size)
          for (const frame of frames) {
            const [before, news] = [got.known, got.take(frame, blockAt(bytes, size, frame))]
            expect(got.known).toBe(before + (news ? 1 : 0))
            expect(got.take(frame, blockAt(bytes, size, frame))).toBe(false)
          }
          expect(got.whole()).toEqual(got.known === got.of ? bytes : undefined)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('need hardly more frames than there are blocks, however late one joins and however many get lost', () => {
    const more = (share: number) =>
      Array.from({ length: 60 }, (_, k) => {
        const of = blocksOf(10_000, SIZE)
        const isLost = lost(share, k + 1)
        let read = 0
        shown(10_000, of + 37 * k, () => {
          const gone = isLost()
          if (!gone) read++
          return gone
        })
        return read - of
      }).sort((a, b) => a - b)
    for (const share of [0, 0.1, 0.3, 0.4]) {
      const sorted = more(share)
      expect(at(sorted, 0.5)).toBeLessThanOrEqual(2)
      expect(at(sorted, 0.95)).toBeLessThanOrEqual(6)
    }
  })
})
