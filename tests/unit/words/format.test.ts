import { expect, test } from 'vitest'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'

const metric = formats(WORDS.en, 'metric', 'en')
const us = formats(WORDS.en, 'us', 'en', () => true)

test.each([
  [25.4, '1 in'],
  [6.35, '1/4 in'],
  [88.9, '3 1/2 in'],
  [4, '3/16 in'],
  [0, '0 in'],
])('%d mm are %s on a ruler', (mm, said) => {
  expect(us.mm(mm)).toBe(said)
})

test('degrees are whole', () => {
  expect(us.temp(21.3)).toBe('70 °F')
  expect(metric.temp(21.3)).toBe('21 °C')
})

test('the clock has twelve hours where the phone has them', () => {
  const at = new Date(2026, 2, 3, 18, 5).getTime()
  expect(us.clock(at)).toMatch(/^6:05\sPM$/)
  expect(metric.clock(at)).toBe('18:05')
  for (const tag of ['es-MX', 'es-CO', 'es'])
    expect(formats(WORDS.en, 'metric', tag, () => true).clock(at)).toMatch(/^6:05\spm$/)
})

test('hours are told with their minutes', () => {
  expect(metric.span(77 * 60_000)).toBe('1 h 17 min')
  expect(metric.span(301 * 60_000)).toBe('5 h 01 min')
  expect(metric.span(9 * 3600_000)).toBe('9 h')
})

test('how long something takes at least and at most, in few letters', () => {
  const span = (leastMin: number, mostMin: number) => metric.spanBetween(leastMin * 60_000, mostMin * 60_000)
  expect(span(12, 25)).toBe('12–25 min')
  expect(span(25, 25)).toBe('25 min')
  expect(span(70, 100)).toBe('1–2 h')
  expect(span(9.2 * 60, 12.4 * 60)).toBe('9–13 h')
  expect(span(9.2 * 60, Infinity)).toBe('over 9 h')
  expect(span(20, Infinity)).toBe('unsure')
})
