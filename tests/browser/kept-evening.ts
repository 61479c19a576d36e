import { expect, type Page } from '@playwright/test'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { opened, plant, storedIds } from './bench.ts'

/** How many records are stored. */
export const count = async (page: Page) => (await storedIds(page)).length

export const deleteDatabase = (page: Page, name = 'bucketside') =>
  page.evaluate(
    (gone) =>
      new Promise<void>((resolve, reject) => {
        const deleting = indexedDB.deleteDatabase(gone)
        deleting.onsuccess = () => resolve()
        deleting.onerror = () => reject(deleting.error)
      }),
    name,
  )

/** The second copy as it stands, '' without one. */
export const copyText = (page: Page) =>
  page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory()
    const file = await folder.getFileHandle('journal.jsonl').catch(() => null)
    return file ? await (await file.getFile()).text() : ''
  })

/** An evening on the own table with a hit, and the second copy of it. Resolves to the records stored. */
export async function sitting(page: Page): Promise<number> {
  await page.goto('./')
  await opened(page)
  await plant(page, [demoEvents()], new Date())
  await page.goto('./#/bench')
  await page.reload()
  await expect(page.locator('.bench')).toBeVisible()
  await page.waitForTimeout(500)
  await page.locator('[data-press="bar"]').first().tap()
  await expect.poll(() => count(page)).toBeGreaterThanOrEqual(29)
  await expect.poll(async () => (await copyText(page)).length, { timeout: 20_000 }).toBeGreaterThan(5000)
  await expect.poll(() => page.evaluate(() => localStorage.getItem('bucketside.witness'))).not.toBeNull()
  return count(page)
}

/** What the screen says is wrong with what is kept. */
export const trouble = (page: Page) => page.locator('.trouble')
