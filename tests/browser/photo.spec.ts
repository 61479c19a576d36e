import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import { parse } from 'csv-parse/sync'
import { firedOf } from '../../src/table/fired/fired-pot.ts'
import { firedLoad } from '../fixtures/opened.ts'
import { BenchPage, EVENING, fetched, storedIds } from './bench.ts'
import { LONG } from './places.ts'
import { unzipped } from './unzipped.ts'

/** Words that a camera writes beside a picture, its place among them. */
const TAGS = 'Exif\0\0 GPSLatitude 52.1 GPSLongitude 8.9'
const BASE = 'bucketside-photos'

/** A photo as a camera gives it: large, and with what it writes beside it. */
async function fromCamera(page: Page, width: number, height: number): Promise<Buffer> {
  const bare = await page.evaluate(
    ([w, h]) =>
      new Promise<string>((resolve) => {
        const canvas = document.createElement('canvas')
        canvas.width = w
        canvas.height = h
        const context = canvas.getContext('2d')
        if (!context) throw new Error('no canvas')
        context.fillStyle = '#876'
        context.fillRect(w * 0.3, h * 0.2, w * 0.4, h * 0.6)
        resolve(canvas.toDataURL('image/jpeg').split(',')[1] ?? '')
      }),
    [width, height] as const,
  )
  const jpeg = Buffer.from(bare, 'base64')
  const length = TAGS.length + 2
  const segment = Buffer.concat([
    Buffer.from([0xff, 0xe1, length >> 8, length & 255]),
    Buffer.from(TAGS, 'latin1'),
  ])
  return Buffer.concat([jpeg.subarray(0, 2), segment, jpeg.subarray(2)])
}

/** The stored picture: its bytes as latin text, and its sides. */
const stored = (page: Page, photoId: string) =>
  page.evaluate(
    async ([base, id]) => {
      const db = await new Promise<IDBDatabase>((resolve) => {
        const opening = indexedDB.open(base)
        opening.onsuccess = () => resolve(opening.result)
      })
      const kept = await new Promise<{ data: ArrayBuffer }>((resolve) => {
        const reading = db.transaction('photos').objectStore('photos').get(id)
        reading.onsuccess = () => resolve(reading.result)
      })
      db.close()
      const bitmap = await createImageBitmap(new Blob([kept.data], { type: 'image/jpeg' }))
      const text = Array.from(new Uint8Array(kept.data), (byte) => String.fromCharCode(byte)).join('')
      return { width: bitmap.width, height: bitmap.height, text }
    },
    [BASE, photoId] as const,
  )

async function toPhoto(page: Page): Promise<BenchPage> {
  const bench = await BenchPage.on(page, firedLoad(EVENING.getTime(), 'up'))
  await page.goto('./#/opening')
  await openPage(page)
  return bench
}
async function openPage(page: Page): Promise<void> {
  await page.locator('.open-key', { hasText: 'PHOTO' }).tap()
  await fetched(page.locator('.open-photo'))
  await page.clock.runFor(300)
}
async function choose(page: Page, buffer: Buffer): Promise<void> {
  await page.locator('input[capture]').setInputFiles({ name: 'pot.jpg', mimeType: 'image/jpeg', buffer })
  await expect(page.locator('.open [data-press="bar"]')).toHaveText('KEEP')
}
async function hit(page: Page): Promise<void> {
  await page.clock.runFor(450)
  await page.waitForTimeout(420)
  await page.locator('.open [data-press="bar"]').tap()
}
const photosOf = async (bench: BenchPage, number: number) => firedOf(await bench.pot(number)).photos

