import type { Words } from './first-cards.ts'

const MM_PER_INCH = 25.4
const ML_PER_US_FLUID_OUNCE = 29.5735

export type Units = 'metric' | 'us'

/** Numbers as people say them; stored values are SI, only the text knows inches. */
export function formats(words: Words, units: Units, language: string) {
  const number = (value: number, digits: number) => value.toFixed(digits)
  const u = words.units
  // Made when first wanted: each takes a slow phone ten milliseconds and more.
  const made: Partial<Record<'minute' | 'second', Intl.DateTimeFormat>> = {}
  const clockText = (epochMs: number, seconds = false) => {
    const to = seconds ? 'second' : 'minute'
    made[to] ??= new Intl.DateTimeFormat(language, {
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
      ...(seconds ? { second: '2-digit' } : {}),
    })
    return made[to].format(epochMs)
  }
  return {
    /** Time of day, 24 h, to the minute or the second. */
    clock: clockText,
    /** How long something is, from ms: seconds below a minute, then whole minutes. */
    span(ms: number): string {
      if (!Number.isFinite(ms)) return u.never
      const s = Math.max(0, Math.round(ms / 1000))
      if (s < 60) return u.underMinute(s)
      const min = Math.round(ms / 60_000)
      if (min < 60) return u.minutes(min)
      const hours = Math.floor(min / 60)
      return min % 60 === 0 || hours >= 6 ? u.hours(Math.round(min / 60)) : u.hoursMinutes(hours, min % 60)
    },
    /** A length on a pot: walls and feet are told by the half millimetre. */
    mm: (mm: number): string =>
      units === 'metric'
        ? `${mm < 10 ? Math.round(mm * 2) / 2 : Math.round(mm)} mm`
        : `${number(mm / MM_PER_INCH, mm < 25 ? 2 : 1)} in`,
    /** Thickness of a coat: tenths of a mm, or thousandths of an inch. */
    coat: (mm: number): string =>
      units === 'metric' ? `${number(mm, 1)} mm` : `${Math.round((mm / MM_PER_INCH) * 1000)} mil`,
    temp: (tempC: number): string =>
      units === 'metric' ? `${Math.round(tempC)} °C` : `${Math.round(tempC * 1.8 + 32)} °F`,
    /** A pour. */
    pour: (litres: number): string =>
      units === 'metric'
        ? `${Math.round((litres * 1000) / 10) * 10} ml`
        : `${Math.round((litres * 1000) / ML_PER_US_FLUID_OUNCE)} fl oz`,
    density: (gramsPerMl: number): string => number(gramsPerMl, 2),
  }
}

export type Formats = ReturnType<typeof formats>
