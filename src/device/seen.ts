/**
 * When the page was last seen alive, over kills and closed tabs, and in which theme, for the blink before the journal
 * is open. Not the journal: losing it loses nothing.
 */

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

/** The last life sign of an earlier page, if any. */
export function lastSeen(): LifeSign | undefined {
  try {
    const [atMs = 0, skewMs] = (localStorage.getItem(seenKey()) ?? '').split(' ').map(Number)
    return atMs > 0 ? { atMs, skewMs } : undefined
  } catch {
    // As above; then nothing is known of earlier pages.
    return undefined
  }
}

export function beSeen(atMs: number, skewMs: number): void {
  try {
    localStorage.setItem(seenKey(), `${atMs} ${skewMs}`)
  } catch {
    // As above.
  }
}

const COPIED_KEY = 'bucketside.copied'

/** Epoch ms of the last backup that left the app, if any. */
export function lastCopiedMs(): number | undefined {
  try {
    const copied = Number(localStorage.getItem(COPIED_KEY))
    return copied > 0 ? copied : undefined
  } catch {
    // As above.
    return undefined
  }
}

export function beCopied(epochMs: number): void {
  try {
    localStorage.setItem(COPIED_KEY, String(epochMs))
  } catch {
    // As above.
  }
}

const THEME_KEY = 'bucketside.theme'
export type Theme = 'paper' | 'dim'

export function lastTheme(): Theme | undefined {
  try {
    const theme = localStorage.getItem(THEME_KEY)
    return theme === 'paper' || theme === 'dim' ? theme : undefined
  } catch {
    return undefined
  }
}

export function keepTheme(theme: Theme): void {
  try {
    localStorage.setItem(THEME_KEY, theme)
  } catch {
    // As above.
  }
}
