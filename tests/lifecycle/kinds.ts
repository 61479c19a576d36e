/** What a phone may be killed in besides a sitting: packing, taking on an older version's records, an update, the second copy. */
import { cp, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'puppeteer-core'
import { deploy } from '../browser/deploy.ts'
import { recordsOfHits } from '../fixtures/hits.ts'
import { firedLoad } from '../fixtures/opened.ts'
import { clocksOnApp, openOn, openScreen, plant, seasonOf, tap } from './app.ts'
import { pause } from './place.ts'
import { clocksOnJournal, type Sitting } from './sitting.ts'
import { storedIds, storedRecords } from './stored.ts'

/** Enough for a pack. */
const PACKED = 260

/** Records that come in packfuls, and are packed at once. */
export const packingOnJournal = (root: string): Sitting => ({
  ...clocksOnJournal(root),
  longestMs: 1500,
  async hit(page) {
    await page.evaluate(async (count) => {
      const { journal } = window.sitting
      const events = Array.from(
        { length: count },
        (_, clock) => ({ kind: 'started', clock, dueAt: 0 }) as const,
      )
      await journal.append(events, { at: Date.now(), tz: 0 }).saved
      void journal.tidy().catch(() => {})
    }, PACKED)
  },
})

const OLDER = 300

/** The same values set aside by a program that knew less: they come back at the next start. */
const setAside = (page: Page, records: readonly { readonly id: string }[]) =>
  page.evaluate(
    (values) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onsuccess = () => {
          const writing = opening.result.transaction('quarantine', 'readwrite')
          for (const value of values)
            writing.objectStore('quarantine').put(value, `content.0.x~${value.id}~0`)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
          writing.onabort = () => reject(writing.error)
        }
      }),
    records,
  )

/** Starts on what an earlier version left: records without marks, and others that it had set aside. */
export function migrationOnApp(root: string): Sitting {
  let number = 0
  return {
    root,
    longestMs: 2500,
    pauseMs: [0, 1500],
    async open(page, address) {
      await openScreen(page, address, 'bench')
    },
    async hit(page, _random, saved) {
      number++
      const older = seasonOf(`older${number}`, OLDER)
      const aside = seasonOf(`aside${number}`, OLDER)
      const address = new URL('/', page.url()).href
      await page.goto(`${address}icon.svg`)
      await plant(page, older)
      await setAside(page, aside)
      saved([...older, ...aside].map(({ id }) => id))
      await page.goto(`${address}#/bench`)
    },
  }
}

/** A host that puts out version after version while the clocks run. `root` is a copy of the built app of its own. */
export async function updatesOnApp(dist: string, root: string): Promise<Sitting> {
  await cp(dist, root, { recursive: true })
  const html = await readFile(join(root, 'index.html'), 'utf8')
  const clocks = clocksOnApp(root)
  let version = 0
  return {
    ...clocks,
    longestMs: 4000,
    async hit(page, random, saved) {
      try {
        if (random() < 0.5) {
          version++
          await deploy(root, { 'index.html': html.replace('<html', `<html data-version="${version}"`) })
          await page.evaluate(() => {
            void navigator.serviceWorker.getRegistration().then((registration) => registration?.update())
          })
        }
        await clocks.hit(page, random, saved)
      } catch (error) {
        // The new version has just opened the page anew.
        if (!/context|navigat|detached/i.test(String(error))) throw error
      }
    },
  }
}

/** The second copy is compared that long after the start, and as long again is left for it. */
const COMPARED_MS = 3500
const COPIED_MS = 15_000

/** Ids in the second copy, once it has all that the database has. */
async function copied(page: Page): Promise<string[]> {
  const stored = await storedIds(page)
  for (const sinceMs = Date.now(); ; await pause(200)) {
    const ids = await page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory()
      const file = await folder.getFileHandle('journal.jsonl').catch(() => null)
      const text = file ? await (await file.getFile()).text() : ''
      return text.split('\n').flatMap((line): string[] => {
        try {
          return [JSON.parse(line).id]
        } catch {
          return []
        }
      })
    })
    const held = new Set(ids)
    if (stored.every((id) => held.has(id)) || Date.now() - sinceMs > COPIED_MS) return ids
  }
}

/** The clocks in the app once their second copy is being written; it is looked at, too. */
export function copyOnApp(root: string): Sitting {
  const clocks = clocksOnApp(root)
  return {
    ...clocks,
    longestMs: 2500,
    async open(page, address) {
      await clocks.open(page, address)
      await pause(COMPARED_MS)
    },
    known: copied,
  }
}

/** How often the bar is hit at the kiln; else whatever key shows. */
const AT_BAR = 0.8

