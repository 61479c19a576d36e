/** Days and hours by the phone's own calendar, in its own zone: a day of 23 or 25 hours is one day. Times: epoch ms. */
import { DateTime } from 'luxon'
import type { LateWords } from '../words/late.ts'

/** How the field of the phone for day and hour writes a moment. */
const FIELD = "yyyy-MM-dd'T'HH:mm"

const daysBetween = (from: DateTime, to: DateTime): number =>
  Math.round(to.startOf('day').diff(from.startOf('day'), 'days').days)

/** The day alone, as {@link withDay} says it: nothing of today. */
export const dayText = (words: LateWords['days'], language: string, atMs: number, nowMs: number): string =>
  withDay(words, language, atMs, nowMs, '').trim()

/** An hour or hours, `clock`, with their day where that is not today: as near as a week by the day's name, else by its date. */
export function withDay(
  words: LateWords['days'],
  language: string,
  atMs: number,
  nowMs: number,
  clock: string,
): string {
  const at = DateTime.fromMillis(atMs).setLocale(language)
  const days = daysBetween(DateTime.fromMillis(nowMs), at)
  switch (days) {
    case -1:
      return words.yesterday(clock)
    case 0:
      return clock
    case 1:
      return words.tomorrow(clock)
    default:
      return words.on(clock, at.toFormat(Math.abs(days) < 7 ? 'cccc' : words.date))
  }
}

/** The day of a moment with its year, as 3 March 2026: for paper. */
export const dateText = (words: LateWords['days'], language: string, atMs: number): string =>
  DateTime.fromMillis(atMs).setLocale(language).toFormat(words.dateOfYear)

/** Two moments, epoch ms, as `join` joins their `clock`; a day that both are on is said once, of both. */
export function rangeText(
  words: LateWords['days'],
  language: string,
  clock: (atMs: number) => string,
  join: (from: string, to: string) => string,
  [fromMs, toMs]: readonly [fromMs: number, toMs: number],
  nowMs: number,
): string {
  const dated = (atMs: number, text = clock(atMs)) => withDay(words, language, atMs, nowMs, text)
  return daysBetween(DateTime.fromMillis(fromMs), DateTime.fromMillis(toMs)) === 0
    ? dated(fromMs, join(clock(fromMs), clock(toMs)))
    : join(dated(fromMs), dated(toMs))
}

/** A moment as the field of the phone holds it. */
export const fieldOf = (atMs: number): string => DateTime.fromMillis(atMs).toFormat(FIELD)

/** The moment a field holds; undefined for what is none. An hour that the clocks skip is the one after it. */
export function ofField(text: string): number | undefined {
  const at = DateTime.fromISO(text)
  return at.isValid ? at.toMillis() : undefined
}

/** The same hour so many days on. */
export const daysAfter = (atMs: number, days: number): number =>
  DateTime.fromMillis(atMs).plus({ days }).toMillis()
