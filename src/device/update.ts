import { Workbox } from 'workbox-window'
import type { SkipWaiting, TakeOver } from '../../shared/messages.ts'
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
  /** Everything is kept for the first time: from now on no network is needed. */
  onOfflineReady(listener: () => void): Unsubscribe
  /** Uses the new version now, on the person's word. */
  apply(): Promise<Applied>
  /** Looks for a new version, at most once an hour. For whenever the page comes back. */
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
  const readyListeners = new Set<() => void>()
  const hadController = serviceWorker.controller !== null
  const workbox = new Workbox(new URL('sw.js', document.baseURI).href, { updateViaCache: 'none' })
  let reloading = false
  let checkedMs = 0

  const reload = () => {
    if (reloading) return
    reloading = true
    location.reload()
  }
  workbox.addEventListener('waiting', () => {
    for (const listener of waitingListeners) listener()
  })
  workbox.addEventListener('controlling', () => {
    if (hadController) return
    for (const listener of readyListeners) listener()
  })

  let registration: ServiceWorkerRegistration | undefined
  try {
    registration = await workbox.register({ immediate: true })
  } catch {
    return null
  }
  const worker = () => registration?.waiting ?? null

  const apply = async (): Promise<Applied> => {
    const waiting = worker()
    if (!waiting) return 'none'
    const answer = await ask(waiting)
    if (answer === 'other-window') return answer
    serviceWorker.addEventListener('controllerchange', reload)
    if (waiting.state === 'activated') reload()
    setTimeout(reload, PATIENCE_MS)
    return 'reloading'
  }

  const applyAtStart = async () => {
    for (const pauseMs of START_TRIES_MS) {
      await new Promise((resolve) => setTimeout(resolve, pauseMs))
      if (!worker() || !isQuiet() || (await apply()) !== 'other-window') return
    }
  }
  if (hadController) void applyAtStart()

  const subscribe = (listeners: Set<() => void>) => (listener: () => void) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }
  return {
    waiting: () => worker() !== null,
    onWaiting: subscribe(waitingListeners),
    onOfflineReady: subscribe(readyListeners),
    apply,
    check(nowMs) {
      if (nowMs - checkedMs < CHECK_EVERY_MS) return
      checkedMs = nowMs
      registration?.update().catch(() => {})
    },
  }
}

/** Asks the waiting worker to take over. */
function ask(worker: ServiceWorker): Promise<TakeOver> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = (event: MessageEvent<TakeOver>) => resolve(event.data)
    const message: SkipWaiting = { type: 'SKIP_WAITING' }
    worker.postMessage(message, [port2])
  })
}
