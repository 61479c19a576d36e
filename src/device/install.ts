/** Putting the app on the home screen: Chromium can be asked, on iOS the person does it by hand. */
import type { Install, InstallState, Unsubscribe } from './ports.ts'

/** Chromium only, hence in no standard type. */
interface InstallPrompt extends Event {
  prompt(): Promise<{ readonly outcome: 'accepted' | 'dismissed' }>
}

const isPrompt = (event: Event): event is InstallPrompt => 'prompt' in event

declare global {
  interface Navigator {
    /** iOS: opened from the home screen. */
    readonly standalone?: boolean
  }
}

/** Open early: the browser offers its prompt once, soon after load. */
export function openInstall(): Install {
  const listeners = new Set<(state: InstallState) => void>()
  let offered: InstallPrompt | null = null
  let installed = matchMedia('(display-mode: standalone)').matches || navigator.standalone === true
  // Only iOS defines `standalone` at all.
  const byHand = navigator.standalone === false

  const state = (): InstallState => {
    if (installed) return 'installed'
    return offered ? 'prompt' : byHand ? 'byHand' : 'unknown'
  }
  const changed = (): void => {
    for (const listener of listeners) listener(state())
  }
  addEventListener('beforeinstallprompt', (event) => {
    if (!isPrompt(event)) return
    event.preventDefault()
    offered = event
    changed()
  })
  addEventListener('appinstalled', () => {
    installed = true
    offered = null
    changed()
  })
  return {
    state,
    async prompt() {
      const asked = offered
      offered = null
      const outcome = asked ? (await asked.prompt()).outcome : 'dismissed'
      changed()
      return outcome === 'accepted'
    },
    onChange(listener): Unsubscribe {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}
