import { delMany, entries } from 'idb-keyval'
import type { Database } from '../../shared/database.ts'
import { NOTICE_TAP_CHANNEL, type NoticeTap } from '../../shared/messages.ts'

/** Takes what the service worker left: taps on notifications, oldest first. Each is given out once. */
export async function takeNoticeTaps(database: Database): Promise<NoticeTap[]> {
  const store = database.store('knocks')
  const found = await entries<string, NoticeTap>(store)
  if (found.length > 0) {
    await delMany(
      found.map(([key]) => key),
      store,
    )
  }
  return found.map(([, knock]) => knock).sort((a, b) => a.at - b.at)
}

/** Calls `listener` when the service worker left a knock, so that a page in front can take it at once. */
export function onNoticeTap(listener: () => void): () => void {
  if (!('BroadcastChannel' in globalThis)) {
    // The tap brings the page to the front.
    document.addEventListener('visibilitychange', listener)
    return () => document.removeEventListener('visibilitychange', listener)
  }
  const channel = new BroadcastChannel(NOTICE_TAP_CHANNEL)
  channel.onmessage = listener
  return () => channel.close()
}
