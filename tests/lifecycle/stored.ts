import type { Page } from 'puppeteer-core'

/** Ids of all records in the database, packed ones too, read past the app. */
export async function storedIds(page: Page): Promise<string[]> {
  const entries = await page.evaluate(
    () =>
      new Promise<[string, unknown][]>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const store = opening.result.transaction('journal').objectStore('journal')
          const [keys, values] = [store.getAllKeys(), store.getAll()]
          values.onsuccess = () => {
            opening.result.close()
            resolve((keys.result as string[]).map((key, index) => [key, values.result[index]]))
          }
        }
      }),
  )
  return entries.flatMap(([key, value]) => {
    if (!key.startsWith('pack~')) return [key]
    return (value as { text: string }).text.split('\n').map((line) => (JSON.parse(line) as { id: string }).id)
  })
}

/**
 * Tells `acknowledged` the ids of each hit as the app learns that it is saved: the journal tells other tabs at
 * the same moment, and so this listener.
 */
export async function listenForSaved(page: Page, acknowledged: (ids: readonly string[]) => void) {
  await page.exposeFunction('acknowledged', acknowledged)
  await page.evaluateOnNewDocument(() => {
    const channel = new BroadcastChannel('bucketside-journal')
    channel.onmessage = (event: MessageEvent<{ kind: string; records?: { id: string }[] }>) => {
      if (event.data.kind !== 'records') return
      const tell = (window as unknown as { acknowledged(ids: string[]): void }).acknowledged
      tell((event.data.records ?? []).map((record) => record.id))
    }
    // Kept from being collected.
    Object.assign(window, { acknowledgements: channel })
  })
}
