import { describe, expect, test } from 'vitest'
import type { TableEvent } from '../../../shared/events.ts'
import { rangeOf, readEntry, showEntry, unitLabel } from '../../../src/table/entry/entry.ts'
import { QUANTITY } from '../../../src/table/entry/measure.ts'
import { reduce } from '../../../src/table/fold/reduce.ts'
import { LIMITS, type LimitedField, NAME_MOST } from '../../../src/table/model/limits.ts'
import { Play } from './play.ts'

const FIELDS = Object.keys(LIMITS) as LimitedField[]

/** Typed by wet thumbs and pasted from elsewhere: no field takes any of these. */
const NEVER = [
  '',
  '   ',
  'abc',
  '1.2.3',
  '1,2,3',
  '--4',
  '1e1',
  '0x10',
  'NaN',
  'Infinity',
  '5 bananas',
  '٣',
  '4 5',
  '.',
]

const wrongFor = (field: LimitedField): readonly string[] => {
  const range = rangeOf(field, 'metric')
  return [
    ...NEVER,
    `${Number(range.most) * 1000 + 1}`,
    `${Math.min(-1, Number(range.least) * 9)}`,
    `${'9'.repeat(30)}`,
    `${range.most}..`,
  ]
}

describe('each field refuses eight wrong inputs and more, and names its range', () => {
  test.each(FIELDS)('%s', (field) => {
    const wrong = wrongFor(field)
    expect(wrong.length).toBeGreaterThanOrEqual(8)
    for (const units of ['metric', 'us'] as const)
      for (const text of wrong) {
        const entry = readEntry(field, text, units)
        expect(entry.ok, `${field} took ${JSON.stringify(text)} in ${units}`).toBe(false)
        if (!entry.ok) expect(entry.range).toEqual(rangeOf(field, units))
      }
  })
})

describe('the range that is shown is the range that is taken', () => {
  test.each(FIELDS)('%s', (field) => {
    for (const units of ['metric', 'us'] as const) {
      const { least, most } = rangeOf(field, units)
      for (const bound of [least, most]) {
        const entry = readEntry(field, bound, units)
        expect(entry.ok, `${field} refuses its own bound ${bound} in ${units}`).toBe(true)
        if (entry.ok) {
          expect(entry.value).toBeGreaterThanOrEqual(LIMITS[field].least)
          expect(entry.value).toBeLessThanOrEqual(LIMITS[field].most)
        }
      }
      expect(readEntry(field, `${Number(most) * 1.02 + 1}`, units).ok).toBe(false)
    }
  })
})

describe('what is shown reads back as what is stored', () => {
  test.each(FIELDS)('%s', (field) => {
    const { least, most } = LIMITS[field]
    const middle = 'whole' in LIMITS[field] ? Math.round((least + most) / 2) : (least + most) / 2
    for (const units of ['metric', 'us'] as const) {
      const entry = readEntry(field, showEntry(field, middle, units), units)
      expect(entry.ok).toBe(true)
      // Half of the last decimal shown, of the coarsest unit, is a mil of coat or a foot line in hundredths.
      if (entry.ok) expect(Math.abs(entry.value - middle)).toBeLessThanOrEqual(Math.max(middle * 0.01, 0.02))
    }
  })
})

describe('units typed behind the number', () => {
  test.each<[LimitedField, string, 'metric' | 'us', number]>([
    ['heightMm', '95', 'metric', 95],
    ['heightMm', '95 mm', 'us', 95],
    ['heightMm', '9.5cm', 'metric', 95],
    ['heightMm', '9,5 CM', 'metric', 95],
    ['heightMm', '4', 'us', 101.6],
    ['heightMm', '4"', 'metric', 101.6],
    ['wallMm', '3/16', 'us', 4.7625],
    ['wallMm', '3/16 in', 'metric', 4.7625],
    ['rimMm', '3 1/2', 'us', 88.9],
    ['rimMm', '3-1/2"', 'us', 88.9],
    ['gramsPerMl', '1,45', 'metric', 1.45],
    ['gramsPerMl', '1450 g/l', 'metric', 1.45],
    ['rh', '32', 'metric', 0.32],
    ['rh', '32 %', 'metric', 0.32],
    ['tempC', '70', 'us', (70 - 32) / 1.8],
    ['tempC', '70 °F', 'metric', (70 - 32) / 1.8],
    ['tempC', '21°C', 'us', 21],
    ['litres', '3.5 gal', 'metric', 13.248941244],
    ['litres', '750 ml', 'metric', 0.75],
    ['limitMm', '40', 'us', 1.016],
    ['limitMm', '0.8 mm', 'us', 0.8],
    ['staleMin', '0.5 h', 'metric', 30],
    ['holdS', '2.5 s', 'metric', 2.5],
    ['lowerMmPerS', '5 in/s', 'metric', 127],
    ['number', ' 34 ', 'metric', 34],
    ['footLineMm', '0', 'metric', 0],
  ])('%s %s in %s', (field, text, units, value) => {
    const entry = readEntry(field, text, units)
    expect(entry).toMatchObject({ ok: true })
    if (entry.ok) expect(entry.value).toBeCloseTo(value, 6)
  })
})

