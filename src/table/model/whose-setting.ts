import type { Settings } from '../../../shared/nouns.ts'

/**
 * Whose each setting is. What is the phone's goes with the person who holds it: how it looks, sounds and is read, and how
 * these hands dip; another phone's never replaces it. What is the table's is of the room and its kiln, and the last word
 * on it stands on every phone.
 */
export const SETTING_IS: Readonly<Record<keyof Settings, 'phone' | 'table'>> = {
  units: 'phone',
  language: 'phone',
  theme: 'phone',
  hand: 'phone',
  sound: 'phone',
  spoken: 'phone',
  noisy: 'phone',
  leadInS: 'phone',
  lowerMmPerS: 'phone',
  dripS: 'phone',
  student: 'phone',
  potters: 'phone',
  staleMin: 'table',
  wax: 'table',
  waxFirst: 'table',
  readyMeans: 'table',
  stackLimitMm: 'table',
  collarVesselMm: 'table',
  firstWaitMin: 'table',
  laterWaitMin: 'table',
  kilnWaitMin: 'table',
  kilnOnAt: 'table',
  loadMin: 'table',
  candle: 'table',
}

/** Those of some settings that are the table's. */
export const ofTable = (settings: Partial<Settings>): Partial<Settings> =>
  Object.fromEntries(
    Object.entries(settings).filter(([name]) => SETTING_IS[name as keyof Settings] === 'table'),
  )
