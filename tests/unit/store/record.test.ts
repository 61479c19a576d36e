import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareRecords, createRecords, examine } from '../../../shared/record.ts'
import { hitOf, isSample, note, RUNS, type Sample } from './sample.ts'

const stamp = { at: 1_700_000_000_000, tz: -300, mono: 12.5 }
const one = () => createRecords([note('x')], { writer: 'ab.cd', seq: 7, order: 9 }, stamp)[0]!

describe('records', () => {
  test('the events of one hit share order and hit, and count on', () => {
    const made = createRecords([note('a'), note('b')], { writer: 'ab.cd', seq: 7, order: 9 }, stamp)
    expect(made.map(({ id, seq, order, hit }) => [id, seq, order, hit])).toEqual([
      ['ab.cd-7', 7, 9, 'ab.cd-7'],
      ['ab.cd-8', 8, 9, 'ab.cd-7'],
    ])
    expect(made[0]).toMatchObject({ v: 1, at: stamp.at, tz: -300, mono: 12.5 })
  })

  test('a record is found sound, also after JSON', () => {
    const record = one()
    expect(examine(record, isSample)).toEqual({ record })
    expect(examine(JSON.parse(JSON.stringify(record)), isSample)).toEqual({ record })
  })

  test('what JSON drops is not kept in the first place', () => {
    const event = { kind: 'noted', text: 'x', value: undefined } as unknown as Sample
    const [record] = createRecords([event], { writer: 'a', seq: 1, order: 1 }, stamp)
    expect(Object.keys(record!.event)).toEqual(['kind', 'text'])
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('refuses the value %s and names it', (value) => {
    const event: Sample = { kind: 'noted', text: 'x', value }
    expect(() => createRecords([event], { writer: 'a', seq: 1, order: 1 }, stamp)).toThrow(/noted: value is/)
  })

  test.each([[{ at: Number.NaN, tz: 0 }], [{ at: 9e15, tz: 0 }], [{ at: 1, tz: 2000 }]])(
    'refuses the moment %j',
    (moment) => {
      expect(() => createRecords([note('x')], { writer: 'a', seq: 1, order: 1 }, moment)).toThrow(RangeError)
    },
  )

  test.each<[string, unknown, string]>([
    ['nothing', null, 'shape'],
    ['a number', 42, 'shape'],
    ['an empty object', {}, 'shape'],
    ['an array', [], 'shape'],
    ['another id than its place', { ...one(), id: 'ab.cd-8' }, 'shape'],
    ['a count of nothing', { ...one(), id: 'ab.cd-0', seq: 0 }, 'shape'],
    ['an order beyond any real one', { ...one(), order: 2 ** 50 }, 'shape'],
    ['an event without a kind', { ...one(), event: {} }, 'shape'],
    ['a writer that breaks keys', { ...one(), writer: 'a~b', id: 'a~b-7' }, 'shape'],
    ['another version that never was', { ...one(), v: 0 }, 'shape'],
    ['a newer version', { v: 2 }, 'newer'],
    ['a later moment than written', { ...one(), at: stamp.at + 1 }, 'sum'],
    ['another body', { ...one(), event: note('y') }, 'sum'],
    ['another hit', { ...one(), hit: 'other' }, 'sum'],
  ])('examining %s', (_, value, fault) => {
    expect(examine(value, isSample)).toEqual({ fault })
  })

  test('an unknown kind is told apart from damage', () => {
    const [record] = createRecords([{ kind: 'unheard-of' }], { writer: 'a', seq: 1, order: 1 }, stamp)
    expect(examine(record, isSample)).toEqual({ fault: 'kind' })
  })

  test('any changed character of a stored record is noticed', () => {
    const text = JSON.stringify(one())
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.integer({ min: 0x20, max: 0x7e }), (place, code) => {
        const changed = text.slice(0, place) + String.fromCharCode(code) + text.slice(place + 1)
        let value: unknown
        try {
          value = JSON.parse(changed)
        } catch {
          return
        }
        const examined = examine(value, isSample)
        // Passing is allowed only for what says the same.
        if ('record' in examined) expect(examined.record).toEqual(JSON.parse(text))
      }),
      { numRuns: RUNS },
    )
  })
})

describe('order of the fold', () => {
  test('time first, then writer, then count', () => {
    const records = [hitOf('b', 1, 1), hitOf('a', 1, 1, 2), hitOf('a', 3, 2), hitOf('c', 1, 1)].flat()
    const sorted = [...records].reverse().sort(compareRecords)
    expect(sorted.map((record) => record.id)).toEqual(['a-1', 'a-2', 'b-1', 'c-1', 'a-3'])
  })

  test('a hit of several events stays together whatever another phone wrote at the same time', () => {
    const sorted = [...hitOf('b', 1, 5, 3), ...hitOf('a', 1, 5, 3)].sort(compareRecords)
    expect(sorted.map((record) => record.hit)).toEqual(['a-1', 'a-1', 'a-1', 'b-1', 'b-1', 'b-1'])
  })
})
