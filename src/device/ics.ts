/** A calendar file (RFC 5545) for long waits: the phone's own calendar rings even when the app is gone. */

export interface CalendarCall {
  readonly uid: string
  readonly dueMs: number
  readonly title: string
}

export const CALENDAR_TYPE = 'text/calendar'
/** RFC 5545 section 3.1: lines of at most 75 octets. */
const LINE_OCTETS = 75
const SHOWN_MS = 5 * 60_000

/** One event a call, with an alarm at its start. `madeMs` is the time of writing. Times are UTC. */
export function calendarFile(calls: readonly CalendarCall[], madeMs: number): string {
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Bucketside//Waits//EN']
  for (const call of calls) {
    const summary = escapeText(call.title)
    lines.push(
      'BEGIN:VEVENT',
      `UID:${escapeText(call.uid)}`,
      `DTSTAMP:${utc('madeMs', madeMs)}`,
      `DTSTART:${utc('dueMs', call.dueMs)}`,
      `DTEND:${utc('dueMs', call.dueMs + SHOWN_MS)}`,
      `SUMMARY:${summary}`,
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      `DESCRIPTION:${summary}`,
      'TRIGGER:PT0S',
      'END:VALARM',
      'BEGIN:VALARM',
      'ACTION:AUDIO',
      'TRIGGER:PT0S',
      'END:VALARM',
      'END:VEVENT',
    )
  }
  lines.push('END:VCALENDAR')
  return `${lines.map(fold).join('\r\n')}\r\n`
}

function utc(field: string, ms: number): string {
  if (!Number.isFinite(ms)) throw new RangeError(`${field} ${ms}: epoch milliseconds are wanted`)
  return new Date(ms).toISOString().replace(/[-:]|\.\d+/g, '')
}

/** RFC 5545 section 3.3.11. */
const escapeText = (text: string): string =>
  text.replace(/[\\;,]/g, (c) => `\\${c}`).replace(/\r\n|\r|\n/g, '\\n')

function fold(line: string): string {
  const encoder = new TextEncoder()
  let folded = ''
  let octets = 0
  for (const char of line) {
    const size = encoder.encode(char).length
    if (octets + size > LINE_OCTETS) {
      folded += '\r\n '
      octets = 1
    }
    folded += char
    octets += size
  }
  return folded
}
