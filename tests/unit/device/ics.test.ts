import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calendarFile } from '../../../src/device/ics.ts'

const CALL = { uid: 'w1-7@bucketside', dueMs: Date.UTC(2031, 0, 5, 14, 2, 30), title: '34 ready, board A 3' }
const unfold = (text: string): string[] => text.replace(/\r\n /g, '').split('\r\n')

describe('the calendar file', () => {
  it('rings at the due time', () => {
    const lines = unfold(calendarFile([CALL], Date.UTC(2031, 0, 5, 13, 0, 0)))
    expect(lines[0]).toBe('BEGIN:VCALENDAR')
    expect(lines).toContain('DTSTART:20310105T140230Z')
    expect(lines).toContain('DTSTAMP:20310105T130000Z')
    expect(lines).toContain('SUMMARY:34 ready\\, board A 3')
    expect(lines.filter((l) => l === 'TRIGGER:PT0S')).toHaveLength(2)
    expect(lines.at(-1)).toBe('')
  })

  it('keeps any title on lines of at most 75 octets, and reads back the same', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 120 }), (title) => {
        const text = calendarFile([{ ...CALL, title }], 0)
        for (const line of text.split('\r\n')) {
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
        }
        const summary = unfold(text).find((l) => l.startsWith('SUMMARY:'))!
        const back = summary.slice(8).replace(/\\(n|[\\;,])/g, (_, c: string) => (c === 'n' ? '\n' : c))
        expect(back).toBe(title.replace(/\r\n|\r/g, '\n'))
      }),
    )
  })

  it('refuses a time that is none', () => {
    expect(() => calendarFile([{ ...CALL, dueMs: Number.NaN }], 0)).toThrow('dueMs NaN')
  })
})
