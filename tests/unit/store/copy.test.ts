import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareCopy, linesOf } from '../../../src/store/copy-lines.ts'
import { hitOf, journals, RUNS } from './sample.ts'

const records = hitOf('a', 1, 1, 5)
const ids = records.map(({ id }) => id)

describe('the second copy', () => {
  test('gives what is unknown, and says what it lacks', () => {
    const text = linesOf(records.slice(0, 3), false)
    expect(compareCopy(text, ids.slice(1))).toEqual({ unknown: [records[0]], lacking: ids.slice(3) })
    expect(compareCopy('', ids)).toEqual({ unknown: [], lacking: ids })
  })

  test('loses a line that a kill tore, and no other', () => {
    const whole = linesOf(records, false)
    const torn = whole.slice(0, whole.length - 30)
    expect(compareCopy(torn, []).unknown).toEqual(records.slice(0, 4))
    // What comes next begins a line of its own.
    const next = torn + linesOf(hitOf('b', 1, 9), true)
    expect(compareCopy(next, ids)).toEqual({ unknown: hitOf('b', 1, 9), lacking: ['a-5'] })
  })

  test('with a line that rotted lacks that record, and gives it as it is where it is whole too', () => {
    const whole = linesOf(records, false)
    const rotten = whole.replace('"a 2"', '"a 7"')
    expect(compareCopy(rotten, ids)).toEqual({ unknown: [], lacking: ['a-2'] })
    // Written again, it is whole, wherever it stands.
    for (const text of [rotten + linesOf(records.slice(1, 2), false), whole + rotten]) {
      expect(compareCopy(text, ids)).toEqual({ unknown: [], lacking: [] })
      expect(compareCopy(text, ids.slice(2)).unknown).toEqual(records.slice(0, 2))
    }
  })

  test('does not judge what a newer program wrote', () => {
    const newer = { ...records[0]!, v: 99, sum: 1 }
    expect(compareCopy(linesOf([newer], false), [newer.id])).toEqual({ unknown: [], lacking: [] })
  })

  test('damaged anywhere, gives every line that is whole', () => {
    fc.assert(
      fc.property(journals(false), fc.nat(), fc.string({ maxLength: 5 }), (held, place, junk) => {
        const text = linesOf(held, false)
        const at = text.length === 0 ? 0 : place % text.length
        const line = text.slice(0, at).split('\n').length - 1
        const { unknown } = compareCopy(text.slice(0, at) + junk.replaceAll('\n', ' ') + text.slice(at), [])
        const others = held.filter((_, index) => index !== line)
        expect(unknown).toEqual(expect.arrayContaining(others))
      }),
      { numRuns: RUNS },
    )
  })
})
