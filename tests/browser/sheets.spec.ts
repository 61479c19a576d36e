import { expect, test } from '@playwright/test'
import { parse } from 'csv-parse/sync'
import { glazed } from '../fixtures/glazed.ts'
import { BenchPage, EVENING, fetched } from './bench.ts'
import { unzipped } from './unzipped.ts'

test('the records leave as sheets that another program reads', async ({ page }) => {
  await BenchPage.on(page, glazed(EVENING.getTime()))
  await page.goto('./#/room/keep')
  const key = page.getByRole('button', { name: 'Spreadsheet and pictures' })
  await fetched(key)
  const passed = page.waitForEvent('download')
  await key.tap()
  const file = await passed
  expect(file.suggestedFilename()).toBe('bucketside-2026-03-03.zip')
  const files = await unzipped(await file.path())
  expect([...files.keys()].sort()).toEqual([
    'coats.csv',
    'loads.csv',
    'photos.csv',
    'pots.csv',
    'readings.csv',
    'results.csv',
  ])
  const rows = (name: string): Record<string, string>[] =>
    parse(files.get(name)?.toString('utf8') ?? '', { bom: true, columns: true })
  expect(rows('pots.csv')).toHaveLength(8)
  expect(rows('pots.csv')[0]).toMatchObject({ pot: '31', place: 'A 1', 'coats on it': '3' })
  // Of the last coat, 30 hours before.
  expect(rows('coats.csv').findLast(({ pot }) => pot === '31')).toMatchObject({
    'lifted, local time': '2026-03-02 12:00:00',
    'lifted, UTC': '2026-03-02T12:00:00Z',
  })
  await expect(page.getByText('Saved as a file.')).toBeVisible()
})
