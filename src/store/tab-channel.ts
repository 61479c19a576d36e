import type { TableName } from '../../shared/database.ts'
import type { Channel, TabMessage } from './contract.ts'

const CHANNELS = { own: 'bucketside-journal', demo: 'bucketside-demo-journal' } as const

/** To the other windows that show this table. Where the browser has no channels, as a value that the storage tells them of. */
export async function tabChannel(table: TableName): Promise<Channel> {
  const name = CHANNELS[table]
  if (!('BroadcastChannel' in globalThis)) return (await import('./storage-channel.ts')).throughStorage(name)
  const channel = new BroadcastChannel(name)
  return {
    post: (message) => channel.postMessage(message),
    listen(listener) {
      channel.onmessage = (event: MessageEvent<TabMessage>) => listener(event.data)
    },
    close: () => channel.close(),
  }
}
