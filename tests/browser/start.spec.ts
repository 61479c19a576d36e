/** What a start, and a hit, need not compute again. */
import { expect, test } from '@playwright/test'
import { armed, recordsOf, season } from '../fixtures/season.ts'
import { opened, plantRecords } from './bench.ts'

/** The demo evening until pots wait for their second coat: touches of the first taught how long. */
const EVENTS = 95
const KEPT = 'bucketside.runs'

test('the next start reads what touches taught, and says the same hours', async ({ page }) => {
  const evening = season(EVENTS)
  // It stands still where it ends.
  await page.clock.setFixedTime((evening.at(-1)?.at ?? 0) + 60_000)
  await page.goto('./')
  await opened(page)
  await plantRecords(page, recordsOf(evening))
  const told = async () => {
    await page.goto('./#/board')
    await page.reload()
    await opened(page)
    return page.locator('main').textContent()
  }
  const first = await told()
  await expect.poll(() => page.evaluate((name) => localStorage.getItem(name), KEPT)).not.toBeNull()
  expect(await told()).toBe(first)
  await page.evaluate((name) => {
    const { of, values } = JSON.parse(localStorage.getItem(name) ?? '')
    for (const [key, at] of Object.entries<unknown>(values))
      if (Array.isArray(at)) values[key] = at.map((min) => min / 6)
    localStorage.setItem(name, JSON.stringify({ of, values }))
  }, KEPT)
  expect(await told()).not.toBe(first)
})

test('the phone is not asked how it tells the time before one is told, nor again with every hit', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const Original = Intl.DateTimeFormat
    const made = { times: 0 }
    Object.assign(window, { made })
    Intl.DateTimeFormat = new Proxy(Original, {
      construct(target, args) {
        made.times++
        return Reflect.construct(target, args)
      },
    })
  })
  const made = () => page.evaluate(() => (window as unknown as { made: { times: number } }).made.times)
  await page.goto('./')
  await opened(page)
  expect(await made()).toBe(0)
  await plantRecords(page, recordsOf(armed(Date.now())))
  await page.goto('./#/bench')
  await page.reload()
  const bar = page.locator('[data-press="bar"]').first()
  const hits = async (count: number) => {
    for (let i = 0; i < count; i++) {
      await page.waitForTimeout(500)
      await bar.tap({ force: true })
    }
  }
  // START, and back again before IN; by then the hour was asked for ahead, once.
  await hits(8)
  const before = await made()
  await hits(6)
  expect(await made()).toBe(before)
})