/** A load that was fired and cools, whoever hits what its screens offer: read, opened, taken out, judged. */
export function kilnOnApp(root: string): Sitting {
  let opened = 0
  return {
    root,
    longestMs: 5000,
    pauseMs: [500, 900],
    async open(page, address) {
      const now = Date.now()
      if (opened === 0) await openOn(page, address, recordsOfHits(firedLoad(now, 'shut'), now))
      await openScreen(page, address, opened % 2 === 0 ? 'opening' : 'shelf')
      opened++
      await page.waitForSelector('.kiln [data-press="bar"]')
    },
    async hit(page, random) {
      const place = await page.evaluate(
        ([atBar, share, screen]) => {
          const seen = (selector: string) =>
            [...document.querySelectorAll<HTMLElement>(selector)].filter((element) =>
              element.checkVisibility(),
            )
          const bars = seen('.kiln [data-press="bar"]')
          const targets = atBar && bars.length > 0 ? bars : seen('.kiln button')
          // A hit may have led to another screen.
          if (targets.length === 0) location.replace(screen)
          const target = targets[Math.floor(share * targets.length)]
          target?.scrollIntoView({ block: 'center' })
          const box = target?.getBoundingClientRect()
          return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 }
        },
        [random() < AT_BAR, random(), random() < 0.5 ? '#/opening' : '#/shelf'] as const,
      )
      if (place) await page.touchscreen.tap(place.x, place.y)
    },
  }
}

const KEEP = '::-p-xpath(//*[@data-press="bar"][contains(., "KEEP")])'
/** Anything closer is taken for drops of water. */
const APART_MS = 450
/** Larger than any part that a disk takes at once. */
const PHOTO_PX = 800

/** Hands the camera's field a picture that no compression makes small. */
const choosePhoto = (page: Page) =>
  page.evaluate(async (side) => {
    const canvas = document.createElement('canvas')
    canvas.width = side
    canvas.height = side
    const context = canvas.getContext('2d')
    const noise = context?.createImageData(side, side)
    if (!context || !noise) throw new Error('no canvas')
    for (let i = 0; i < noise.data.length; i++) noise.data[i] = i % 4 === 3 ? 255 : Math.random() * 256
    context.putImageData(noise, 0, 0)
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.9))
    const input = document.querySelector<HTMLInputElement>('input[capture]')
    if (!blob || !input) throw new Error('no field for a photo')
    const chosen = new DataTransfer()
    chosen.items.add(new File([blob], 'pot.jpg', { type: 'image/jpeg' }))
    input.files = chosen.files
    input.dispatchEvent(new Event('change', { bubbles: true }))
  }, PHOTO_PX)

/** The pictures that are stored whole, by their ids. */
const wholePhotos = (page: Page) =>
  page.evaluate(async () => {
    // Opened before the app has made it, it would be one without a store, for ever: no photo could be kept.
    if (!(await indexedDB.databases()).some(({ name }) => name === 'bucketside-photos')) return []
    const db = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('bucketside-photos')
      opening.onerror = () => reject(opening.error)
      opening.onsuccess = () => resolve(opening.result)
    })
    if (!db.objectStoreNames.contains('photos')) return []
    const store = db.transaction('photos').objectStore('photos')
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const [ids, values] = await Promise.all([asked(store.getAllKeys()), asked(store.getAll())])
    db.close()
    const shown = await Promise.all(
      values.map(({ type, data }) =>
        createImageBitmap(new Blob([data], { type })).then(
          () => true,
          () => false,
        ),
      ),
    )
    return ids.filter((_id, i) => shown[i]).map(String)
  })

/** Photos of a pot, kept one after another. A record that names a picture which is not whole in its store is as lost. */
export function photosOnApp(root: string): Sitting {
  let opened = 0
  return {
    root,
    longestMs: 6000,
    pauseMs: [100, 400],
    async open(page, address) {
      const now = Date.now()
      if (opened === 0) await openOn(page, address, recordsOfHits(firedLoad(now, 'up'), now))
      opened++
      await openScreen(page, address, 'opening')
      await page.waitForSelector('.open-key')
    },
    async hit(page) {
      if (!(await page.$('.open-photo'))) await tap(page, '::-p-xpath(//button[contains(., "PHOTO")])')
      await page.waitForSelector('.open-photo')
      await choosePhoto(page)
      // A hit too soon after the bar changed does nothing.
      await page.waitForSelector(KEEP)
      for (let bar = await page.$(KEEP); bar; bar = await page.$(KEEP)) {
        await pause(APART_MS)
        await bar.tap().catch(() => {})
      }
    },
    async known(page) {
      const whole = new Set(await wholePhotos(page))
      const records = (await storedRecords(page)) as readonly { id: string; event?: { photoId?: string } }[]
      return records
        .filter(({ event }) => event?.photoId === undefined || whole.has(event.photoId))
        .map(({ id }) => id)
    },
  }
}