test('a photo is kept small and without its place, beside the ghost of the last one, and goes with a backup', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const bench = await toPhoto(page)
  const camera = await fromCamera(page, 2400, 1800)
  expect(camera.includes('GPSLatitude')).toBe(true)
  await choose(page, camera)
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  const [photo] = await photosOf(bench, 35)
  const picture = await stored(page, photo?.photoId ?? '')
  expect(picture).toMatchObject({ width: 1280, height: 960 })
  expect(picture.text).not.toContain('Exif')
  expect(picture.text).not.toContain('GPS')
  expect(photo?.bytes).toBe(picture.text.length)
  // The next one of the same side has it for a ghost.
  await openPage(page)
  await choose(page, await fromCamera(page, 600, 800))
  await expect(page.locator('.open-photo img')).toHaveCount(2)
  await expect(page.locator('.open-photo img.is-ghost')).toBeVisible()
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('2')
  // A backup carries both, to a phone that has neither.
  await page.goto('./#/room/keep')
  await expect(page.locator('.desk')).toContainText(/2 pictures go along, \d+ kB\./)
  await page.evaluate(() => Object.defineProperty(navigator, 'canShare', { value: () => false }))
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Back up' }).tap()
  const file = await (await saving).path()
  // So do the sheets, each under its pot's number.
  const passing = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Spreadsheet and pictures' }).tap()
  const files = await unzipped(await (await passing).path())
  const listed: { pot: string; file: string }[] = parse(files.get('photos.csv') ?? '', {
    bom: true,
    columns: true,
  })
  expect(listed.map(({ pot, file }) => `${pot}: ${file}`)).toEqual([
    '35: 35-2026-03-03-1.jpg',
    '35: 35-2026-03-03-2.jpg',
  ])
  expect(files.get('photos/35-2026-03-03-1.jpg')?.toString('latin1') === picture.text).toBe(true)
  await page.evaluate(() => indexedDB.deleteDatabase('bucketside-photos'))
  await page.locator('input[type=file]').setInputFiles(file)
  // It reads and joins in slices, which wait for the clock.
  const join = page.getByRole('button', { name: 'Join with this table' })
  await fetched(join)
  await join.tap()
  await fetched(page.getByText('2 pictures new.'))
  expect(await storedIds(page, 'photos', BASE)).toHaveLength(2)
})

test('a picture that is lost loses no record, and one without a record harms nothing', async ({ page }) => {
  const bench = await toPhoto(page)
  await choose(page, await fromCamera(page, 400, 300))
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  const before = await photosOf(bench, 35)
  await page.evaluate(
    (base) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open(base)
        opening.onsuccess = () => {
          const writing = opening.result.transaction('photos', 'readwrite')
          writing.objectStore('photos').clear()
          writing.objectStore('photos').put({ type: 'image/jpeg', data: new ArrayBuffer(8) }, 'f.nobody')
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    BASE,
  )
  await page.reload()
  await openPage(page)
  await expect(page.locator('.open-photo')).toContainText('no longer on the phone')
  expect(await photosOf(bench, 35)).toEqual(before)
})

test(
  'killed at any moment while it is kept, no record names a picture that was not stored',
  LONG,
  async ({ page }) => {
    test.setTimeout(180_000)
    const bench = await toPhoto(page)
    for (const ms of [0, 4, 12, 30, 80]) {
      await choose(page, await fromCamera(page, 900, 700))
      await hit(page)
      await page.waitForTimeout(ms)
      await page.goto('about:blank')
      await page.goto('./#/opening')
      await expect(page.locator('.open-key').first()).toBeVisible()
      const named = (await photosOf(bench, 35)).map(({ photoId }) => photoId)
      const there = await storedIds(page, 'photos', BASE)
      expect(there).toEqual(expect.arrayContaining(named))
      await page.clock.runFor(500)
      await openPage(page)
    }
  },
)

const take = (page: Page, photoId: string) =>
  page.evaluate(
    ([base, id]) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open(base)
        opening.onsuccess = () => {
          const writing = opening.result.transaction('photos', 'readwrite')
          writing.objectStore('photos').delete(id)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    [BASE, photoId] as const,
  )

test('a backup without a picture says so when it is made, and a torn one when it is looked into', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const bench = await toPhoto(page)
  for (const n of [1, 2]) {
    await choose(page, await fromCamera(page, 400, 300))
    await hit(page)
    await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText(`${n}`)
    if (n === 1) await openPage(page)
  }
  await take(page, (await photosOf(bench, 35))[0]?.photoId ?? '')
  await page.goto('./#/room/keep')
  await page.evaluate(() => Object.defineProperty(navigator, 'canShare', { value: () => false }))
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Back up' }).tap()
  await fetched(page.getByRole('alert').filter({ hasText: '1 picture is not in it' }))
  const text = await readFile(await (await saving).path(), 'utf8')
  const torn = Buffer.from(text.slice(0, text.indexOf('{"photos":')))
  const file = { name: 'bucketside.txt', mimeType: 'text/plain', buffer: torn }
  await page.locator('input[type=file]').setInputFiles(file)
  await fetched(page.getByText('1 picture could not be read or kept.'))
})

test('where the storage of pictures is silent a photo is not told as kept, and a backup goes out without', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const bench = await toPhoto(page)
  await choose(page, await fromCamera(page, 400, 300))
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  await page.addInitScript((base) => {
    const { open } = indexedDB
    indexedDB.open = (name, version) =>
      // An object that nothing ever happens to.
      name === base ? (new EventTarget() as IDBOpenDBRequest) : open.call(indexedDB, name, version)
  }, BASE)
  await page.reload()
  await openPage(page)
  await page.clock.runFor(3000)
  await expect(page.locator('.open-photo')).toContainText('cannot be read now')
  await choose(page, await fromCamera(page, 400, 300))
  await hit(page)
  await expect(page.locator('.open [data-press="bar"]')).toHaveText('ONE MOMENT')
  await fetched(page.getByText('The photo could not be stored.'))
  expect(await photosOf(bench, 35)).toHaveLength(1)
  await page.goto('./#/room/keep')
  await page.evaluate(() => Object.defineProperty(navigator, 'canShare', { value: () => false }))
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Back up' }).tap()
  await fetched(page.getByRole('alert').filter({ hasText: '1 picture is not in it' }))
  expect(await (await saving).path()).toBeTruthy()
})

