/** Vibration: Chromium only, on the screen that is seen; everywhere else nothing is felt. */
import type { Feeling, Haptics } from './ports.ts'

/** Milliseconds on, off, on, ... */
const PATTERNS: Readonly<Record<Feeling, readonly number[]>> = {
  short: [40],
  twoShort: [40, 80, 40],
  long: [250],
  refused: [30, 40, 30, 40, 30],
  out: [400, 100, 400],
}

export function openHaptics(): Haptics {
  const present = typeof navigator.vibrate === 'function'
  return { present, feel: (feeling) => present && navigator.vibrate([...PATTERNS[feeling]]) }
}
