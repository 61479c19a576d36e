/** Storage of which a part is gone, or that takes no more: mended, told, and nothing that was not drawn here is kept. */
import { expect, type Page, test } from '@playwright/test'
import { isBare } from '../../src/device/picture.ts'
import { writeBackup } from '../../src/store/backup.ts'
import { photoLine, photosStart } from '../../src/store/photo-lines.ts'
import { opened, storedIds } from './bench.ts'
import { copyText, count, deleteDatabase, sitting, trouble } from './kept-evening.ts'

// Workers, files and loads of whole versions, on any machine.
test.describe.configure({ timeout: 90_000 })

const PHOTOS = 'bucketside-photos'

/** A database of that name with nothing in it, no store either. */
async function hollow(page: Page, name: string): Promise<void> {
  await deleteDatabase(page, name)
  await page.evaluate(
    (base) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open(base, 1)
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          opening.result.close()
          resolve()
        }
      }),
    name,
  )
}

test('a database that was left without its stores has them again, and its records from the second copy', async ({
  page,
  context,
}) => {
  const before = await sitting(page)
  await page.goto('./icon.svg')
  await hollow(page, 'bucketside')
  await page.goto('./#/bench')
  await expect(page.locator('.bench')).toBeVisible()
  await expect(trouble(page)).toContainText(`${before} records taken from the second copy`)
  await expect.poll(() => count(page)).toBe(before)
  // It is no newer program's: windows go on writing, this one and the next.
  const other = await context.newPage()
  await other.goto('./#/bench')
  await opened(other)
  await page.bringToFront()
  await page.getByRole('button', { name: 'Understood' }).tap()
  await page.waitForTimeout(500)
  await page.locator('[data-press="bar"]').first().tap()
  await expect.poll(() => count(page)).toBeGreaterThan(before)
  for (const one of [page, other]) await expect(trouble(one)).toBeHidden()
})

const PLACE = 'Exif\0\0 GPSLatitude 52.1 GPSLongitude 8.9'
const ids = ['f.bare', 'f.placed', 'f.drawn', 'f.broken'] as const

/** A small picture of this type, as a canvas writes it. */
async function drawn(page: Page, type: string): Promise<Buffer> {
  const data = await page.evaluate((of) => {
    const canvas = document.createElement('canvas')
    const context = canvas.getContext('2d')
    if (!context) throw new Error('no canvas')
    context.fillStyle = '#876'
    context.fillRect(60, 40, 120, 60)
    return canvas.toDataURL(of, 0.82).split(',')[1] ?? ''
  }, type)
  return Buffer.from(data, 'base64')
}

/** What is stored of a picture, and its sides where it can be drawn. */
const stored = (page: Page, id: string) =>
  page.evaluate(
    async ([base, of]) => {
      const asked = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result)
          request.onerror = () => reject(request.error)
        })
      const db = await asked(indexedDB.open(base))
      const kept: { type: string; data: ArrayBuffer } = await asked(
        db.transaction('photos').objectStore('photos').get(of),
      )
      db.close()
      const { width, height } = await createImageBitmap(new Blob([kept.data]))
      return { type: kept.type, bytes: [...new Uint8Array(kept.data)], width, height }
    },
    [PHOTOS, id] as const,
  )

test('pictures of a file are kept without their place, in a storage that had lost its store', async ({
  page,
}) => {
  await page.goto('./')
  await opened(page)
  await hollow(page, PHOTOS)
  const bare = await drawn(page, 'image/jpeg')
  const segment = Buffer.concat([
    Buffer.from([0xff, 0xe1, 0, PLACE.length + 2]),
    Buffer.from(PLACE, 'latin1'),
  ])
  const placed = Buffer.concat([bare.subarray(0, 2), segment, bare.subarray(2)])
  const blob = (bytes: Buffer, type: string) => new Blob([new Uint8Array(bytes)], { type })
  const text = [
    writeBackup([], { at: Date.now(), tz: 0 }),
    photosStart,
    await photoLine(ids[0], blob(bare, 'image/jpeg')),
    await photoLine(ids[1], blob(placed, 'image/jpeg')),
    await photoLine(ids[2], blob(await drawn(page, 'image/png'), 'image/png')),
    await photoLine(ids[3], blob(Buffer.from('no picture'), 'image/webp')),
  ].join('')
  await page.goto('./#/room/keep')
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'bucketside.txt', mimeType: 'text/plain', buffer: Buffer.from(text) })
  await page.getByRole('button', { name: 'Join with this table' }).tap()
  const said = page.getByRole('alert').filter({ hasText: '3 pictures new.' })
  await expect(said).toContainText('1 picture could not be read or kept.')
  expect((await storedIds(page, 'photos', PHOTOS)).sort()).toEqual([...ids.slice(0, 3)].sort())
  // What a canvas wrote goes on byte by byte, however often it is passed on.
  expect(Buffer.from((await stored(page, ids[0])).bytes).equals(bare)).toBe(true)
  for (const id of ids.slice(1, 3)) {
    const { type, bytes, width, height } = await stored(page, id)
    expect({ type, width, height }).toEqual({ type: 'image/jpeg', width: 300, height: 150 })
    expect(isBare(Uint8Array.from(bytes))).toBe(true)
    expect(Buffer.from(bytes).toString('latin1')).not.toContain('GPS')
  }
})

test('a second copy that takes no more is not called one, and has it all once it takes it again', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const { postMessage } = Worker.prototype
    Worker.prototype.postMessage = function (this: Worker, ...given: unknown[]) {
      const [question, [port] = []] = given as [{ do?: string }, MessagePort[]?]
      if (question.do === 'add' && sessionStorage.getItem('full') === 'yes')
        port?.postMessage({ error: 'QuotaExceededError' })
      else Reflect.apply(postMessage, this, given)
    } as typeof postMessage
  })
  const before = await sitting(page)
  const hit = async () => {
    await page.goto('./#/bench')
    await page.waitForTimeout(500)
    await page.locator('[data-press="bar"]').first().tap()
  }
  await page.evaluate(() => sessionStorage.setItem('full', 'yes'))
  await hit()
  await expect.poll(() => count(page)).toBeGreaterThan(before)
  await page.goto('./#/room/keep')
  await expect(page.getByText('No second copy is kept on this phone.')).toBeVisible()
  await page.evaluate(() => sessionStorage.removeItem('full'))
  const held = await count(page)
  await hit()
  await expect.poll(() => count(page)).toBeGreaterThan(held)
  const copied = async () => {
    const text = await copyText(page)
    return (await storedIds(page)).every((id) => text.includes(`"id":"${id}"`))
  }
  await expect.poll(copied, { timeout: 20_000 }).toBe(true)
  await page.goto('./#/room/keep')
  await expect(page.getByText('A second copy on this phone stands in')).toBeVisible()
})
