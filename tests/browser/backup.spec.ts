/** A file from another phone: looked into, then joined or left. */
import { type Browser, expect, type Page, test } from '@playwright/test'
import { writeBackup } from '../../src/store/backup.ts'
import { hall, laidOn, PhoneAtTable } from '../fixtures/phones.ts'
import { armed, recordsOf } from '../fixtures/season.ts'
import { key, misfits, open, type } from './desk-page.ts'

test('what is no backup is refused and changes nothing', async ({ page }) => {
  await open(page, 'board')
  await key(page, /Name your buckets/).click()
  await type(page, 'Name of the glaze', 'Fenwater')
  await key(page, /^Save$/).click()
  await open(page, 'room/keep')
  await page
    .getByLabel('Take in a backup')
    .last()
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"pots":[]}') })
  await expect(page.getByRole('alert')).toHaveText('Not a backup of ours. Nothing was changed.')
  await open(page, 'buckets')
  await expect(page.getByText('Fenwater')).toBeVisible()
})

test('a backup is shown before it is taken in, and a fresh phone has all of it then', async ({ page }) => {
  await open(page, 'board')
  const choose = (text: string) =>
    page
      .getByLabel('Take in a backup')
      .last()
      .setInputFiles({ name: 'b.txt', mimeType: 'text/plain', buffer: Buffer.from(text) })
  const records = recordsOf(armed(Date.UTC(2026, 2, 4, 18)))
  const text = writeBackup(records, { at: Date.UTC(2026, 2, 4, 18), tz: 0 })
  await open(page, 'room/keep')
  await choose(text)
  const made = `Made 2026-03-04: ${records.length} notes, 8 pots. ${records.length} not here yet.`
  await expect(page.getByText(made)).toBeVisible()
  await key(page, 'Leave it').click()
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(0)
  await open(page, 'room/keep')
  const lines = text.split('\n')
  await choose([...lines.slice(0, 5), ...lines.slice(6)].join('\n'))
  await expect(
    page.getByText(`The file is not whole: ${records.length - 1} of ${records.length}.`),
  ).toBeVisible()
  await choose(text)
  await expect(page.getByText('Is this phone to go on as the one that made the file?')).toBeVisible()
  expect(await page.evaluate(misfits)).toEqual([])
  await key(page, 'Yes: that one is lost or replaced').click()
  await expect(page.getByText(`${records.length} new, 0 known already.`)).toBeVisible()
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(8)
  await open(page, 'room/keep')
  await choose(text)
  await expect(page.getByText('0 not here yet.')).toBeVisible()
  await expect(key(page, 'Join with this table')).toBeVisible()
})

test('says what the second copy survives, and what the browser promised', async ({ page }) => {
  await page.addInitScript(() => {
    const say = (name: string, said: boolean) =>
      Object.defineProperty(navigator.storage, name, { value: () => Promise.resolve(said) })
    say('persisted', false)
    say('persist', true)
  })
  await open(page, 'room/keep')
  await expect(page.getByText(/^A second copy on this phone .* losing the phone takes both/)).toContainText(
    'may throw it away',
    { timeout: 30_000 },
  )
  await open(page, 'buckets/new')
  await type(page, 'Name of the glaze', 'Fenwater')
  await key(page, /^Save$/).click()
  await open(page, 'room/keep')
  await expect(page.getByText(/^A second copy/)).toContainText('promised to throw nothing away')
})

test('the pan that is on at the phone that made a file is asked about at another only where it goes on as that one', async ({
  page,
  context,
}) => {
  const at = hall()
  at.nowMs = Date.now() - 1_000_000
  const made = laidOn(new PhoneAtTable('made', at)).act({ do: 'wax-pan', is: 'on' })
  const text = writeBackup(made.records, { at: at.nowMs, tz: 0 }, [], 0, 'made')
  const asked = async (on: Page, answer: RegExp) => {
    await open(on, 'room/keep')
    await on
      .getByLabel('Take in a backup')
      .last()
      .setInputFiles({ name: 'b.txt', mimeType: 'text/plain', buffer: Buffer.from(text) })
    await key(on, answer).click()
    await expect(on.getByRole('status').filter({ hasText: 'new' })).toBeVisible()
    await on.goto('./#/bench')
    return on.getByText(/Wax pan is ON/)
  }
  await expect(await asked(page, /^Yes: that one/)).toBeVisible()
  const other = await (context.browser() as Browser).newContext()
  const there = await other.newPage()
  const pan = await asked(there, /^No: another phone/)
  await expect(there.locator('.bench [data-press="bar"]').first()).toBeVisible()
  await expect(pan).toBeHidden()
  await other.close()
})

test('a phone on which only its hand was chosen goes on as a lost one: asked of its clock, in its language, with its pan', async ({
  page,
}) => {
  const at = hall()
  at.nowMs = Date.now() - 1_000_000
  const made = laidOn(new PhoneAtTable('made', at, -600_000))
  made.act({ do: 'set-settings', settings: { language: 'es' } }).act({ do: 'wax-pan', is: 'on' })
  made.act({ do: 'waxed', potId: 'made-0' }).act({ do: 'wiped', potId: 'made-0' })
  made.act({ do: 'stirred', bucketId: 'made-bucket' })
  made.act({ do: 'start', potId: 'made-0', again: false, unstirred: false })
  at.nowMs += 60_000
  const text = writeBackup(made.records, { at: made.clockMs, tz: 0 }, [], 0, 'made')
  await open(page, 'room/phone')
  await page.getByText('left', { exact: true }).first().click()
  await open(page, 'room/keep')
  await page
    .getByLabel('Take in a backup')
    .last()
    .setInputFiles({ name: 'b.txt', mimeType: 'text/plain', buffer: Buffer.from(text) })
  await key(page, /^Yes: that one/).click()
  await expect(page.getByText(/^That phone’s clock showed/)).toBeVisible()
  await expect(page.getByText(/^Neither\? Its waits may be wrong/)).toBeVisible()
  expect(await page.evaluate(misfits)).toEqual([])
  await key(page, 'It was made just now').click()
  await expect(page.getByText('Incorporar una copia').first()).toBeVisible()
  await page.goto('./#/bench')
  await expect(page.locator('.bench')).toContainText('cera')
})
