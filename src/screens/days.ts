import { useComputed } from '@preact/signals'
import { tagOf } from '../words/languages.ts'
import { LATE_WORDS } from '../words/late.ts'
import { useApp } from './app.ts'
import { lazyValue } from './lazy.tsx'

/** The calendar, once it is here. */
export const useCalendar = lazyValue(() => import('./calendar.ts'))

const MINUTE_MS = 60_000

export interface Days {
  /** A moment, with its day where that is not today. Table time, ms. */
  moment(at: number): string
  /** The day of a moment; nothing where that is today, or not known yet. */
  dayOf(at: number): string
  /** The same of an estimate; never is said so. */
  about(at: number): string
  /** From the likely moment to the upper bound; as {@link Days.about} where they are the same, or where the bound is never. */
  between(range: { readonly likely: number; readonly upper: number }): string
}

/** How moments are said that may be on another day; until the calendar is here, how far off they are. */
export function useDays(): Days {
  const { table, now, words, formats } = useApp()
  const calendar = useCalendar()
  const w = words.value
  const f = formats.value
  const { skewMs, settings } = table.value
  const language = tagOf(settings.language)
  const { days } = LATE_WORDS[settings.language]
  // To the minute: screens are drawn again no more often for it.
  const from = useComputed(() => Math.floor(now.value / MINUTE_MS) * MINUTE_MS).value
  const far = (at: number) => (at < from ? days.ago(f.span(from - at)) : days.in(f.span(at - from)))
  const moment = (at: number) =>
    calendar?.withDay(days, language, at + skewMs, from + skewMs, f.clock(at + skewMs)) ?? far(at)
  const about = (at: number) =>
    !Number.isFinite(at) ? w.units.never : calendar ? days.about(moment(at)) : moment(at)
  return {
    moment,
    dayOf: (at) => calendar?.dayText(days, language, at + skewMs, from + skewMs) ?? '',
    about,
    between: ({ likely, upper }) => {
      if (!Number.isFinite(likely) || !Number.isFinite(upper)) return about(likely)
      const [begins, ends] = [moment(likely), moment(upper)]
      if (begins === ends) return about(likely)
      const range = [likely + skewMs, upper + skewMs] as const
      return (
        calendar?.rangeText(days, language, f.clock, w.bench.fromTo, range, from + skewMs) ??
        w.bench.fromTo(begins, ends)
      )
    },
  }
}
