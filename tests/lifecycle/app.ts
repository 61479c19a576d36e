import type { Page } from 'puppeteer-core'
import { recordsOf, waiting } from '../fixtures/season.ts'
import type { Sitting } from './sitting.ts'
import { storedIds } from './stored.ts'

const CLOCKS = 5
const BAR_SHARE = 0.8

/** Puts records into the journal past the app. */
const plant = (page: Page, records: readonly { readonly id: string }[]) =>
  page.evaluate(
    (values) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onsuccess = () => {
          const writing = opening.result.transaction('journal', 'readwrite')
          for (const value of values) writing.objectStore('journal').put(value, value.id)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
          writing.onabort = () => reject(writing.error)
        }
      }),
    records,
  )

async function openBench(page: Page, address: string) {
  // Another address first: a change of the part behind # alone opens nothing anew.
  await page.goto('about:blank')
  await page.goto(`${address}#/bench`)
  await page.waitForSelector('#app [data-press]')
}

/** The app itself, five pots waiting, and somebody who hits whatever the screen offers. */
export const clocksOnApp = (root: string): Sitting => ({
  root,
  longestMs: 4000,
  // Anything closer is taken for drops of water.
  pauseMs: [450, 650],
  async open(page, address) {
    await page.goto(address)
    await page.waitForSelector('#app:not([aria-busy]) > *')
    if ((await storedIds(page)).length === 0) await plant(page, recordsOf(waiting(CLOCKS, Date.now())))
    await openBench(page, address)
  },
  async hit(page, random) {
    // Mostly the bar, else whatever the screen offers.
    const choice = [random() < BAR_SHARE, random()] as const
    const place = await page.evaluate(([bar, share]) => {
      const seen = (selector: string) =>
        [...document.querySelectorAll<HTMLElement>(selector)].filter((element) => element.checkVisibility())
      const bars = seen('#app [data-press="bar"]')
      const targets = bar && bars.length > 0 ? bars : seen('#app [data-press]')
      const box = targets[Math.floor(share * targets.length)]?.getBoundingClientRect()
      return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 }
    }, choice)
    if (place) await page.touchscreen.tap(place.x, place.y)
  },
})
