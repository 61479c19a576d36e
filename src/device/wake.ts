/**
 * Keeps the screen on where the phone allows it. The lock is lost whenever the page hides, and iOS gives
 * it back only after a touch (WebKit 255363), so it is asked for again on return and at the next touch.
 */
import type { Awake, Unsubscribe, WakeLockState } from './ports.ts'

export function openAwake(): Awake & { close(): void } {
  let state: WakeLockState = 'wakeLock' in navigator ? 'idle' : 'absent'
  let wanted = false
  let asking = false
  let sentinel: WakeLockSentinel | null = null
  const listeners = new Set<(state: WakeLockState) => void>()

  function set(next: WakeLockState): void {
    if (next === state) return
    state = next
    for (const listener of listeners) listener(next)
  }

  async function ask(): Promise<void> {
    if (!wanted || asking || state === 'absent' || document.hidden || (sentinel && !sentinel.released)) return
    asking = true
    try {
      const held = await navigator.wakeLock.request('screen')
      sentinel = held
      held.addEventListener('release', () => {
        if (held === sentinel) set(wanted ? 'lost' : 'idle')
      })
      set(held.released ? 'lost' : 'held')
      if (!wanted) await held.release()
    } catch {
      // Low battery, power saving or a policy: the person is told that the screen may sleep.
      if (wanted) set('refused')
    } finally {
      asking = false
    }
  }

  const again = (): void => void ask()
  document.addEventListener('visibilitychange', again)
  document.addEventListener('pointerdown', again, { passive: true })
  return {
    state: () => state,
    want(on) {
      wanted = on
      if (on) void ask()
      else {
        void sentinel?.release()
        sentinel = null
        if (state !== 'absent') set('idle')
      }
    },
    onChange(listener): Unsubscribe {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      document.removeEventListener('visibilitychange', again)
      document.removeEventListener('pointerdown', again)
      void sentinel?.release()
    },
  }
}
