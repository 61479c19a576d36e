import { describe, expect, test } from 'vitest'
import { isPackKey, pack, unpack } from '../../../src/store/pack.ts'
import { settle, sortOut } from '../../../src/store/quarantine.ts'
import { hitOf, KNOWS_SAMPLES } from './sample.ts'

const records = hitOf('a', 1, 1, 50)

describe('packs', () => {
  test('give back what was packed', () => {
    const [key, value] = pack(records, 1)
    expect(isPackKey(key)).toBe(true)
    expect(isPackKey(records[0]!.id)).toBe(false)
    expect(unpack(value, 1)).toEqual({ known: true, values: records })
    expect(sortOut([[key, value]], KNOWS_SAMPLES)).toMatchObject({ records, aside: [], out: [] })
  })

  test('have a key that follows from their content', () => {
    expect(pack(records, 1)[0]).toBe(pack([...records], 1)[0])
    expect(pack(records, 1)[0]).not.toBe(pack(records.slice(1), 1)[0])
  })

  test('lose one record, not all, when one is damaged', async () => {
    const [key, value] = pack(records, 1)
    const damaged = { ...value, text: value.text.replace('"a 7"', '"a 8"') }
    const sorted = await settle(sortOut([[key, damaged]], KNOWS_SAMPLES), KNOWS_SAMPLES)
    expect(sorted.records.map((record) => record.seq)).toEqual(
      records.map((record) => record.seq).filter((seq) => seq !== 7),
    )
    expect(sorted.aside.map((entry) => entry.reason)).toEqual(['sum'])
  })

  test('give the whole lines of a torn text', async () => {
    const [key, value] = pack(records, 1)
    const torn = { ...value, text: value.text.slice(0, value.text.length / 2) }
    const sorted = await settle(sortOut([[key, torn]], KNOWS_SAMPLES), KNOWS_SAMPLES)
    expect(sorted.records.length).toBeGreaterThan(20)
    expect(sorted.records).toEqual(records.slice(0, sorted.records.length))
    expect(sorted.aside).toHaveLength(1)
  })

  test.each([null, 42, {}, { text: 3 }])('that are not, such as %j, are set aside', (value) => {
    expect(sortOut([['pack~a-1~1~x', value]], KNOWS_SAMPLES).aside).toHaveLength(1)
  })

  test('of kinds unknown to this program are set aside, though intact', () => {
    const [key, value] = pack(records, 1)
    expect(sortOut([[key, value]], { ...KNOWS_SAMPLES, isEvent: () => false })).toMatchObject({
      records: [],
      aside: { length: 50 },
    })
  })
})
