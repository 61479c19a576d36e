import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  buildTrack,
  cutParts,
  FRAME_BYTES,
  FRAME_S,
  LONGEST_S,
  REPEAT_MIN,
} from '../../../src/device/tape-track.ts'

/** Frames filled with one number each: 1 is the hum, 2 the call, 3 and up the words. */
const frames = (count: number, mark: number) => new Uint8Array(count * FRAME_BYTES).fill(mark)
const TAPE = {
  hum: frames(1, 1),
  parts: new Map([
    ['call-G', frames(18, 2)],
    ['A', frames(8, 3)],
    ['3', frames(9, 4)],
    ['ready', frames(9, 5)],
  ]),
}
const call = (dueS: number) => ({ dueS, bucketLetter: 'G', places: [{ board: 'A', place: 3 }] })

/** Marks frame by frame. */
const marks = (track: { pieces: readonly Uint8Array[] }): number[] =>
  track.pieces.flatMap((piece) =>
    Array.from({ length: piece.length / FRAME_BYTES }, (_, i) => piece[i * FRAME_BYTES]!),
  )
const starts = (list: readonly number[]): number[] =>
  list.flatMap((mark, i) => (mark === 2 && list[i - 1] !== 2 ? [i * FRAME_S] : []))

describe('the track that rings', () => {
  it('has each call at its time, whole, four times', () => {
    const list = marks(buildTrack(TAPE, [call(100)], true))
    const asked = REPEAT_MIN.map((min) => 100 + 60 * min)
    expect(starts(list)).toHaveLength(4)
    for (const [i, at] of starts(list).entries()) expect(Math.abs(at - asked[i]!)).toBeLessThan(0.15)
    expect(list.filter((mark) => mark > 1)).toHaveLength(4 * (18 + 8 + 9 + 9))
  })

  it('keeps every call within 0.15 s of due, or right behind the one before it', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -400, max: 4000, noNaN: true }), { maxLength: 8 }), (dues) => {
        const track = buildTrack(TAPE, dues.map(call), true)
        const asked = dues
          .flatMap((due) => REPEAT_MIN.map((min) => due + 60 * min))
          .filter((at) => at >= 0)
          .sort((a, b) => a - b)
        const heard = starts(marks(track))
        expect(heard).toHaveLength(asked.length)
        let freeS = 0
        for (const [i, at] of heard.entries()) {
          expect(Math.abs(at - Math.max(asked[i]!, freeS))).toBeLessThan(0.15)
          freeS = at + (18 + 8 + 9 + 9 + 2) * FRAME_S
        }
        expect(track.lengthS).toBeCloseTo(marks(track).length * FRAME_S, 6)
      }),
      { numRuns: 60 },
    )
  })

  it('says nothing in a count, and after it each call once that was due in it', () => {
    const track = buildTrack(TAPE, [call(10), call(90)], true, 75)
    const asked = [75, 75, 90, 150, 190, 190, 270, 370, 450]
    expect(starts(marks(track))[0]).toBeGreaterThanOrEqual(75 - 0.15)
    expect(track.sayings.map(({ dueS }) => dueS)).toEqual(
      [10, 90, 90, 10, 90, 10, 90].slice(0, track.sayings.length),
    )
    expect(track.sayings.length).toBeLessThan(asked.length)
    for (const [i, at] of starts(marks(track)).entries())
      expect(Math.abs(at - track.sayings[i]!.atS)).toBeLessThan(0.01)
  })

  it('leaves out words it has no part for and calls beyond 12 h', () => {
    const list = marks(
      buildTrack(TAPE, [{ dueS: 1, bucketLetter: 'G', places: [{ board: 'Q', place: 3 }] }], true),
    )
    expect(list.filter((mark) => mark > 1)).toHaveLength(4 * (18 + 9 + 9))
    expect(starts(marks(buildTrack(TAPE, [call(LONGEST_S + 1)], true)))).toEqual([])
  })

  it('refuses a table that does not fit its file', () => {
    expect(cutParts(frames(4, 7), { A: [1, 2] })).toEqual([['A', frames(2, 7)]])
    expect(() => cutParts(frames(4, 7), { A: [3, 2] })).toThrow('part A: beyond the file')
    expect(() => cutParts(frames(4, 7), { A: 'x' })).toThrow(TypeError)
    expect(() => cutParts(frames(4, 7), null)).toThrow(TypeError)
  })
})
