import { set } from 'idb-keyval'
import {
  addRoute,
  cleanupOutdatedCaches,
  matchPrecache,
  type PrecacheEntry,
  precache,
} from 'workbox-precaching'
import { openDatabase } from '../shared/database.ts'
import { NOTICE_TAP_CHANNEL, type NoticeTap, type SkipWaiting, type TakeOver } from '../shared/messages.ts'

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: (PrecacheEntry | string)[] }

const windows = () => self.clients.matchAll({ type: 'window', includeUncontrolled: true })

/** A page of the app, in contrast to a file: nothing with an extension, except a page itself. */
const isPage = (url: URL) => !/\.(?!html$)\w+$/.test(url.pathname)

// Before the precache's own listener. Whatever path below the scope was bookmarked opens the app.
self.addEventListener('fetch', (event) => {
  if (event.request.mode !== 'navigate' || !isPage(new URL(event.request.url))) return
  event.stopImmediatePropagation()
  event.respondWith(matchPrecache('index.html').then((page) => page ?? fetch(event.request)))
})

precache(self.__WB_MANIFEST)
addRoute()
cleanupOutdatedCaches()

// The first visit is kept and served from then on too: a screen opened later needs no network.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))

// A new worker waits until asked: taking over in mid-work would pull files from under the page.
self.addEventListener('message', (event) => {
  if ((event.data as SkipWaiting | null)?.type !== 'SKIP_WAITING') return
  event.waitUntil(
    windows().then((open) => {
      const answer: TakeOver = open.length > 1 ? 'other-window' : 'taking-over'
      event.ports[0]?.postMessage(answer)
      return answer === 'taking-over' ? self.skipWaiting() : undefined
    }),
  )
})

self.addEventListener('notificationclick', (event) => {
  const { notification, action } = event
  notification.close()
  const knock: NoticeTap = { at: Date.now(), tag: notification.tag, action }
  const kept = set(`${knock.at}-${knock.tag}`, knock, openDatabase().store('knocks')).then(() => {
    const channel = new BroadcastChannel(NOTICE_TAP_CHANNEL)
    channel.postMessage(knock)
    channel.close()
  })
  const shown = windows().then(([open]) => open?.focus() ?? self.clients.openWindow(self.registration.scope))
  // A failed write must not keep the app from coming forward, nor the other way round.
  event.waitUntil(Promise.allSettled([kept, shown]))
})