/** Whatever is asked of a connection that was open by then fails from now on, as WebKit leaves it; a new one works. */
const loseConnections = (page: Page) =>
  page.evaluate(() => {
    const { transaction } = IDBDatabase.prototype
    const { open } = indexedDB
    const fresh = new WeakSet<IDBDatabase>()
    indexedDB.open = (name, version) => {
      const opening = open.call(indexedDB, name, version)
      opening.addEventListener('success', () => fresh.add(opening.result))
      return opening
    }
    IDBDatabase.prototype.transaction = function (...of) {
      if (!fresh.has(this))
        throw new DOMException('Connection to Indexed Database server lost', 'InvalidStateError')
      return transaction.apply(this, of)
    }
  })

test('on a connection that was lost a photo is kept all the same, and the one before still shows', async ({
  page,
}) => {
  const bench = await toPhoto(page)
  await choose(page, await fromCamera(page, 400, 300))
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  await loseConnections(page)
  await openPage(page)
  await expect(page.locator('.open-photo img')).toHaveCount(1)
  await choose(page, await fromCamera(page, 400, 300))
  await loseConnections(page)
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('2')
  // The journal's own connection was lost as well, and is opened anew in a while.
  await page.clock.runFor(3000)
  await expect.poll(async () => (await photosOf(bench, 35)).length).toBe(2)
  const kept = (await photosOf(bench, 35)).map(({ photoId }) => photoId)
  expect((await storedIds(page, 'photos', BASE)).sort()).toEqual(kept.sort())
})

test('deleted under the open page, the pictures to come are kept, and a backup says which are gone', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const bench = await toPhoto(page)
  await choose(page, await fromCamera(page, 400, 300))
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  await openPage(page)
  await choose(page, await fromCamera(page, 400, 300))
  await page.evaluate((base) => indexedDB.deleteDatabase(base), BASE)
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('2')
  const [gone, kept] = (await photosOf(bench, 35)).map(({ photoId }) => photoId)
  expect(await storedIds(page, 'photos', BASE)).toEqual([kept])
  // And one that lies there without its bytes.
  await page.evaluate(
    ([base, id]) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open(base ?? '')
        opening.onsuccess = () => {
          const writing = opening.result.transaction('photos', 'readwrite')
          writing.objectStore('photos').put({ type: 'image/jpeg' }, id)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    [BASE, gone] as const,
  )
  await page.goto('./#/room/keep')
  await page.evaluate(() => Object.defineProperty(navigator, 'canShare', { value: () => false }))
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Back up' }).tap()
  await fetched(page.getByRole('alert').filter({ hasText: '1 picture is not in it' }))
  const text = await readFile(await (await saving).path(), 'utf8')
  expect(text.split('"photo":')).toHaveLength(2)
})

