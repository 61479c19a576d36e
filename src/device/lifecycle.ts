/**
 * Seven events of three browsers in one `Wake` and one sleep. iOS suspends without a word, so a heartbeat
 * that missed its time is an event too.
 */
import type { Clock, Lifecycle, SleepReason, Unsubscribe, Wake, WakeReason } from './ports.ts'

const BEAT_MS = 500
/** A count that nobody could see or hear for longer than this is unsure. */
export const FROZEN_MS = 1500
/** visibilitychange, pageshow and resume arrive together: one wake. */
const SAME_WAKE_MS = 250

interface Times {
  readonly epochMs: number
  readonly pageMs: number
}

/** How long between two looks at the clocks; each of them may have stood still or been set back. */
export const gapBetween = (before: Times, after: Times): number =>
  Math.max(0, after.epochMs - before.epochMs, after.pageMs - before.pageMs)

declare global {
  interface Document {
    /** Chromium only. */
    readonly wasDiscarded?: boolean
  }
}

/** Watches the page from now on. The first wake is reported as soon as the caller has yielded. */
export function openLifecycle(clock: Clock): Lifecycle & { close(): void } {
  const wakes = new Set<(wake: Wake) => void>()
  const sleeps = new Set<(reason: SleepReason) => void>()
  // A clock that was set cannot be told here from a page that stood still: who counted is asked.
  const look = (): Times => ({ epochMs: Date.now(), pageMs: clock.pageMs() })
  let seen = look()
  let wokeAt = -Infinity

  const wake = (reason: WakeReason): void => {
    if (document.hidden) return
    const now = look()
    const gapMs = gapBetween(seen, now)
    seen = now
    if (gapMs < FROZEN_MS && now.pageMs - wokeAt < SAME_WAKE_MS) return
    wokeAt = now.pageMs
    for (const listener of wakes) listener({ reason, gapMs, atMs: now.epochMs })
  }
  const sleep = (reason: SleepReason): void => {
    for (const listener of sleeps) listener(reason)
  }
  const beat = (): void => {
    if (document.hidden) return
    if (gapBetween(seen, look()) > FROZEN_MS) wake('gap')
    else seen = look()
  }
  const hide = (): void => {
    if (gapBetween(seen, look()) <= FROZEN_MS) seen = look()
    sleep('hidden')
  }

  const stop = new AbortController()
  const on = (target: EventTarget, type: string, handler: () => void): void =>
    target.addEventListener(type, handler, { signal: stop.signal })
  on(document, 'visibilitychange', () => (document.hidden ? hide() : wake('visible')))
  on(document, 'freeze', () => sleep('freeze'))
  on(document, 'resume', () => wake('resume'))
  on(window, 'pagehide', () => sleep('pagehide'))
  on(window, 'pageshow', () => wake('pageshow'))
  on(window, 'online', () => wake('online'))
  const timer = setInterval(beat, BEAT_MS)
  queueMicrotask(() => wake(document.wasDiscarded ? 'discarded' : 'start'))

  const subscribe = <T>(set: Set<T>, listener: T): Unsubscribe => {
    set.add(listener)
    return () => set.delete(listener)
  }
  return {
    visible: () => !document.hidden,
    onWake: (listener) => subscribe(wakes, listener),
    onSleep: (listener) => subscribe(sleeps, listener),
    close() {
      stop.abort()
      clearInterval(timer)
    },
  }
}
