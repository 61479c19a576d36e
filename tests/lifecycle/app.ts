import type { Page } from 'puppeteer-core'
import { createRecords } from '../../shared/record.ts'
import { writeBackup } from '../../src/store/backup.ts'
import { recordsOf, season, waiting } from '../fixtures/season.ts'
import type { Sitting } from './sitting.ts'

const CLOCKS = 5
const BAR_SHARE = 0.8

/** Puts records into the journal past the app, which has to have been open once; `phone` wrote them, and is this one. */
export const plant = (page: Page, records: readonly { readonly id: string }[], phone?: string) =>
  page.evaluate(
    (values, name) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onsuccess = () => {
          const writing = opening.result.transaction(['journal', 'local'], 'readwrite')
          for (const value of values) writing.objectStore('journal').put(value, value.id)
          if (name !== null) writing.objectStore('local').put(name, 'phone')
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
          writing.onabort = () => reject(writing.error)
        }
      }),
    records,
    phone ?? null,
  )

/** A screen of the app, opened anew. */
export async function openScreen(page: Page, address: string, screen: string) {
  // Another address first: a change of the part behind # alone opens nothing anew.
  await page.goto('about:blank')
  await page.goto(`${address}#/${screen}`)
  await whenOpen(page)
}

/** Asked by a timer: a page out of sight has no frames, and may change nothing any more. */
const whenOpen = (page: Page) =>
  page.waitForFunction(() => document.querySelector('#app:not([aria-busy]) > *'), {
    polling: 100,
    timeout: OPENED_MS,
  })
/** Opened by then on any machine, however busy. */
const OPENED_MS = 90_000

/** The app's bench, opened for the first time on a journal of these records. */
export async function openOn(
  page: Page,
  address: string,
  records: Parameters<typeof plant>[1],
  phone?: string,
) {
  await page.goto(address)
  await whenOpen(page)
  await plant(page, records, phone)
  await openScreen(page, address, 'bench')
}

/** Anything closer is taken for drops of water, or for a hit that was meant for the card before. */
const APART_MS = 450

/** Taps the middle of the first that is shown, as soon after the tap before as counts. */
export async function tap(page: Page, selector: string): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, APART_MS))
  const shown = await page.waitForSelector(selector, { visible: true })
  await shown?.tap()
}

/** The app itself, five pots waiting, and somebody who hits whatever the screen offers. */
export function clocksOnApp(root: string): Sitting {
  let planted = false
  return {
    root,
    longestMs: 3000,
    pauseMs: [APART_MS, 650],
    async open(page, address) {
      if (planted) await openScreen(page, address, 'bench')
      else await openOn(page, address, recordsOf(waiting(CLOCKS, Date.now())))
      planted = true
      await page.waitForSelector('#app [data-press]')
    },
    async hit(page, random) {
      // Mostly the bar, else whatever the screen offers.
      const choice = [random() < BAR_SHARE, random()] as const
      const place = await page.evaluate(([bar, share]) => {
        const seen = (selector: string) =>
          [...document.querySelectorAll<HTMLElement>(selector)].filter((element) => element.checkVisibility())
        const bars = seen('#app [data-press="bar"]')
        const targets = bar && bars.length > 0 ? bars : seen('#app [data-press]')
        // A hit may have led to another screen, where no hit counts.
        if (targets.length === 0) location.replace('#/bench')
        const box = targets[Math.floor(share * targets.length)]?.getBoundingClientRect()
        return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 }
      }, choice)
      if (place) await page.touchscreen.tap(place.x, place.y)
    },
  }
}

/** So many records of a season on a phone of this name. */
export const seasonOf = (phone: string, count: number) =>
  recordsOf(season(count)).flatMap(({ event, seq, order, at, tz }) =>
    createRecords([event], { writer: `${phone}.a`, seq, order }, { at, tz }),
  )

/** Takes a backup in, in the room. */
export async function joinFile(page: Page, text: string): Promise<void> {
  await page.waitForSelector('input[type="file"]')
  await page.evaluate((content) => {
    const chosen = new DataTransfer()
    chosen.items.add(new File([content], 'backup.txt', { type: 'text/plain' }))
    const input = document.querySelector<HTMLInputElement>('input[type="file"]')
    if (!input) return
    input.files = chosen.files
    input.dispatchEvent(new Event('change', { bubbles: true }))
  }, text)
  await page.waitForSelector('.looked button')
  await page.evaluate(() => document.querySelector<HTMLButtonElement>('.looked button')?.click())
  await page.waitForFunction(() => document.querySelector('[role="status"]')?.textContent?.includes('new'))
}

const IMPORTED = 1500
/** The second copy is compared that long after the start. */
const COMPARED_MS = 3500

/** The app's own backups taken in, one after another, each of them large. */
export function importsOnApp(root: string): Sitting {
  let number = 0
  return {
    root,
    longestMs: 4000,
    pauseMs: [0, 300],
    async open(page, address) {
      await openScreen(page, address, 'room/keep')
      await new Promise((resolve) => setTimeout(resolve, COMPARED_MS))
    },
    async hit(page) {
      number++
      const text = writeBackup(seasonOf(`import${number}`, IMPORTED), { at: Date.now(), tz: 0 })
      await joinFile(page, text)
    },
  }
}
