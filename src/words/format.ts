import type { Words } from './bench.ts'
import { decimal } from './number.ts'

const MM_PER_INCH = 25.4
const ML_PER_US_FLUID_OUNCE = 29.5735

export type Units = 'metric' | 'us'

/** Finest mark of an inch ruler. */
const RULER = 16

/** Inches as a ruler has them, in whole sixteenths: `3 1/2`. */
export function rulerInches(mm: number): string {
  const marks = Math.round((mm / MM_PER_INCH) * RULER)
  const whole = Math.floor(marks / RULER)
  let [top, bottom] = [marks % RULER, RULER]
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  return [whole > 0 || top === 0 ? `${whole}` : '', top > 0 ? `${top}/${bottom}` : '']
    .filter(Boolean)
    .join(' ')
}

/**
 * Numbers as people say them; stored values are SI, only the text knows inches. `hour12`: whether the phone tells the
 * time by twelve hours, asked when the first time is told.
 */
export function formats(words: Words, units: Units, language: string, hour12 = () => false) {
  const number = (value: number, digits: number, least = digits): string =>
    decimal(value, digits, least, language)
  const u = words.units
  // Made when first wanted: each takes a slow phone ten milliseconds and more.
  const made: Partial<Record<'minute' | 'second', Intl.DateTimeFormat>> = {}
  const clockText = (epochMs: number, seconds = false) => {
    const to = seconds ? 'second' : 'minute'
    made[to] ??= new Intl.DateTimeFormat(language, {
      ...(hour12()
        ? { hour: 'numeric' as const, hour12: true }
        : { hour: '2-digit' as const, hourCycle: 'h23' as const }),
      minute: '2-digit',
      ...(seconds ? { second: '2-digit' } : {}),
    })
    // Spanish ends the hour with a full stop, which many a sentence has as well.
    return made[to].format(epochMs).replace(/\..?m\./, 'm')
  }
  return {
    /** Time of day, as the phone tells it, to the minute or the second. */
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
    /** How long something takes at least and at most, in few letters: whole minutes, or whole hours rounded outwards. */
    spanBetween(leastMs: number, mostMs: number): string {
      if (!Number.isFinite(mostMs)) return u.over(Math.floor(leastMs / 3_600_000))
      const most = Math.max(1, Math.ceil(mostMs / 60_000))
      if (most < 60) return u.minutesBetween(Math.min(most, Math.max(0, Math.floor(leastMs / 60_000))), most)
      return u.hoursBetween(Math.max(0, Math.floor(leastMs / 3_600_000)), Math.ceil(mostMs / 3_600_000))
    },
    /** A length on a pot: walls and feet are told by the half millimetre, or by the marks of an inch ruler. */
    mm: (mm: number): string =>
      units === 'metric'
        ? `${mm < 10 ? number(Math.round(mm * 2) / 2, 1, 0) : Math.round(mm)} mm`
        : `${rulerInches(mm)} in`,
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
