import { useComputed } from '@preact/signals'
import { useApp } from './app.ts'
import { lazyValue } from './lazy.tsx'

/** The calendar, once it is here. */
export const useCalendar = lazyValue(() => import('./calendar.ts'))

const MINUTE_MS = 60_000

export interface Days {
  /** A moment, with its day where that is not today. Table time, ms. */
  moment(at: number): string
  /** The same of an estimate; never is said so. */
  about(at: number): string
}

/** How moments are said that may be on another day; until the calendar is here, how far off they are. */
export function useDays(): Days {
  const { table, now, words, formats } = useApp()
  const calendar = useCalendar()
  const w = words.value
  const f = formats.value
  const { skewMs, settings } = table.value
  // To the minute: screens are drawn again no more often for it.
  const from = useComputed(() => Math.floor(now.value / MINUTE_MS) * MINUTE_MS).value
  const far = (at: number) => (at < from ? w.days.ago(f.span(from - at)) : w.days.in(f.span(at - from)))
  const moment = (at: number) =>
    calendar ? calendar.momentText(w.days, settings.language, at + skewMs, from + skewMs) : far(at)
  return {
    moment,
    about: (at) => (!Number.isFinite(at) ? w.units.never : calendar ? w.days.about(moment(at)) : moment(at)),
  }
}