describe('a likely slip is asked about, never taken', () => {
  test.each<[LimitedField, string, 'metric' | 'us', string]>([
    ['gramsPerMl', '145', 'metric', '1.45'],
    ['gramsPerMl', '1450', 'metric', '1.45'],
    ['gramsPerMl', '145', 'us', '1.45'],
    ['toleranceGramsPerMl', '2', 'metric', '0.02'],
    ['solidsGravity', '260', 'metric', '2.6'],
    ['rh', '0.32', 'metric', '32 %'],
    ['heightMm', '9.5', 'metric', '9.5 cm'],
    ['heightMm', '95', 'us', '95 mm'],
    ['tempC', '70', 'metric', '70 °F'],
    ['tempC', '21', 'us', '21 °C'],
    ['litres', '13250', 'metric', '13250 ml'],
    ['limitMm', '80', 'metric', '0.8'],
  ])('%s %s in %s: %s?', (field, text, units, meant) => {
    const entry = readEntry(field, text, units)
    expect(entry).toMatchObject({ ok: false, why: 'out-of-range', meant })
    expect(readEntry(field, meant, units).ok).toBe(true)
  })

  test('no guess where a unit was typed, or nothing near is allowed', () => {
    expect(readEntry('gramsPerMl', '145 g/ml', 'metric')).not.toHaveProperty('meant', '1.45')
    expect(readEntry('gramsPerMl', '9', 'metric')).toMatchObject({ why: 'out-of-range', meant: undefined })
  })
})

test('a whole number is asked for where halves make no sense', () => {
  const whole = FIELDS.filter((field) => 'whole' in LIMITS[field])
  expect(whole.length).toBeGreaterThan(2)
  for (const field of whole) {
    const { least } = LIMITS[field]
    expect(readEntry(field, `${least + 0.5}`, 'metric')).toMatchObject({ ok: false, why: 'not-whole' })
  }
})

test('a comma in a count may part thousands: refused', () => {
  expect(readEntry('number', '1,000', 'metric')).toMatchObject({ ok: false, why: 'unreadable' })
})

test('every field has a quantity, and a unit unless it is a bare number', () => {
  for (const field of FIELDS) {
    const bare = QUANTITY[field] === 'count' || QUANTITY[field] === 'gravity'
    expect(unitLabel(field, 'metric') === '', field).toBe(bare)
  }
})

describe('a name and a letter refuse eight wrong inputs, with the reason, and keep what was', () => {
  const play = new Play().act({ do: 'lay-demo' })
  const before = play.table
  const bucket = before.buckets['demo.heather']!.facts
  const stack = Object.values(before.stacks)[0]!

  test.each([
    ['', 'missing'],
    [' \t ', 'missing'],
    ['\u202edlrow', 'hidden-letters'],
    ['Fen\u0000water', 'hidden-letters'],
    ['Fen\nwater', 'hidden-letters'],
    ['Fen\u200fwater', 'hidden-letters'],
    ['\u2067Fenwater', 'hidden-letters'],
    ['x'.repeat(NAME_MOST + 1), 'too-long'],
    ['🏺'.repeat(NAME_MOST + 1), 'too-long'],
  ])('%j: %s', (name, code) => {
    expect(play.try({ do: 'set-bucket', bucket: { ...bucket, name } })).toMatchObject({ code })
    expect(play.try({ do: 'set-stack', stack: { ...stack, name } })).toMatchObject({ code })
    expect(play.table).toEqual(before)
  })

  test.each([
    ['\u202eFen\u0000wa\u200fter\ufeff', 'Fenwater'],
    ['\u2066\u202e', '?'],
    ['Fén wäter 🏺', 'Fén wäter 🏺'],
  ])('%j, as a backup may bring it, is shown as %s', (name, shown) => {
    const brought: TableEvent[] = [
      { kind: 'bucket-set', bucket: { ...bucket, name } },
      { kind: 'stack-set', stack: { ...stack, name } },
    ]
    const table = brought.reduce(
      (t, event, i) => reduce(t, { id: `n${i}`, hit: `n${i}`, at: play.nowMs, event }),
      before,
    )
    expect(table.buckets[bucket.bucketId]?.facts.name).toBe(shown)
    expect(table.stacks[stack.stackId]?.name).toBe(shown)
  })

  test.each(['', ' ', 'h', 'HH', '4', 'G', '\u202eH', '🏺', '__proto__'])('letter %j', (letter) => {
    expect(play.try({ do: 'set-bucket', bucket: { ...bucket, letter } })).toMatchObject({ field: 'letter' })
    expect(play.table).toEqual(before)
  })

  test('names of any alphabet are taken', () => {
    for (const name of ['Fenwater', 'Güllüdere 2', '海の色', 'x'.repeat(NAME_MOST)])
      expect(play.try({ do: 'set-bucket', bucket: { ...bucket, name } })).toBeUndefined()
  })
})
