/** Days and hours by the phone's own calendar, in its own zone: a day of 23 or 25 hours is one day. Times: epoch ms. */
import { DateTime } from 'luxon'
import type { LateWords } from '../words/late.ts'

/** How the field of the phone for day and hour writes a moment. */
const FIELD = "yyyy-MM-dd'T'HH:mm"

const daysBetween = (from: DateTime, to: DateTime): number =>
  Math.round(to.startOf('day').diff(from.startOf('day'), 'days').days)

/** Whether two moments are on one day. */
export const isSameDay = (aMs: number, bMs: number): boolean =>
  daysBetween(DateTime.fromMillis(aMs), DateTime.fromMillis(bMs)) === 0

/** The hour, with its day where that is not today: as near as a week by the day's name, else by its date. */
export function momentText(words: LateWords['days'], language: string, atMs: number, nowMs: number): string {
  const clock = DateTime.fromMillis(atMs).toFormat('HH:mm')
  return withDay(words, language, atMs, nowMs, clock)
}

/** The day alone, as {@link momentText} says it: nothing of today. */
export const dayText = (words: LateWords['days'], language: string, atMs: number, nowMs: number): string =>
  withDay(words, language, atMs, nowMs, '').trim()

function withDay(
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

/** The day of a moment as files are named by it, as 2026-03-29. */
export const fileDay = (atMs: number): string => DateTime.fromMillis(atMs).toFormat('yyyy-MM-dd')

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
