import type { Page } from 'puppeteer-core'

interface Stored {
  readonly id: string
}

/** All records in the database, packed ones too, read past the app. */
export async function storedRecords(page: Page): Promise<Stored[]> {
  const values = await page.evaluate(
    () =>
      new Promise<unknown[]>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const reading = opening.result.transaction('journal').objectStore('journal').getAll()
          reading.onsuccess = () => {
            opening.result.close()
            resolve(reading.result)
          }
        }
      }),
  )
  return (values as (Stored | { text: string })[]).flatMap((value) =>
    'text' in value ? value.text.split('\n').map((line): Stored => JSON.parse(line)) : [value],
  )
}

/** Their ids. */
export const storedIds = async (page: Page): Promise<string[]> =>
  (await storedRecords(page)).map(({ id }) => id)

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
