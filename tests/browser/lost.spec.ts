/** Storage that was lost, in the ways a phone loses it: told, and brought back where anything can. */
import { expect, type Page, test } from '@playwright/test'
import { recordsOf, season } from '../fixtures/season.ts'
import { opened, plantRecords, storedIds } from './bench.ts'
import { count, deleteDatabase, sitting, trouble } from './kept-evening.ts'
import { LONG } from './places.ts'

// Workers, files and loads of whole versions, on any machine.
test.describe.configure({ timeout: 90_000 })

test('a database that is gone comes back from the second copy, and that is said', async ({ page }) => {
  const before = await sitting(page)
  await page.goto('./icon.svg')
  await deleteDatabase(page)
  await page.goto('./#/bench')
  await expect(page.locator('.bench')).toBeVisible()
  await expect(trouble(page)).toContainText(`${before} records taken from the second copy`)
  await page.getByRole('button', { name: 'Understood' }).tap()
  await expect(trouble(page)).toBeHidden()
  await page.reload()
  await expect(page.locator('.bench')).toBeVisible()
})

/** What pots are said to be in the second copy turns into something else, with their names still there. */
const rotTheCopy = (page: Page) =>
  page.evaluate(async () => {
    const file = await (await navigator.storage.getDirectory()).getFileHandle('journal.jsonl')
    const text = await (await file.getFile()).text()
    const writing = await file.createWritable()
    await writing.write(text.replaceAll('"pot-set"', '"pot-sat"'))
    await writing.close()
    return text.split('"pot-set"').length - 1
  })
const wholePots = (page: Page) =>
  page.evaluate(async () => {
    const file = await (await navigator.storage.getDirectory()).getFileHandle('journal.jsonl')
    return (await (await file.getFile()).text()).split('"pot-set"').length - 1
  })

test('what the second copy has not whole either is counted and said until it was read', async ({ page }) => {
  const before = await sitting(page)
  await page.goto('./icon.svg')
  const gone = await rotTheCopy(page)
  expect(gone).toBeGreaterThan(1)
  await deleteDatabase(page)
  await page.goto('./#/bench')
  const line = `${before - gone} of ${before} records taken from the second copy`
  await expect(trouble(page)).toContainText(line)
  await expect(trouble(page)).toContainText(`${gone} are missing`)
  await expect(trouble(page)).not.toContainText('All of them are back')
  // Its own copy and witness are kept meanwhile.
  await page.waitForTimeout(6000)
  await page.reload()
  await expect(trouble(page)).toContainText(line)
  await page.getByRole('button', { name: 'Understood' }).tap()
  await page.reload()
  await opened(page)
  await page.waitForTimeout(500)
  await expect(trouble(page)).toBeHidden()
})

test('what rotted in the second copy is written again while the database has it', async ({ page }) => {
  await sitting(page)
  await page.goto('./icon.svg')
  const were = await rotTheCopy(page)
  expect(await wholePots(page)).toBe(0)
  await page.goto('./#/bench')
  await expect.poll(() => wholePots(page), { timeout: 20_000 }).toBe(were)
})

test(
  'with the second copy gone too the first screen says what was lost and what to do',
  LONG,
  async ({ page }) => {
    await sitting(page)
    await page.goto('./icon.svg')
    await deleteDatabase(page)
    await page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry('journal.jsonl'))
    await page.goto('./')
    await opened(page)
    await expect(trouble(page)).toContainText('the browser has lost them')
    await page.getByRole('button', { name: 'Take in a backup' }).first().tap()
    await expect(page.getByRole('heading', { name: 'Keep', exact: true })).toBeVisible()
  },
)

test('a database deleted under an open page gets back all that the page knows', async ({ page }) => {
  const before = await sitting(page)
  await deleteDatabase(page)
  await page.waitForTimeout(500)
  await page.locator('[data-press="bar"]').first().tap()
  await expect.poll(() => count(page)).toBeGreaterThanOrEqual(before)
  await page.reload()
  await expect(page.locator('.bench')).toBeVisible()
})

