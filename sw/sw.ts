import { set } from 'idb-keyval'
import { openDatabase } from '../shared/database.ts'
import {
  type AskOfWorker,
  type Kept,
  NOTICE_TAP_CHANNEL,
  type NoticeTap,
  type TakeOver,
} from '../shared/messages.ts'
import { type FileEntry, isWhole, keepAll, keepOnly, keptFile, versionOf } from './files.ts'
import {
  asked,
  hasFallenBack,
  keepStarts,
  readStarts,
  type Starts,
  shownVersion,
  started,
  takenOver,
} from './starts.ts'

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: readonly FileEntry[] }

const FILES = self.__WB_MANIFEST
const VERSION = versionOf(FILES)
const PAGE = 'index.html'

const windows = () => self.clients.matchAll({ type: 'window', includeUncontrolled: true })

/** Changes of {@link Starts}, one after another. */
let starts: Promise<Starts> = readStarts().then((kept) => takenOver(kept, VERSION))
function change(next: (starts: Starts) => Starts): { now: Promise<Starts>; kept: Promise<void> } {
  starts = starts.then(next)
  return { now: starts, kept: starts.then(keepStarts).catch(() => {}) }
}

// A version is taken only when each of its files is here and is what the manifest says.
self.addEventListener('install', (event) => event.waitUntil(keepAll(VERSION, FILES)))

// The first visit is kept and served from then on too: a screen opened later needs no network. The files of the version
// before stay until the next one, for pages that are still open, and those of the one that worked for a way back.
self.addEventListener('activate', (event) =>
  event.waitUntil(
    readStarts().then(async (kept) => {
      const { now, kept: done } = change(() => takenOver(kept, VERSION))
      const { before, worked } = await now
      await Promise.all([done, keepOnly([VERSION, before, worked]), self.clients.claim()])
    }),
  ),
)

/** A page of the app, in contrast to a file: nothing with an extension, except a page itself. */
const isPage = (url: URL) => !/\.(?!html$)\w+$/.test(url.pathname)

self.addEventListener('fetch', (event) => {
  const { request } = event
  const url = new URL(request.url)
  const scope = new URL(self.registration.scope)
  if (request.method !== 'GET' || url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname))
    return
  if (request.mode !== 'navigate' || !isPage(url)) {
    event.respondWith(
      starts
        .then((now) => keptFile(request, shownVersion(now) ?? VERSION))
        .then((file) => file ?? fetch(request)),
    )
    return
  }
  // Whatever path below the scope was bookmarked opens the app, whose files are named from its own page.
  if (url.pathname !== scope.pathname && url.pathname !== `${scope.pathname}${PAGE}`)
    return event.respondWith(Response.redirect(scope.href))
  const { now, kept } = change((before) => asked(before, Date.now()))
  event.waitUntil(kept)
  event.respondWith(
    now.then((at) => keptFile(PAGE, shownVersion(at) ?? VERSION)).then((page) => page ?? fetch(request)),
  )
})

self.addEventListener('message', (event) => {
  const answer = (value: TakeOver | Kept) => event.ports[0]?.postMessage(value)
  switch ((event.data as AskOfWorker | null)?.type) {
    // A new worker waits until asked: taking over in mid-work would pull files from under the page.
    case 'SKIP_WAITING':
      event.waitUntil(
        windows().then((open) => {
          const other = open.length > 1
          answer(other ? 'other-window' : 'taking-over')
          return other ? undefined : self.skipWaiting()
        }),
      )
      break
    case 'STARTED':
      event.waitUntil(change(started).kept)
      break
    case 'CHECK':
      event.waitUntil(
        keepAll(VERSION, FILES)
          .catch(() => {})
          .then(async () =>
            answer({ all: await isWhole(VERSION, FILES), fellBack: hasFallenBack(await starts) }),
          ),
      )
  }
})

self.addEventListener('notificationclick', (event) => {
  const { notification, action } = event
  notification.close()
  const knock: NoticeTap = { at: Date.now(), tag: notification.tag, action }
  const kept = set(`${knock.at}-${knock.tag}`, knock, openDatabase().store('knocks')).then(() => {
    if (!('BroadcastChannel' in self)) return
    const channel = new BroadcastChannel(NOTICE_TAP_CHANNEL)
    channel.postMessage(knock)
    channel.close()
  })
  const shown = windows().then(([open]) => open?.focus() ?? self.clients.openWindow(self.registration.scope))
  // A failed write must not keep the app from coming forward, nor the other way round.
  event.waitUntil(Promise.allSettled([kept, shown]))
})
