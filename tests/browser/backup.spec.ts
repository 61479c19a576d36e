/** A file from another phone: looked into, then joined or left. */
import { expect, test } from '@playwright/test'
import { writeBackup } from '../../src/store/backup.ts'
import { armed, recordsOf } from '../fixtures/season.ts'
import { key, open, type } from './desk-page.ts'

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
  const made = `Made 2026-03-04: ${records.length} records, 8 pots. ${records.length} not here yet.`
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
  await key(page, 'Join with this table').click()
  await expect(page.getByText(`${records.length} new, 0 known already.`)).toBeVisible()
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(8)
  await open(page, 'room/keep')
  await choose(text)
  await expect(page.getByText('0 not here yet.')).toBeVisible()
})
