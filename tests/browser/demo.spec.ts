/** The demo beside the own table: neither knows of the other. */
import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { BenchPage, opened, plant, storedIds } from './bench.ts'

/** Two pots of a person's own. */
const OWN = demoEvents().filter(
  (event) => event.kind !== 'demo-laid' && (event.kind !== 'pot-set' || event.pot.number < 33),
)

const LAID = demoEvents().length

/** How many records the demo's own database holds. */
const records = async (page: Page) => (await storedIds(page, 'journal', 'bucketside-demo')).length

const databases = (page: Page) =>
  page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name).sort())

/** Everything in the own journal and beside it. */
const kept = async (page: Page) => {
  const ids = await storedIds(page)
  const beside = await page.evaluate(() =>
    ['witness', 'copied', 'seen'].map((key) => localStorage.getItem(`bucketside.${key}`)),
  )
  return JSON.stringify([ids, beside])
}

async function ownTable(page: Page): Promise<void> {
  await page.goto('./')
  await opened(page)
  await plant(page, [OWN], new Date())
  await page.goto('./#/bench')
  await page.reload()
  await expect(page.locator('.bench')).toBeVisible()
}

async function tryDemo(page: Page): Promise<void> {
  await page.goto('./#/first')
  await page.getByRole('button', { name: 'Try the demo evening' }).tap()
  await expect(page.locator('.bench')).toBeVisible()
  await page.goto('./#/board')
  await expect(page.getByText('This is the demo.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Room', exact: true })).toBeInViewport({ ratio: 1 })
}

test('the demo folds nothing of the own table away, and leaves nothing in it or in its backup', async ({
  page,
}) => {
  await ownTable(page)
  await page.goto('./#/board')
  await expect(page.getByRole('button', { name: /^Pot \d+/ })).toHaveCount(2)
  await tryDemo(page)
  const before = await kept(page)
  await expect(page.getByRole('button', { name: /^Pot \d+/ })).toHaveCount(8)
  await page.goto('./#/bench')
  await page.waitForTimeout(500)
  await page.locator('[data-press="bar"]').first().tap()
  await expect.poll(() => records(page)).toBe(LAID + 1)
  // Nothing of it can be backed up, or another table be taken into it.
  await page.goto('./#/room/keep')
  await expect(page.getByRole('button', { name: 'Spreadsheet and pictures' })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Back up' })).toBeHidden()
  // Over a reload it is still the demo; another window has the own table.
  await page.reload()
  await expect(page.getByText('This is the demo.')).toBeVisible()
  const other = await page.context().newPage()
  await other.goto('./#/board')
  await expect(other.getByRole('button', { name: /^Pot \d+/ })).toHaveCount(2)
  await other.close()
  expect(JSON.parse(await kept(page))[0]).toEqual(JSON.parse(before)[0])

  await page.getByRole('button', { name: 'Back to my pots' }).tap()
  await expect(page.getByRole('button', { name: /^Pot \d+/ })).toHaveCount(2)
  await expect(page.getByText('This is the demo.')).toBeHidden()
  expect(await databases(page)).toEqual(['bucketside'])
  await page.goto('./#/room/keep')
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Back up' }).tap()
  const text = await readFile(await (await saved).path(), 'utf8')
  expect(text).not.toContain('demo-laid')
  expect(text.match(/"kind":"pot-set"/g)).toHaveLength(2)

  // It begins anew each time.
  await tryDemo(page)
  expect(await records(page)).toBe(LAID)
})

test('where no page can be opened, the demo is not begun and not left, and that is said', async ({
  page,
  context,
}) => {
  await ownTable(page)
  await page.goto('./#/first')
  await opened(page)
  const missing = page.getByRole('alert').filter({ hasText: 'there is no network' })
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Try the demo evening' }).tap()
  await expect(missing).toBeVisible()
  expect(await databases(page)).toEqual(['bucketside'])
  await context.setOffline(false)
  await tryDemo(page)
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Back to my pots' }).tap()
  await expect(missing).toBeVisible()
  await context.setOffline(false)
  await page.getByRole('button', { name: 'Back to my pots' }).tap()
  await expect(page.getByRole('button', { name: /^Pot \d+/ })).toHaveCount(2)
})

test('a database that answers late is laid with the demo when it does', async ({ page }) => {
  await page.addInitScript(() => {
    const open = IDBFactory.prototype.open
    IDBFactory.prototype.open = function (...args) {
      const opening = open.apply(this, args)
      if (args[0] === 'bucketside-demo') {
        const late = (happened: EventListener) => (event: Event) => setTimeout(happened, 4000, event)
        opening.addEventListener = (kind: string, happened: EventListenerOrEventListenerObject) =>
          EventTarget.prototype.addEventListener.call(
            opening,
            kind,
            kind === 'success' ? late(happened as EventListener) : happened,
          )
      }
      return opening
    }
  })
  await page.goto('./')
  await opened(page)
  await page.getByRole('button', { name: 'demo evening' }).tap()
  await expect(page.getByText('cannot be read')).toBeVisible()
  await expect(page.locator('.bench [data-press="bar"]').first()).toBeVisible({ timeout: 15_000 })
  expect(await records(page)).toBe(LAID)
})

test('with letters twice as large the way back to the own table stays on the screen', async ({ page }) => {
  const session = await page.context().newCDPSession(page)
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32 } })
  await BenchPage.demo(page)
  await page.goto('./#/board')
  await page.clock.runFor(500)
  const key = page.getByRole('button', { name: 'Back to my pots' })
  // A page that is wider than the screen counts as in view.
  const { x, width } = (await key.boundingBox())!
  expect(x + width).toBeLessThanOrEqual(page.viewportSize()!.width)
})
