import { DateTime, Settings } from 'luxon'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { daysAfter, fieldOf, ofField, rangeText, withDay } from '../../../src/screens/calendar.ts'
import { fromTo } from '../../../src/words/es/clocks.ts'
import { words as spanish } from '../../../src/words/es/index.ts'
import { LATE_WORDS } from '../../../src/words/late.ts'

const words = LATE_WORDS.en.days
const clock = (atMs: number) => DateTime.fromMillis(atMs).toFormat('HH:mm')
const said = (at: string, now: string) =>
  withDay(words, 'en', Date.parse(at), Date.parse(now), clock(Date.parse(at)))

describe('the calendar of a phone in London', () => {
  beforeEach(() => {
    Settings.defaultZone = 'Europe/London'
  })
  afterEach(() => {
    Settings.defaultZone = 'system'
  })

  it('says the hour, and the day where it is another', () => {
    const now = '2026-03-03T18:00:00Z'
    expect(said('2026-03-03T23:59:00Z', now)).toBe('23:59')
    expect(said('2026-03-04T07:10:00Z', now)).toBe('07:10 tomorrow')
    expect(said('2026-03-02T19:05:00Z', now)).toBe('19:05 yesterday')
    expect(said('2026-03-09T07:10:00Z', now)).toBe('07:10 on Monday')
    expect(said('2026-02-25T07:10:00Z', now)).toBe('07:10 on Wednesday')
    expect(said('2026-03-10T07:10:00Z', now)).toBe('07:10 on 10 March')
  })

  // Summer time began there at 01:00 UTC on 29 March 2026 and ends on 25 October (IANA time zone database).
  it('counts days by the calendar where one has 23 or 25 hours', () => {
    expect(said('2026-03-29T22:30:00Z', '2026-03-28T23:30:00Z')).toBe('23:30 tomorrow')
    expect(said('2026-03-30T06:10:00Z', '2026-03-28T12:00:00Z')).toBe('07:10 on Monday')
    expect(said('2026-10-25T23:30:00Z', '2026-10-24T23:30:00Z')).toBe('23:30')
    expect(said('2026-10-26T00:30:00Z', '2026-10-24T23:30:00Z')).toBe('00:30 tomorrow')
  })

  it('says a day that both ends of a range are on once, of both', () => {
    const range = (from: string, to: string) =>
      [
        { w: words, language: 'en', join: (a: string, b: string) => `${a} to ${b}` },
        { w: spanish.late.days, language: 'es', join: fromTo },
      ].map(({ w, language, join }) =>
        rangeText(
          w,
          language,
          clock,
          join,
          [Date.parse(from), Date.parse(to)],
          Date.parse('2026-03-03T18:00:00Z'),
        ),
      )
    expect(range('2026-03-04T04:19:00Z', '2026-03-04T10:34:00Z')).toEqual([
      '04:19 to 10:34 tomorrow',
      'mañana de 04:19 a 10:34',
    ])
    expect(range('2026-03-03T22:58:00Z', '2026-03-04T01:48:00Z')).toEqual([
      '22:58 to 01:48 tomorrow',
      'de 22:58 a mañana 01:48',
    ])
    expect(range('2026-03-04T08:47:00Z', '2026-03-05T03:46:00Z')).toEqual([
      '08:47 tomorrow to 03:46 on Thursday',
      'de mañana 08:47 al jueves 03:46',
    ])
    expect(range('2026-03-08T08:47:00Z', '2026-03-10T03:46:00Z')).toEqual([
      '08:47 on Sunday to 03:46 on 10 March',
      'del domingo 08:47 al 10 de marzo 03:46',
    ])
  })

  it('keeps the hour over a change of the clocks', () => {
    const before = Date.parse('2026-03-28T18:00:00Z')
    expect(fieldOf(daysAfter(before, 1))).toBe('2026-03-29T18:00')
    expect(daysAfter(before, 1) - before).toBe(23 * 3_600_000)
  })

  it('writes and reads the field of the phone', () => {
    const at = Date.parse('2026-07-01T20:15:00Z')
    expect(fieldOf(at)).toBe('2026-07-01T21:15')
    expect(ofField('2026-07-01T21:15')).toBe(at)
    expect(ofField('2026-03-29T01:30')).toBe(Date.parse('2026-03-29T01:30:00Z'))
    for (const none of ['', 'soon', '2026-13-01T10:00']) expect(ofField(none)).toBeUndefined()
  })
})
