/**
 * Two clocks and the watch between them. Epoch time is what is kept, and may be set by anyone; page time
 * runs on, but stands still on some phones while they sleep. A drift between them is one or the other.
 */
import type { Clock, ClockJump, Unsubscribe } from './ports.ts'

/** Smaller drifts are the slow correction of the phone's clock. */
export const JUMP_MS = 2000

/** The two clocks at one instant; `awake`: seen and running ever since the stamp before. */
export interface ClockReading {
  readonly epochMs: number
  readonly pageMs: number
  readonly awake: boolean
}

/** The jump between two stamps. Ahead while nobody could see the page is taken for sleep. */
export function jumpBetween(before: ClockReading, after: ClockReading): ClockJump | null {
  const byMs = after.epochMs - before.epochMs - (after.pageMs - before.pageMs)
  if (Math.abs(byMs) <= JUMP_MS) return null
  return { byMs, sinceMs: before.pageMs, kind: byMs > 0 && !after.awake ? 'slept' : 'moved' }
}

const CHECK_MS = 1000

/** The clock of this page. Checks for jumps whenever it is asked, each second and when the page comes back. */
export function openClock(): Clock & { close(): void } {
  const listeners = new Set<(jump: ClockJump) => void>()
  let wasHidden = document.hidden
  const stamp = (): ClockReading => ({
    epochMs: Date.now(),
    pageMs: performance.now(),
    awake: !wasHidden && !document.hidden,
  })
  let last = stamp()
  /** Of jumps that nobody has taken yet. */
  let untakenMs = 0
  const check = (): void => {
    const now = stamp()
    const jump = jumpBetween(last, now)
    last = now
    wasHidden = document.hidden
    if (!jump) return
    if (jump.kind === 'moved') untakenMs += jump.byMs
    for (const listener of listeners) listener(jump)
  }
  const epochMs = () => {
    check()
    return Date.now() - untakenMs
  }
  const timer = setInterval(check, CHECK_MS)
  document.addEventListener('visibilitychange', check)
  return {
    epochMs,
    untakenMs() {
      check()
      return untakenMs
    },
    taken(byMs) {
      untakenMs -= byMs
    },
    pageMs: () => performance.now(),
    epochAt: (pageMs) => epochMs() - (performance.now() - pageMs),
    onJump(listener): Unsubscribe {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      clearInterval(timer)
      document.removeEventListener('visibilitychange', check)
    },
  }
}
