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

/** Epoch ms of the last life sign of an earlier page, if any. */
export function lastSeenMs(): number | undefined {
  try {
    const seen = Number(localStorage.getItem(seenKey()))
    return seen > 0 ? seen : undefined
  } catch {
    // As above; then nothing is known of earlier pages.
    return undefined
  }
}

export function beSeen(epochMs: number): void {
  try {
    localStorage.setItem(seenKey(), String(epochMs))
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
