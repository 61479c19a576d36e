import type { AskOfWorker } from '../../shared/messages.ts'
import type { Updates } from '../device/update.ts'
import type { Health } from '../screens/app.ts'

/** The first visit fetches everything to keep it when the first screen has long been drawn. */
const UPDATES_AFTER_MS = 1500
/** The bench is up and quiet by then: the kept files are looked through. */
const CHECK_AFTER_MS = 5000

export interface Updating {
  /** Looks for a new version, and whether every file is kept; `atMs`: epoch ms. */
  check(atMs: number): void
  apply(): void
}

/** The first screen is drawn: this version works. */
export function tellStarted(): void {
  const started: AskOfWorker = { type: 'STARTED' }
  navigator.serviceWorker?.controller?.postMessage(started)
}

/** Keeps the app on the phone, and takes a new version on where it is `quiet`. */
export function openUpdating(isQuiet: () => boolean, patch: (part: Partial<Health>) => void): Updating {
  let updates: Updates | null = null
  const look = async () => {
    const { openUpdates } = await import('../device/update.ts')
    updates = await openUpdates({ isQuiet })
    if (!updates) return
    patch({ update: updates.waiting() })
    updates.onWaiting(() => patch({ update: true }))
    updates.onKept(({ all, fellBack }) => patch({ offlineReady: all, fellBack }))
    setTimeout(() => updates?.check(Date.now()), CHECK_AFTER_MS)
  }
  // With a worker all is on the phone already, and a version that waits is best taken on at once.
  const kept = navigator.serviceWorker?.controller != null
  setTimeout(() => void look().catch(() => {}), kept ? 0 : UPDATES_AFTER_MS)
  return { check: (atMs) => updates?.check(atMs), apply: () => void updates?.apply() }
}