for (const [how, script] of [
  [
    'never answers',
    () => {
      IDBFactory.prototype.open = () => new EventTarget() as unknown as IDBOpenDBRequest
    },
  ],
  [
    'is blocked',
    () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('blocked', 'SecurityError')
      }
    },
  ],
] as const) {
  test(`storage that ${how}: said on every screen, no demo over it, and a file gets out`, async ({
    page,
  }) => {
    await page.addInitScript(script)
    await page.goto('./')
    await opened(page)
    await expect(trouble(page)).toContainText('cannot be read')
    await expect(page.getByRole('button', { name: 'demo evening' })).toBeHidden()
    await page.goto('./#/board')
    await expect(trouble(page)).toContainText('cannot be read')
    const saved = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save a file' }).tap()
    expect((await saved).suggestedFilename()).toMatch(/^bucketside-.*\.txt$/)
    await page.goto('./#/room/keep')
    await expect(page.getByText('Last copy outside this phone: today.')).toBeVisible()
    await expect(page.getByText('Clear the table')).toBeHidden()
  })
}

test('writing refused: NOT SAVED on every screen, kept through a reload, and a file gets out', async ({
  page,
}) => {
  await sitting(page)
  await page.addInitScript(() => {
    if (sessionStorage.getItem('refuse') !== 'yes') return
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError')
    }
  })
  await page.evaluate(() => sessionStorage.setItem('refuse', 'yes'))
  await page.reload()
  await expect(page.locator('.bench')).toBeVisible()
  await page.waitForTimeout(500)
  await page.locator('[data-press="bar"]').first().tap()
  await expect(trouble(page)).toContainText('NOT SAVED')
  await page.goto('./#/buckets')
  await expect(trouble(page)).toContainText('NOT SAVED')
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a file' }).tap()
  await saved
  const kept = () =>
    page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('unsaved')).length)
  expect(await kept()).toBe(1)
  await page.evaluate(() => sessionStorage.removeItem('refuse'))
  await page.goto('./icon.svg')
  await page.goto('./#/bench')
  await expect(page.locator('.bench')).toBeVisible()
  await expect.poll(kept).toBe(0)
})

test(
  'a newer version in another window: said at once, and nothing sounds as done',
  LONG,
  async ({ context }) => {
    const page = await context.newPage()
    const before = await sitting(page)
    const other = await context.newPage()
    await other.goto('./icon.svg')
    await other.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('bucketside', 99)
          opening.onsuccess = () => {
            opening.result.close()
            resolve()
          }
        }),
    )
    await expect(trouble(page)).toContainText('A newer version is open')
    await page.locator('[data-press="bar"]').first().tap()
    await page.waitForTimeout(500)
    expect(await count(other)).toBe(before)
  },
)

/** Three evenings and more, up to the end of one: nothing asks for hands. */
function evenings() {
  const events = season(600)
  const end = events.findIndex(({ event }, i) => i > 300 && event.kind === 'table-cleared')
  return recordsOf(events.slice(0, end))
}

// It waits for a start to be quiet: left to `npm run prove`.
test('at a quiet start what lies singly is packed, and the table is the same', LONG, async ({ page }) => {
  const records = evenings()
  expect(records.length).toBeGreaterThan(300)
  await page.goto('./')
  await opened(page)
  await plantRecords(page, records)
  await page.goto('./#/board')
  await page.reload()
  await opened(page)
  const tiles = () => page.locator('.board-tiles').textContent()
  const before = await tiles()
  const packs = async () => (await storedIds(page)).filter((key) => key.startsWith('pack'))
  expect(await packs()).toEqual([])
  await expect.poll(async () => (await packs()).length, { timeout: 60_000 }).toBe(1)
  await expect.poll(() => count(page)).toBe(1)
  await page.reload()
  await opened(page)
  expect(await tiles()).toBe(before)
})