test('a storage of pictures that was silent once is asked anew', async ({ page }) => {
  test.setTimeout(120_000)
  await page.addInitScript((base) => {
    const { open } = indexedDB
    let silent = true
    indexedDB.open = (name, version) => {
      if (name !== base || !silent) return open.call(indexedDB, name, version)
      silent = false
      return new EventTarget() as IDBOpenDBRequest
    }
  }, BASE)
  const bench = await toPhoto(page)
  await choose(page, await fromCamera(page, 400, 300))
  await hit(page)
  await fetched(page.getByText('The photo could not be stored.'))
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  expect(await photosOf(bench, 35)).toHaveLength(1)
})

/** What keeping a photo says while its storage breaks; nothing is half kept by it. */
const notKept = 'The photo could not be stored. Everything else is kept.'

test('a disk that is full at a photo, and a write that is broken off: said at once, kept on the next hit', async ({
  page,
}) => {
  const bench = await toPhoto(page)
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype
    const breaks = ['full', 'torn', 'refused']
    IDBObjectStore.prototype.put = function (...given: Parameters<typeof put>) {
      if (this.name !== 'photos') return put.apply(this, given)
      const how = breaks.shift()
      if (how === 'refused') throw new DOMException('no', 'InvalidStateError')
      const written = put.apply(this, given)
      // A full disk ends the transaction after its requests have succeeded; a connection that is lost does the same.
      if (how === 'full' || how === 'torn')
        written.addEventListener('success', () => this.transaction.abort())
      return written
    }
  })
  await choose(page, await fromCamera(page, 900, 700))
  for (let broken = 0; broken < 3; broken++) {
    await hit(page)
    await fetched(page.getByText(notKept))
    expect(await photosOf(bench, 35)).toEqual([])
    expect(await storedIds(page, 'photos', BASE)).toEqual([])
    // The picture is still there to be kept.
    await expect(page.locator('.open [data-press="bar"]')).toHaveText('KEEP')
  }
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  const named = (await photosOf(bench, 35)).map(({ photoId }) => photoId)
  expect(named).toHaveLength(1)
  expect(await storedIds(page, 'photos', BASE)).toEqual(named)
})

test('a stored photo that is cut in half, or is none, is said to be unreadable and costs nothing else', async ({
  page,
}) => {
  const errors: Error[] = []
  page.on('pageerror', (error) => errors.push(error))
  const bench = await toPhoto(page)
  await choose(page, await fromCamera(page, 900, 700))
  await hit(page)
  await expect(page.locator('.open-key', { hasText: 'PHOTO' })).toContainText('1')
  const before = await photosOf(bench, 35)
  const photoId = before[0]?.photoId ?? ''
  for (const how of ['half', 'empty', 'text', 'none'] as const) {
    await page.evaluate(
      ([base, id, way]) =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open(base)
          opening.onsuccess = () => {
            const writing = opening.result.transaction('photos', 'readwrite')
            const store = writing.objectStore('photos')
            const reading = store.get(id)
            reading.onsuccess = () => {
              const { type, data } = reading.result as { type: string; data: ArrayBuffer }
              const cut =
                data instanceof ArrayBuffer ? data.slice(0, data.byteLength >> 1) : new ArrayBuffer(9)
              const torn = {
                half: { type, data: cut },
                empty: { type, data: new ArrayBuffer(0) },
                text: { type, data: 'no bytes' },
                none: null,
              }
              store.put(torn[way], id)
            }
            writing.oncomplete = () => {
              opening.result.close()
              resolve()
            }
          }
        }),
      [BASE, photoId, how] as const,
    )
    await page.reload()
    await openPage(page)
    const said = page.locator('.open-photo')
    // Half a picture is drawn as far as it goes.
    if (how !== 'half') await expect(said, how).toContainText(/no longer on the phone|cannot be read/)
    expect(await photosOf(bench, 35), how).toEqual(before)
    await page.goto('./#/room/keep')
    await page.evaluate(() => Object.defineProperty(navigator, 'canShare', { value: () => false }))
    const saving = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Back up' }).tap()
    const text = await readFile(await (await saving).path(), 'utf8')
    expect(text, how).toContain(photoId)
    await page.goto('./#/opening')
  }
  expect(errors).toEqual([])
})
