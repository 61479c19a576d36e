import { expect, type Page, test } from '@playwright/test'
import { duesOf, FIVE, fiveClocks } from '../fixtures/five-clocks.ts'
import { BenchPage, EVENING } from './bench.ts'
import { LONG } from './places.ts'

/** Numbers that the board shows as ready. */
async function readyOn(page: Page): Promise<number[]> {
  const labels = await page
    .locator('.board-tiles button')
    .evaluateAll((tiles) => tiles.map((tile) => tile.getAttribute('aria-label') ?? ''))
  expect(labels).toHaveLength(FIVE.length)
  return labels.filter((label) => label.endsWith('READY')).map((label) => Number(label.split(' ')[1]))
}

/** The page closed, and a new one opened when the clock on the wall says `at`. */
async function reopened(page: Page, at: number, screen: string): Promise<Page> {
  const context = page.context()
  const next = await context.newPage()
  await page.close()
  await next.clock.pauseAt(at)
  await next.goto(`./#/${screen}`)
  const shown = next.locator('.board, .bench')
  for (let i = 0; i < 10 && !(await shown.isVisible()); i++) {
    await next.clock.runFor(20)
    await next.waitForTimeout(100)
  }
  await expect(shown).toBeVisible()
  return next
}

// Whole browsers that are killed and opened again hold the same at every test.
test(
  'five clocks stopped and opened again: each is right within two seconds, none has advanced',
  LONG,
  async ({ page }) => {
    // Five pages, one after another.
    test.setTimeout(120_000)
    const bench = await BenchPage.on(page, fiveClocks(EVENING.getTime()))
    const before = await bench.table()
    const due = duesOf(before)
    expect(new Set(due.map(({ at }) => Math.round(at / 1000))).size).toBe(FIVE.length)
    let at = page
    for (const [i, { at: dueAt }] of due.entries()) {
      at = await reopened(at, Math.floor(dueAt) - 2000, 'board')
      expect(await readyOn(at)).toEqual(expect.arrayContaining(due.slice(0, i).map(({ number }) => number)))
      expect(await readyOn(at)).toHaveLength(i)
      await at.clock.runFor(3700)
      expect(await readyOn(at)).toHaveLength(i + 1)
    }
    const after = await new BenchPage(at).table()
    expect(after.pots).toEqual(before.pots)
    expect(after.hits).toEqual(before.hits)
  },
)

test.describe('on a slow line', () => {
  // The worker would fetch beside the page, where it cannot be held up.
  test.use({ serviceWorkers: 'block' })

  test('a table with coats shows once what computes walls is there, with its own times', async ({ page }) => {
    const bench = await BenchPage.on(page, fiveClocks(EVENING.getTime()))
    const due = duesOf(await bench.table())
    let release = () => {}
    const released = new Promise<void>((done) => {
      release = done
    })
    await page.route('**/assets/walls-*.js', async (route) => {
      await released
      await route.continue()
    })
    await page.clock.pauseAt(due[1]!.at + 1000)
    await page.goto('./#/board')
    await page.reload()
    await page.waitForTimeout(500)
    await expect(page.locator('.board, .bench, .broken')).toHaveCount(0)
    release()
    await expect(page.locator('.board')).toBeVisible()
    expect(await readyOn(page)).toHaveLength(2)
  })
})

/** Numbers in the list of what came due meanwhile, as it stands. */
const overdue = async (page: Page) => (await page.locator('.overdue strong').allTextContents()).map(Number)

for (const gap of ['asleep', 'closed'] as const)
  test(`${gap} over all five: the longest overdue stands first, and nothing has moved on`, async ({
    page,
  }) => {
    const bench = await BenchPage.on(page, fiveClocks(EVENING.getTime()))
    const before = await bench.table()
    const due = duesOf(before)
    const back = due.at(-1)!.at + 100_000
    let at = page
    if (gap === 'closed') at = await reopened(page, back, 'bench')
    else {
      // One jump over everything, as a page that was frozen sees it.
      await page.clock.fastForward(back - (await page.evaluate(() => Date.now())))
      await page.clock.runFor(600)
    }
    await expect(at.getByRole('heading', { name: /^Away/ })).toBeVisible()
    expect(await overdue(at)).toEqual(due.map(({ number }) => number))
    await expect(at.locator('.overdue li').last()).toContainText('2 min ago')
    const after = await new BenchPage(at).table()
    expect(after.pots).toEqual(before.pots)
    expect(after.hits).toEqual(before.hits)

    await at.clock.runFor(500)
    await at.locator('.bench-returned ~ .bar .bar-live').tap()
    await at.clock.runFor(500)
    // Touch what is due, or open the bucket for what is dry by any reckoning: the order of work decides.
    await expect(at.locator('.bench-main')).toContainText(/ready\?|open brackwater/i)
    expect(await overdue(at)).toEqual([])
  })

/** Out of sight for so long, with timers running on, as a phone does it for a moment. */
async function outOfSight(page: Page, ms: number): Promise<void> {
  const show = (state: 'hidden' | 'visible') =>
    page.evaluate((to) => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => to })
      Object.defineProperty(document, 'hidden', { configurable: true, get: () => to === 'hidden' })
      document.dispatchEvent(new Event('visibilitychange'))
    }, state)
  await show('hidden')
  await page.clock.runFor(ms)
  await show('visible')
  await page.clock.runFor(100)
}

async function counting(page: Page): Promise<BenchPage> {
  const bench = await BenchPage.only(page, 33)
  await bench.prepare(33)
  await bench.arm(33)
  await bench.hit()
  await page.clock.runFor(5500)
  await expect(page.locator('.count-hold')).toBeVisible()
  return bench
}

test('out of sight for two seconds of a count: the dose is unsure and is asked about once', async ({
  page,
}) => {
  const bench = await counting(page)
  await outOfSight(page, 2000)
  await page.clock.runFor(4000)
  await expect(bench.face).toContainText('The phone slept in the count')
  expect((await bench.pot(33)).dips[0]).toMatchObject({ unsure: true })
  await bench.hit()
  await expect(bench.face).not.toContainText('slept')
  expect((await bench.pot(33)).dips[0]).toMatchObject({ unsure: false, holdS: 4 })
  await bench.pass(15)
  await page.reload()
  await page.clock.runFor(1000)
  await expect(bench.bar).toContainText('FOOT CLEAN')
  await expect(bench.face).not.toContainText('slept')
})

test('out of sight for a second of a count: it stays as planned', async ({ page }) => {
  const bench = await counting(page)
  await outOfSight(page, 1000)
  await page.clock.runFor(4000)
  expect((await bench.pot(33)).dips[0]).toMatchObject({ unsure: false, how: 'planned' })
})

test('no sound, no vibration, no wake lock: said where it matters, and no error', async ({ page }) => {
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.message))
  page.on('console', (line) => line.type() === 'error' && errors.push(line.text()))
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'AudioContext')
    Reflect.deleteProperty(Navigator.prototype, 'vibrate')
    Reflect.deleteProperty(Navigator.prototype, 'wakeLock')
  })
  const bench = await counting(page)
  expect(await page.evaluate(() => 'vibrate' in navigator || 'AudioContext' in window)).toBe(false)
  await page.clock.runFor(20_000)
  await expect(page.getByText('Sound is off')).toBeVisible()
  await expect(page.getByText('screen may sleep')).toBeVisible()
  expect((await bench.pot(33)).dips[0]).toMatchObject({ holdS: 4, how: 'planned' })
  expect(errors).toEqual([])
})
