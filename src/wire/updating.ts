import type { Updates } from '../device/update.ts'
import type { Health } from '../screens/app.ts'

/** The first visit fetches everything to keep it when the first screen has long been drawn. */
const UPDATES_AFTER_MS = 1500

export interface Updating {
  /** Looks for a new version; `atMs`: epoch ms. */
  check(atMs: number): void
  apply(): void
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
    updates.onOfflineReady(() => patch({ offlineReady: true }))
  }
  // With a worker all is on the phone already, and a version that waits is best taken on at once.
  const kept = navigator.serviceWorker?.controller != null
  setTimeout(() => void look().catch(() => {}), kept ? 0 : UPDATES_AFTER_MS)
  return { check: (atMs) => updates?.check(atMs), apply: () => void updates?.apply() }
}
