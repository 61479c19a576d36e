import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compareRecords, createRecords } from '../../../shared/record.ts'
import { HEADS_MOST, headsOf, holds, lacking, readHello, writeHello } from '../../../src/pass/heads.ts'

const record = (phone: string, seq: number) =>
  createRecords([{ kind: 'a' }], { writer: `${phone}.x`, seq, order: seq * 10 }, { at: seq, tz: 0 })
const all = ['aaaaaaaa', 'bbbbbbbb', 'cccccccc'].flatMap((phone) =>
  Array.from({ length: 8 }, (_, k) => record(phone, k + 1)).flat(),
)
const some = fc.subarray(all).map((records) => [...records].sort(compareRecords))
const ids = (records: readonly { id: string }[]) => records.map(({ id }) => id)

describe('heads', () => {
  it('tell what the other lacks: with that both have the same, and hold all there is', () => {
    fc.assert(
      fc.property(some, some, (ours, theirs) => {
        const sent = lacking(ours, headsOf(theirs))
        const there = new Set(ids(theirs))
        for (const { id } of ours) if (!there.has(id)) expect(ids(sent)).toContain(id)
        const joined = [...new Set([...theirs, ...sent])].sort(compareRecords)
        const back = lacking(joined, headsOf(ours))
        const both = [...new Set([...ours, ...back])].sort(compareRecords)
        expect(ids(both)).toEqual(ids(joined))
        expect(holds(both, headsOf(joined))).toBe(true)
        expect(lacking(both, headsOf(joined))).toEqual([])
      }),
      { numRuns: 300 },
    )
  })

  it('pass the latest alone where the rest agrees, and all of a phone that has a hole', () => {
    const ours = all.filter(({ writer }) => writer.startsWith('aaaa'))
    expect(ids(lacking(ours, headsOf(ours.slice(0, 5))))).toEqual(ids(ours.slice(5)))
    expect(ids(lacking(ours, headsOf(ours.filter((_, i) => i !== 2))))).toEqual(ids(ours))
    expect(holds(ours.slice(0, 5), headsOf(ours))).toBe(false)
    expect(holds(ours, headsOf(ours.slice(0, 5)))).toBe(true)
  })
})

describe('a hello', () => {
  it('comes back as it was, of up to twenty phones', () => {
    const heads = Array.from({ length: 25 }, (_, i) => ({
      phone: `p${i}`,
      last: 4_102_444_799_999 - i,
      count: 2 ** 24 - 1 - i,
      mixed: 0xffffffff - i,
    }))
    const hello = { phone: 'abcd1234', clockMs: 1_772_561_220_040, heads }
    expect(readHello(writeHello(hello))).toEqual({ ...hello, heads: heads.slice(0, HEADS_MOST) })
    expect(readHello(writeHello({ ...hello, heads: [] }))).toEqual({ ...hello, heads: [] })
    expect(writeHello({ ...hello, heads: heads.slice(0, 1) })).toHaveLength(35)
  })

  it('of a phone that can have no such name is none, as whoever says it or as one it knows of', () => {
    const of = (phone: string) => ({ phone, last: 9, count: 1, mixed: 1 })
    for (const name of ['toString', 'valueOf', '', 'a b', 'É', '__proto', '../..//', 'a.b']) {
      expect(readHello(writeHello({ phone: name, clockMs: 1, heads: [] })), name).toBeUndefined()
      expect(readHello(writeHello({ phone: 'abcd', clockMs: 1, heads: [of('b'), of(name)] })), name).toBe(
        undefined,
      )
    }
    expect(readHello(writeHello({ phone: 'abcd', clockMs: 1, heads: [of('b1')] }))?.phone).toBe('abcd')
  })

  it('of other bytes is none', () => {
    expect(readHello(new Uint8Array(3))).toBeUndefined()
    expect(readHello(new Uint8Array(15))).toBeUndefined()
  })
})
