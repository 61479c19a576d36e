import { delMany, entries } from 'idb-keyval'
import type { Database } from '../../shared/database.ts'
import { KNOCK_CHANNEL, type Knock } from '../../shared/messages.ts'

/** Takes what the service worker left: taps on notifications, oldest first. Each is given out once. */
export async function takeKnocks(database: Database): Promise<Knock[]> {
  const store = database.store('knocks')
  const found = await entries<string, Knock>(store)
  if (found.length > 0) {
    await delMany(
      found.map(([key]) => key),
      store,
    )
  }
  return found.map(([, knock]) => knock).sort((a, b) => a.at - b.at)
}

/** Calls `listener` when the service worker left a knock, so that a page in front can take it at once. */
export function onKnock(listener: () => void): () => void {
  const channel = new BroadcastChannel(KNOCK_CHANNEL)
  channel.onmessage = listener
  return () => channel.close()
}
