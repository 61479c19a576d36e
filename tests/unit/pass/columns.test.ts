import fc from 'fast-check'
import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate'
import { describe, expect, it } from 'vitest'
import {
  type AnyEvent,
  compareRecords,
  createRecords,
  type JournalRecord,
  sealed,
} from '../../../shared/record.ts'
import { packed, readColumns, writeColumns } from '../../../src/pass/columns.ts'
import { asKept } from '../../fixtures/passed.ts'

describe('records in columns', () => {
  it.each([0, 1, 60, 560])('%i come back exactly', (count) => {
    const records = asKept(count)
    expect(readColumns(writeColumns(records))).toEqual(records)
  })

  it('are a third of the same records as deflated JSON', () => {
    const records = asKept(560)
    const json = deflateSync(strToU8(JSON.stringify(records)), { level: 9 }).length
    const bytes = writeColumns(records).length
    console.log(`${records.length} records: ${json} bytes deflated, ${bytes} in columns`)
    expect(bytes).toBeLessThan(json / 3)
  })

  it('come back whatever their clocks, counts, offsets, hits and events are', () => {
    const value = fc.jsonValue({ maxDepth: 3 }) as fc.Arbitrary<unknown>
    const event = fc
      .tuple(fc.string({ minLength: 1 }), fc.dictionary(fc.string(), value, { maxKeys: 5 }))
      .map(([kind, body]) => JSON.parse(JSON.stringify({ ...body, kind })) as AnyEvent)
    const record = fc
      .record({
        writer: fc.constantFrom('aaaa.bbbb', 'aaaa.cccc', 'dddd.eeee'),
        seq: fc.integer({ min: 1, max: 2 ** 47 }),
        order: fc.integer({ min: 1, max: 4_102_444_000_000 }),
        hit: fc.oneof(
          fc.constantFrom('aaaa.bbbb-1', 'aaaa.bbbb-01', 'aaaa.bbbb--1'),
          fc.string({ minLength: 1 }),
        ),
        at: fc.double({ min: -8e15, max: 8e15, noNaN: true }),
        tz: fc.double({ min: -840, max: 840, noNaN: true }),
        mono: fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }), { nil: undefined }),
        event,
      })
      .map(({ mono, ...rest }) =>
        JSON.parse(JSON.stringify(sealed(mono === undefined ? rest : { ...rest, mono }))),
      )
    fc.assert(
      fc.property(fc.array(record, { maxLength: 12 }), (records: JournalRecord<AnyEvent>[]) => {
        const sorted = records.sort(compareRecords)
        expect(readColumns(writeColumns(sorted))).toEqual(sorted)
      }),
    )
  })

  it('of other bytes are none', () => {
    const good = writeColumns(asKept(60))
    expect(readColumns(new Uint8Array())).toBeUndefined()
    expect(readColumns(good.slice(0, good.length / 2))).toBeUndefined()
    expect(readColumns(strToU8('no columns'))).toBeUndefined()
    const columns = JSON.parse(strFromU8(inflateSync(good.subarray(4))))
    const told = (change: object) => readColumns(packed(strToU8(JSON.stringify({ ...columns, ...change }))))
    expect(told({})).toHaveLength(60)
    expect(told({ v: 2 })).toBe('newer')
    for (const change of [
      { v: 0 },
      { v: '2' },
      { w: 7 },
      { w: [9] },
      { writers: null },
      { kinds: [] },
      { k: ['x'] },
      { a: [] },
      { s: [-1] },
    ])
      expect(told(change)).toBeUndefined()
  })

  it('that would fill the memory are none', () => {
    const bomb = packed(new Uint8Array(70_000_000))
    expect(bomb.length).toBeLessThan(100_000)
    // It may say that it is small.
    const liar = bomb.slice()
    new DataView(liar.buffer).setUint32(0, 1000)
    expect(readColumns(liar)).toBeUndefined()
    expect(readColumns(bomb)).toBeUndefined()
  })

  it('say nothing of what makes no record', () => {
    expect(() =>
      sealed({
        ...(createRecords(
          [{ kind: 'a' }],
          { writer: 'a', seq: 1, order: 1 },
          { at: 0, tz: 0 },
        )[0] as JournalRecord<AnyEvent>),
        seq: 0,
      }),
    ).toThrow(RangeError)
  })
})
