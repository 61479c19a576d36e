/**
 * When the page was last seen alive, over kills and closed tabs, and in which theme, for the blink before the journal
 * is open. Not the journal: losing it loses nothing.
 */

import { LANGUAGES, type LanguageCode } from '../../shared/languages.ts'

const DEMO_KEY = 'bucketside.demo'

/** Whether this window shows the demo: as long as it stays open, over reloads. */
export function inDemo(): boolean {
  try {
    return sessionStorage.getItem(DEMO_KEY) !== null
  } catch {
    // Storage may be walled off; then there is nothing but the own table.
    return false
  }
}

/** From the next load on. */
export function showDemo(on: boolean): void {
  try {
    if (on) sessionStorage.setItem(DEMO_KEY, '1')
    else sessionStorage.removeItem(DEMO_KEY)
  } catch {
    // As above.
  }
}

/** Each table's own: hours in the demo say nothing of a count on the own table. */
const seenKey = () => (inDemo() ? 'bucketside.demo-seen' : 'bucketside.seen')

/** A page that lived. */
export interface LifeSign {
  /** Epoch ms of the phone's clock as it went then. */
  readonly atMs: number
  /** How far the clock had been set by then, all in all, ms; unknown of pages of earlier versions. */
  readonly skewMs?: number | undefined
}

const read = (key: string): string | null => {
  try {
    return localStorage.getItem(key)
  } catch {
    // As above.
    return null
  }
}

const write = (key: string, value: string): void => {
  try {
    localStorage.setItem(key, value)
  } catch {
    // As above.
  }
}

/** The last life sign of an earlier page, if any. */
export function lastSeen(): LifeSign | undefined {
  const [atMs = 0, skewMs] = (read(seenKey()) ?? '').split(' ').map(Number)
  return atMs > 0 ? { atMs, skewMs } : undefined
}

export const beSeen = (atMs: number, skewMs: number): void => write(seenKey(), `${atMs} ${skewMs}`)

const COPIED_KEY = 'bucketside.copied'

/** Epoch ms of the last backup that left the app, if any. */
export const lastCopiedMs = (): number | undefined => Number(read(COPIED_KEY)) || undefined

export const beCopied = (epochMs: number): void => write(COPIED_KEY, String(epochMs))

const LANGUAGE_KEY = 'bucketside.language'

/** What the phone was set to speak last; its own language where nothing was chosen. */
export function lastLanguage(): 'phone' | LanguageCode {
  const kept = read(LANGUAGE_KEY)
  return LANGUAGES.find((it) => it === kept) ?? 'phone'
}

export const keepLanguage = (language: string): void => write(LANGUAGE_KEY, language)

const THEME_KEY = 'bucketside.theme'
export type Theme = 'paper' | 'dim'

export function lastTheme(): Theme | undefined {
  const theme = read(THEME_KEY)
  return theme === 'paper' || theme === 'dim' ? theme : undefined
}

export const keepTheme = (theme: Theme): void => write(THEME_KEY, theme)
