/** The built app, everything refused that a phone can refuse, while what stands beside the page stops in mid-work. */
import type { CDPSession, Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { armed, recordsOf } from '../fixtures/season.ts'
import { openOn, tap } from './app.ts'
import { at } from './built.ts'
import { type Phone, switchOn } from './phone.ts'
import { openPlace, type Place, pause } from './place.ts'
import { freeze } from './sleep.ts'
import { storedIds } from './stored.ts'

/** The planner's worker among those of the page. */
const PLANNER = /\/worker-[\w-]+\.js$/

/** Hits older than this are not offered for taking back: the strip says what does not work. */
const LONG_AGO_MS = 15_000

let place: Place
let phone: Phone
let raw: CDPSession

beforeAll(async () => {
  place = await openPlace(at('dist'))
  phone = await switchOn(place.folder)
  raw = await phone.page.createCDPSession()
})
afterAll(async () => {
  await phone?.close()
  await place?.close()
})

const text = (page: Page, selector: string) =>
  page.$$eval(selector, (found) => found.map((one) => one.textContent).join(' '))
const says = (page: Page, selector: string, words: string) =>
  expect.poll(() => text(page, selector), { timeout: 15_000 }).toContain(words)

const PERMISSIONS = ['screen-wake-lock', 'notifications', 'microphone', 'persistent-storage', 'accelerometer']

async function refuseAll(): Promise<void> {
  const browser = await phone.browser.target().createCDPSession()
  for (const name of PERMISSIONS)
    await browser.send('Browser.setPermission', {
      permission: { name },
      setting: 'denied',
      origin: new URL(place.address).origin,
    })
}

declare global {
  interface Window {
    audios: AudioContext[]
  }
}

/** Keeps each audio context in reach. */
const keepAudios = (page: Page) =>
  page.evaluateOnNewDocument(() => {
    const audios: AudioContext[] = []
    window.audios = audios
    window.AudioContext = class extends AudioContext {
      constructor(options?: AudioContextOptions) {
        super(options)
        audios.push(this)
      }
    }
  })

/** Every service worker is stopped, as the browser does when it needs the memory. */
async function stopServiceWorkers(): Promise<void> {
  const stopped = new Promise<void>((resolve) => {
    raw.on('ServiceWorker.workerVersionUpdated', ({ versions }) => {
      if (versions.some(({ runningStatus }) => runningStatus === 'stopped')) resolve()
    })
  })
  await raw.send('ServiceWorker.enable')
  await raw.send('ServiceWorker.stopAllWorkers')
  await stopped
}

test('workers stopped, audio dead though it says it runs, a count frozen, all permissions denied: the dip is counted, kept and asked about once', async () => {
  const { page } = phone
  const errors: unknown[] = []
  page.on('pageerror', (error) => errors.push(error))
  await refuseAll()
  await keepAudios(page)
  await openOn(page, place.address, recordsOf(armed(Date.now() - LONG_AGO_MS)))
  await page.waitForSelector('html[data-order="told"]')
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  // Any touch opens the sound; this one changes nothing else.
  await tap(page, '.corner-other')
  await tap(page, '.other-close')
  await expect.poll(() => page.evaluate(() => window.audios.map(({ state }) => state))).toEqual(['running'])

  await stopServiceWorkers()
  // The planner's and the second copy's: both die.
  expect(page.workers()).toHaveLength(2)
  for (const worker of page.workers()) await worker.evaluate(() => self.close())
  await page.evaluate(() => {
    const [audio] = window.audios
    Object.defineProperty(audio, 'currentTime', { value: audio?.currentTime })
  })
  await says(page, '.strip', 'Sound is off. ')
  await says(page, '.strip', 'screen may sleep')

  const before = (await storedIds(page)).length
  await tap(page, '.bench [data-press="bar"]')
  await page.waitForSelector('.count-hold', { timeout: 9000 })
  expect(await page.evaluate(() => window.audios.map(({ state }) => state))).toEqual(['closed', 'running'])
  expect((await storedIds(page)).length).toBeGreaterThan(before)
  const wake = await freeze(page)
  await pause(1700)
  await wake()
  await says(page, '.bench-main', 'The phone slept in the count')
  await tap(page, '.bench [data-press="bar"]')
  await page.waitForSelector('html[data-order="told"]')
  expect(page.workers().filter((worker) => PLANNER.test(worker.url()))).toHaveLength(1)
  expect(await text(page, '.bench-main')).not.toContain('slept')
  expect(await text(page, '.strip')).not.toContain('Sound is off')

  await place.stopServing()
  await page.reload()
  await page.waitForSelector('.bench')
  await page.evaluate(() => location.replace('#/room/count'))
  await says(page, '#app', 'Notices are blocked')
  await tap(page, '::-p-aria([name="heard"][role="radio"])')
  await says(page, '#app', 'Not allowed by the phone')
  await page.evaluate(() => location.replace('#/bench'))
  // By FOOT CLEAN, or by START of the next pot.
  await expect
    .poll(() => text(page, '.bench'), { timeout: 15_000 })
    .toMatch(/FOOT CLEAN|sponge the foot|wipe the rim/)
  expect(await text(page, '.bench')).not.toContain('slept')
  expect(errors).toEqual([])
})
