/** Vibration: Chromium only, on the screen that is seen; everywhere else nothing is felt. */
import type { Feeling, Haptics } from './ports.ts'
import type { CuePlan, ToneName } from './sound-plan.ts'

/** Milliseconds on, off, on, ... */
const PATTERNS: Readonly<Record<Feeling, readonly number[]>> = {
  short: [40],
  twoShort: [40, 80, 40],
  long: [250],
  refused: [30, 40, 30, 40, 30],
  out: [400, 100, 400],
}

/** How long each sign of a count is felt, ms. */
const FELT_MS: Readonly<Partial<Record<ToneName, number>>> = {
  low: 60,
  in: 200,
  tick: 40,
  rise: 120,
  out: 700,
  drip: 150,
}
/** Chromium feels no more entries of a pattern, and none for longer (VibrationController). */
const MOST = 99
const LONGEST_MS = 10_000

/** A count as a pattern: on, off, on, ... from the tap on, ms. A count too long for one is felt each fifth second. */
export function countPattern({ cues }: CuePlan): number[] {
  const felt = cues.flatMap((cue) =>
    'tone' in cue && FELT_MS[cue.tone] ? [{ atMs: cue.atS * 1000, tone: cue.tone }] : [],
  )
  let ticks = 0
  const few = felt.length * 2 < MOST ? felt : felt.filter(({ tone }) => tone !== 'tick' || ticks++ % 5 === 0)
  const pattern = [0]
  let atMs = 0
  for (const { atMs: fromMs, tone } of few) {
    const pauseMs = Math.round(fromMs - atMs)
    if (pauseMs > LONGEST_MS) break
    pattern.push(pauseMs, FELT_MS[tone] ?? 0)
    atMs = fromMs + (FELT_MS[tone] ?? 0)
  }
  return pattern
}

export function openHaptics(): Haptics {
  const present = typeof navigator.vibrate === 'function'
  return {
    present,
    feel: (feeling) => present && navigator.vibrate([...PATTERNS[feeling]]),
    count: (plan) => present && navigator.vibrate(countPattern(plan)),
  }
}
