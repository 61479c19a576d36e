import { expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { loadCalls } from '../../src/table/load/calls.ts'
import { firedLoad } from '../fixtures/opened.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { BenchPage, EVENING } from './bench.ts'

const MIN_MS = 60_000

const nowOf = (page: Page) => page.evaluate(() => Date.now())
/** The phone's clock is set while the page is seen: nothing has run since. */
const setClock = async (page: Page, byMs: number) =>
  page.clock.setSystemTime(new Date((await nowOf(page)) + byMs))

test('a hit in the very moment in which the clock was set is kept at its own time', async ({ page }) => {
  const bench = await BenchPage.only(page, 31)
  await bench.prepare(31)
  await bench.arm(31)
  await page.clock.runFor(450)
  const before = await nowOf(page)
  await setClock(page, 60 * MIN_MS)
  await bench.bar.tap()
  await page.clock.runFor(2000)
  const dips = (await bench.pot(31)).dips
  expect(dips).toHaveLength(1)
  expect((dips[0]?.tappedAt ?? 0) - before).toBeLessThan(MIN_MS)
})

test('a clock that is set on calls nobody to a kiln that is hot still, and the call comes at its time', async ({
  page,
}) => {
  const fired = firedLoad(EVENING.getTime(), 'shut')
  const cooling = fired.map((hit) =>
    hit.flatMap((event): TableEvent[] =>
      event.kind === 'heat-read'
        ? [
            { ...event, tempC: 260, agoMin: 180 },
            { ...event, tempC: 190, agoMin: 60 },
            { ...event, tempC: 160 },
          ]
        : [event],
    ),
  )
  await page.addInitScript(() => {
    const posted: string[] = []
    Object.assign(window, { posted })
    Object.defineProperty(window, 'Notification', { value: { permission: 'granted' } })
    const registration = {
      active: {},
      showNotification: async (title: string) => void posted.push(title),
      getNotifications: async () => [],
    }
    Object.defineProperty(navigator, 'serviceWorker', {
      value: { getRegistration: async () => registration, addEventListener() {} },
    })
  })
  const bench = await BenchPage.on(page, cooling)
  const called = () =>
    page.evaluate(
      () =>
        (window as unknown as { posted: string[] }).posted.filter((title) => /^Kiln: about/.test(title))
          .length,
    )
  const call = loadCalls(await bench.table()).find(({ what }) => what === 'lid')
  const leftMs = async () => (call?.at ?? 0) + (await bench.table()).skewMs - (await nowOf(page))
  expect(await leftMs()).toBeGreaterThan(30 * MIN_MS)
  await bench.pass((await leftMs()) / 1000 - 360)
  await setClock(page, 7 * MIN_MS)
  await page.clock.runFor(3000)
  expect(await called()).toBe(0)
  await expect.poll(async () => Math.round((await leftMs()) / MIN_MS)).toBe(6)
  await bench.pass(362)
  await expect.poll(called).toBe(1)
})

test('a clock that is set while the bench is seen is no time away', async ({ page }) => {
  const bench = await BenchPage.on(page, [
    demoEvents(),
    [toldDip({ potId: 'demo.31', outAt: EVENING.getTime() })],
  ])
  await setClock(page, 30 * MIN_MS)
  for (let i = 0; i < 8; i++) {
    await page.clock.runFor(1000)
    await page.waitForTimeout(60)
    await expect(page.locator('.bench-returned')).toHaveCount(0)
  }
  expect((await bench.table()).skewMs).toBeGreaterThan(29 * MIN_MS)
})

test('a clock that was set back is taken as set right once the phone was away for as long', async ({
  page,
}) => {
  const twoDaysMs = 2 * 24 * 60 * MIN_MS
  const bench = await BenchPage.on(page, [
    demoEvents(),
    [toldDip({ potId: 'demo.31', outAt: EVENING.getTime() })],
  ])
  const skewMs = async () => {
    await page.clock.runFor(1000)
    return (await bench.table()).skewMs
  }
  await setClock(page, -twoDaysMs)
  await expect.poll(skewMs).toBeLessThan(1 - twoDaysMs)
  const before = (await nowOf(page)) - (await skewMs())
  await setClock(page, twoDaysMs + 20 * MIN_MS)
  await page.reload()
  await expect(page.locator('.bench')).toBeVisible()
  await expect.poll(skewMs).toBe(0)
  expect((await nowOf(page)) - before).toBeLessThan(22 * MIN_MS)
  await expect(page.locator('.bench-returned h1')).toContainText('20 min')
})
