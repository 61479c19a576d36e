import { type ReadonlySignal, signal } from '@preact/signals'

const LOCK = 'bucketside-sound'

/** Which of this phone's windows sounds: the one hit last. The others show, and take over where that one is gone. */
export interface OneSounds {
  /** Whether this one does. */
  readonly here: ReadonlySignal<boolean>
  /** A hit in this window: from now on it does. */
  take(): void
}

/** Held by the window that sounds, taken away by a hit in another, and free again when a window closes or is killed. */
export function openOneSounds(locks: Pick<LockManager, 'request'> | undefined): OneSounds {
  const here = signal(true)
  if (!locks) return { here, take() {} }
  let latest = 0
  let touched = false
  const ask = (options: LockOptions): void => {
    const asked = ++latest
    const lost = () => {
      if (asked !== latest) return
      here.value = false
      ask({})
    }
    locks
      .request(LOCK, options, (lock) => {
        // Asked anew meanwhile: this one is let go.
        if (asked !== latest) return undefined
        if (!lock) return lost()
        here.value = true
        return new Promise<void>(() => {})
      })
      .catch((error: unknown) => {
        // Any other refusal is for good: no locks here, or a page that is being left, which asked again for ever (WebKit).
        if ((error as { name?: string } | null)?.name === 'AbortError') lost()
      })
  }
  ask({ ifAvailable: true })
  const take = () => {
    touched = true
    if (!here.peek()) ask({ steal: true })
    here.value = true
  }
  // A window that was hit before is looked at again: nobody sees the other one.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && touched) take()
  })
  return { here, take }
}
