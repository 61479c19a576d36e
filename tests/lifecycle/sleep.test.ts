import type { Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildPage } from './built.ts'
import { type Phone, switchOn } from './phone.ts'
import { openPlace, type Place, pause } from './place.ts'
import { clocksOnJournal } from './sitting.ts'
import { freeze, suspend } from './sleep.ts'

let place: Place
let sitting: ReturnType<typeof clocksOnJournal>
let phone: Phone

beforeAll(async () => {
  sitting = clocksOnJournal(buildPage())
  place = await openPlace(sitting.root)
  phone = await switchOn(place.folder)
})

afterAll(async () => {
  await phone?.close()
  await place?.close()
})

const hitAndSave = (page: Page, note: string) =>
  page.evaluate((text) => window.sitting.hit(1, text).saved, note)
/** Longest time between two beats of a timer, ms, from now on. */
const watchTicks = (page: Page) =>
  page.evaluate(() => {
    let last = performance.now()
    document.body.dataset.longest = '0'
    setInterval(() => {
      const now = performance.now()
      document.body.dataset.longest = String(Math.max(Number(document.body.dataset.longest), now - last))
      last = now
    }, 100)
  })
const longestPause = (page: Page) => page.evaluate(() => Number(document.body.dataset.longest))

test('a frozen page runs nothing, loses nothing, and sees after waking what another tab wrote', async () => {
  const page = await phone.browser.newPage()
  await sitting.open(page, place.address)
  await page.bringToFront()
  await hitAndSave(page, 'before')
  await watchTicks(page)
  const wake = await freeze(page)
  const other = await phone.browser.newPage()
  await sitting.open(other, place.address)
  await hitAndSave(other, 'meanwhile')
  await pause(2000)
  await wake()
  await expect.poll(() => longestPause(page)).toBeGreaterThan(1900)
  await page.evaluate(() => window.sitting.journal.refresh())
  expect(await sitting.known(page)).toEqual(await sitting.known(other))
  await hitAndSave(page, 'after')
  await other.reload()
  await other.waitForSelector('body[data-ready]')
  expect(await sitting.known(page)).toEqual(await sitting.known(other))
  await page.close()
  await other.close()
})

test('a page stopped without any event goes on where it was', async () => {
  const page = await phone.browser.newPage()
  await sitting.open(page, place.address)
  await page.bringToFront()
  const first = (await sitting.known(page)).length
  const started = Date.now()
  const saved = page.evaluate(async () => {
    await new Promise((resolve) => setTimeout(resolve, 300))
    await window.sitting.hit(2).saved
    return window.sitting.journal.status
  })
  const resume = await suspend(phone.browser)
  await pause(1500)
  resume()
  expect(await saved).toBe('saved')
  expect(Date.now() - started).toBeGreaterThan(1400)
  expect(await sitting.known(page)).toHaveLength(first + 1)
  await page.close()
})
