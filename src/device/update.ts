import { Workbox } from 'workbox-window'
import type { AskOfWorker, Kept, TakeOver } from '../../shared/messages.ts'
import type { Unsubscribe } from './ports.ts'

/** A browser looks for a new version once a day by itself; a bench page may stay open for days. */
const CHECK_EVERY_MS = 3_600_000
/** `controllerchange` may never come after a take-over; reloading anyway gives the new version. */
const PATIENCE_MS = 3000
/** After a reload the page that was left may count as another window for a moment. */
const START_TRIES_MS = [0, 400, 800]

/** `reloading`: the page goes in a moment. `other-window`: another window is open, and may be at work. */
export type Applied = 'reloading' | 'other-window' | 'none'

export interface Updates {
  /** True while a new version is kept and waits to be used. */
  waiting(): boolean
  onWaiting(listener: () => void): Unsubscribe
  /** How the kept files are: told when they were looked through, and completed where some were gone. */
  onKept(listener: (kept: Kept) => void): Unsubscribe
  /** Uses the new version now, on the person's word. */
  apply(): Promise<Applied>
  /** Looks for a new version and whether every file is kept, at most once an hour. For whenever the page comes back. */
  check(nowMs: number): void
}

export interface UpdateOptions {
  /** True when nothing runs, waits or is half typed, and the page is seen. */
  isQuiet(): boolean
}

/**
 * Registers the service worker. A version that was waiting before this page opened is applied at once if all is
 * quiet; one that comes later waits for the next start or for {@link Updates.apply}. Null where there are no
 * service workers, or none may be registered: then the app works with a network.
 */
export async function openUpdates({ isQuiet }: UpdateOptions): Promise<Updates | null> {
  const { serviceWorker } = navigator
  if (!serviceWorker) return null
  const waitingListeners = new Set<() => void>()
  const keptListeners = new Set<(kept: Kept) => void>()
  const hadController = serviceWorker.controller !== null
  let reloading = false
  let checkedMs = 0

  const reload = () => {
    if (reloading) return
    reloading = true
    location.reload()
  }
  const workbox = new Workbox(new URL('sw.js', document.baseURI).href, { updateViaCache: 'none' })
  workbox.addEventListener('waiting', () => {
    for (const listener of waitingListeners) listener()
  })
  const registration = await workbox.register({ immediate: true }).catch(() => undefined)
  if (!registration) return null

  const look = async () => {
    const { controller } = serviceWorker
    if (!controller) return
    const kept = await ask<Kept>(controller, { type: 'CHECK' })
    for (const listener of keptListeners) listener(kept)
  }
  // The first version has taken charge of the page that was there before it: it has not been asked about starts.
  if (!hadController) serviceWorker.addEventListener('controllerchange', () => void look(), { once: true })

  const apply = async (): Promise<Applied> => {
    const { waiting } = registration
    if (!waiting) return 'none'
    const answer = await ask<TakeOver>(waiting, { type: 'SKIP_WAITING' })
    if (answer === 'other-window') return answer
    serviceWorker.addEventListener('controllerchange', reload)
    if (waiting.state === 'activated') reload()
    setTimeout(reload, PATIENCE_MS)
    return 'reloading'
  }

  const applyAtStart = async () => {
    for (const pauseMs of START_TRIES_MS) {
      await new Promise((resolve) => setTimeout(resolve, pauseMs))
      if (!registration.waiting || !isQuiet() || (await apply()) !== 'other-window') return
    }
  }
  if (hadController) void applyAtStart()

  const subscribe =
    <L>(listeners: Set<L>) =>
    (listener: L) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    }
  return {
    waiting: () => registration.waiting !== null,
    onWaiting: subscribe(waitingListeners),
    onKept: subscribe(keptListeners),
    apply,
    check(nowMs) {
      if (nowMs - checkedMs < CHECK_EVERY_MS) return
      checkedMs = nowMs
      void look()
      registration.update().catch(() => {})
    },
  }
}

/** Asks a worker something that it answers. */
function ask<Answer>(worker: ServiceWorker, question: AskOfWorker): Promise<Answer> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = (event: MessageEvent<Answer>) => resolve(event.data)
    worker.postMessage(question, [port2])
  })
}
