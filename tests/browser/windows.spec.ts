/** Two windows of the app on one phone. */
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { armed, recordsOf } from '../fixtures/season.ts'
import { opened, plantRecords } from './bench.ts'
import { LONG } from './places.ts'

declare global {
  interface Window {
    /** Tones and clips handed to the loudspeaker since the last look. */
    sounded: number
  }
}

/** A window of the app, whose sounds are counted; the wall clock of both is set by `setWall`. */
async function open(context: BrowserContext): Promise<Page> {
  const page = await context.newPage()
  await page.addInitScript(() => {
    window.sounded = 0
    for (const kind of [OscillatorNode, AudioBufferSourceNode]) {
      const { start } = kind.prototype
      kind.prototype.start = function (...given: []) {
        window.sounded++
        return start.apply(this, given)
      }
    }
    const Real = Date
    const ahead = () => Number(localStorage.getItem('ahead') ?? 0)
    window.Date = class extends Real {
      constructor(...given: []) {
        super(...(given.length === 0 ? ([Real.now() + ahead()] as unknown as []) : given))
      }
      static override now = () => Real.now() + ahead()
    } as DateConstructor
  })
  await page.goto('./#/bench')
  await opened(page)
  return page
}

const sounded = (page: Page) => page.evaluate(() => window.sounded)
const elsewhere = (page: Page) => page.getByText('Another window sounds')
const bar = (page: Page) => page.locator('.bench [data-press="bar"]').first()

const events = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<{ kind: string; byMs?: number }[]>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const all = opening.result.transaction('journal').objectStore('journal').getAll()
          all.onsuccess = () => {
            opening.result.close()
            resolve(all.result.map(({ event }) => event))
          }
        }
      }),
  )

/** Hits older than this are not offered for taking back: the strip says what does not work. */
const LONG_AGO_MS = 15_000

async function twoWindows(context: BrowserContext): Promise<readonly [Page, Page]> {
  const one = await open(context)
  await plantRecords(one, recordsOf(armed(Date.now() - LONG_AGO_MS)))
  await one.reload()
  await expect(bar(one)).toBeVisible()
  const two = await open(context)
  await expect(bar(two)).toBeVisible()
  return [one, two]
}

test('the window hit last sounds, both see, nothing is done twice, and the other says so', async ({
  context,
}) => {
  test.setTimeout(90_000)
  const [one, two] = await twoWindows(context)
  await one.bringToFront()
  await expect(bar(one)).toContainText('START')
  // A hit that changes nothing: from now on this one sounds.
  await one.locator('.corner-other').tap()
  // A hit on a page that only just came does nothing.
  await one.waitForTimeout(700)
  await one.locator('.other-close').tap()
  await expect(one.locator('.other')).toBeHidden()
  await expect(elsewhere(one)).toBeHidden()
  await expect(elsewhere(two)).toBeVisible()
  await expect(bar(two)).toContainText('START')

  const dips = async () => (await events(one)).filter(({ kind }) => kind === 'dipped').length
  const before = { sounded: await sounded(two), dips: await dips() }
  await one.waitForTimeout(700)
  await bar(one).tap()
  await expect(one.locator('.count-lead-in, .count-hold')).toBeVisible()
  await expect(two.locator('.count-lead-in, .count-hold')).toBeVisible()
  expect(await sounded(one)).toBeGreaterThan(0)
  expect(await sounded(two)).toBe(before.sounded)
  await expect.poll(dips).toBe(before.dips + 1)

  // The other one takes over, and breaks the count off in both.
  await two.bringToFront()
  await two.waitForTimeout(500)
  await two.locator('[data-press="bar"]').first().tap()
  await expect(one.locator('.count-lead-in, .count-hold')).toBeHidden()
  await expect(two.locator('.count-lead-in, .count-hold')).toBeHidden()
  await expect(elsewhere(two)).toBeHidden()
  expect(await dips()).toBe(before.dips + 1)

  // Looked at again, or left alone, the first one sounds.
  await two.close()
  await expect(elsewhere(one)).toBeHidden()
})

test('without channels between windows both open, and see what is hit in either', async ({ context }) => {
  test.setTimeout(90_000)
  await context.addInitScript(() => {
    Reflect.deleteProperty(window, 'BroadcastChannel')
  })
  const [one, two] = await twoWindows(context)
  expect(await one.evaluate(() => 'BroadcastChannel' in window)).toBe(false)
  await one.bringToFront()
  await expect(bar(one)).toContainText('START')
  await one.waitForTimeout(700)
  await bar(one).tap()
  await expect(one.locator('.count-lead-in, .count-hold')).toBeVisible()
  await expect(two.locator('.count-lead-in, .count-hold')).toBeVisible()
  const written = await events(one)
  expect(written.filter(({ kind }) => kind === 'dipped').length).toBeGreaterThan(0)
  // Nothing of it is left in the storage that carried it.
  expect(await one.evaluate(() => localStorage.getItem('bucketside-journal'))).toBeNull()
})

// The laws of clocks hold it without a browser at every test.
test('a clock that is set under two windows is one jump, written once', LONG, async ({ context }) => {
  const [one, two] = await twoWindows(context)
  for (const page of [one, two]) await page.waitForTimeout(1200)
  for (const [aheadMs, byMs] of [
    [3_600_000, 3_600_000],
    [-172_800_000, -176_400_000],
  ] as const) {
    const jumps = (await events(one)).filter(({ kind }) => kind === 'clock-moved').length
    await one.evaluate((ms) => localStorage.setItem('ahead', String(ms)), aheadMs)
    const moved = async () => (await events(two)).filter(({ kind }) => kind === 'clock-moved')
    await expect.poll(async () => (await moved()).length, { timeout: 15_000 }).toBe(jumps + 1)
    await two.waitForTimeout(4000)
    const written = await moved()
    expect(written).toHaveLength(jumps + 1)
    expect(Math.min(...written.map((jump) => Math.abs((jump.byMs ?? 0) - byMs)))).toBeLessThan(2000)
  }
  await expect(bar(one)).toBeVisible()
  await expect(bar(two)).toBeVisible()
})
