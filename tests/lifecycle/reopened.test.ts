/** Five clocks on the built app: the phone dies and is switched on again, then sleeps over midnight. */
import type { Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Stamped } from '../../shared/events.ts'
import { phoneOf } from '../../src/table/fold/seen.ts'
import { duesOf, FIVE, fiveClocks } from '../fixtures/five-clocks.ts'
import { EARLIER_PHONE, recordsOfHits } from '../fixtures/hits.ts'
import { tableOf } from '../fixtures/seen-by.ts'
import { openOn, openScreen, tap } from './app.ts'
import { at } from './built.ts'
import { type Phone, switchOn } from './phone.ts'
import { openPlace, type Place, pause } from './place.ts'
import { suspend } from './sleep.ts'
import { storedRecords } from './stored.ts'
import { setWall } from './wall.ts'

const EVENING = Date.parse('2026-03-03T23:50:00Z')
const MIDNIGHT = Date.parse('2026-03-04T00:00:00Z')
const SLEEP_MS = 12 * 60_000

let place: Place
let phone: Phone

beforeAll(async () => {
  place = await openPlace(at('dist'))
})
afterAll(async () => {
  await phone?.close()
  await place?.close()
})

const wall = (page: Page) => page.evaluate(() => Date.now())
const overdue = (page: Page) =>
  page.$$eval('.overdue strong', (numbers) => numbers.map((number) => Number(number.textContent)))

/** The table as the journal on the phone gives it, folded here. */
async function tableOn(page: Page) {
  const stamped = (await storedRecords(page)) as (Stamped & { order: number; seq: number })[]
  const sorted = [...stamped].sort((a, b) => a.order - b.order || a.seq - b.seq)
  const last = sorted.at(-1)
  return tableOf(sorted, last ? phoneOf(last) : '')
}

/** When the board on the screen shows each next pot as ready, by the clock on the wall, until `count` are. */
const turns = (page: Page, count: number) =>
  page.evaluate(
    (most) =>
      new Promise<{ ready: number; at: number }[]>((resolve) => {
        const seen: { ready: number; at: number }[] = []
        const look = () => {
          const tiles = [...document.querySelectorAll('.board-tiles button')]
          const ready = tiles.filter((tile) => tile.ariaLabel?.endsWith('READY')).length
          if (ready !== seen.at(-1)?.ready) seen.push({ ready, at: Date.now() })
          if (ready >= most) resolve(seen)
          else setTimeout(look, 50)
        }
        look()
      }),
    count,
  )

test('killed and opened again each clock is right within two seconds; stopped for 12 minutes over midnight it lists what came due in order, and nothing has moved on', async () => {
  phone = await switchOn(place.folder)
  await setWall(phone.page, EVENING + 1000)
  await openOn(phone.page, place.address, recordsOfHits(fiveClocks(EVENING), EVENING), EARLIER_PHONE)
  await phone.page.waitForSelector('.bench [data-press]')
  const before = await tableOn(phone.page)
  const due = duesOf(before)
  await phone.kill()

  phone = await switchOn(place.folder)
  const { page } = phone
  const second = due[1]!
  await setWall(page, second.at - 3500)
  await openScreen(page, place.address, 'board')
  await page.waitForSelector('.board-tiles button')
  expect(await page.$$('.board-tiles button')).toHaveLength(FIVE.length)
  const [first, next] = await turns(page, 2)
  expect(first!.ready).toBe(1)
  expect(next!.ready).toBe(2)
  expect(Math.abs(next!.at - second.at)).toBeLessThan(2000)

  await page.evaluate(() => location.replace('#/bench'))
  await page.waitForSelector('.overdue')
  expect(await overdue(page)).toEqual(due.slice(0, 2).map(({ number }) => number))
  await tap(page, '.bench-returned ~ .bar .bar-live')
  await page.waitForSelector('.bench-main:not(:has(.overdue))')

  const cover = await phone.browser.newPage()
  await cover.bringToFront()
  await page.evaluate((ms) => window.sleepFor(ms), SLEEP_MS)
  const resume = await suspend(phone.browser)
  await pause(1800)
  resume()
  await page.bringToFront()
  await cover.close()
  await page.waitForSelector('.overdue')
  expect(await wall(page)).toBeGreaterThan(MIDNIGHT)
  expect(await page.$eval('h1', (title) => title.textContent)).toMatch(/^Away 1[23] min/)
  // The last of the five still dries.
  expect(due[4]!.at).toBeGreaterThan(await wall(page))
  expect(await overdue(page)).toEqual(due.slice(2, 4).map(({ number }) => number))
  expect(await tableOn(page)).toEqual(before)

  // The evening goes on, and what is hit now bears the new day's time.
  await tap(page, '.bench-returned ~ .bar .bar-live')
  await page.waitForSelector('.bench-main:not(:has(.overdue))')
  const hits = async () => (await tableOn(page)).hits.length
  let hitAt = 0
  // A card that the order of work brought just now passes a hit over.
  for (let i = 0; i < 4 && (await hits()) === before.hits.length; i++) {
    hitAt = await wall(page)
    await tap(page, '.bench [data-press="bar"]')
    await pause(700)
  }
  expect(await hits()).toBe(before.hits.length + 1)
  const hit = (await tableOn(page)).hits.at(-1)!
  expect(Math.abs(hit.at - hitAt)).toBeLessThan(2000)
})
