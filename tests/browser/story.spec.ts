import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { firedLoad, LOAD } from '../fixtures/opened.ts'
import { BenchPage, EVENING } from './bench.ts'

const judged = (potId: string, place: string): TableEvent[] => [
  { kind: 'taken-out', potId, loadId: LOAD, place },
  { kind: 'judged', potId, loadId: LOAD, run: { is: 'measured', mm: 3 }, faults: ['crawled'] },
]

test('a fired pot is found by glaze, place or month, and told from its first coat to what came of it', async ({
  page,
}) => {
  const hits = [judged('demo.36', '2.2'), judged('demo.35', '2.1')]
  await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'up'), ...hits])
  await page.goto('./#/board')
  await page.getByRole('button', { name: 'Fired pots' }).tap()
  await page.clock.runFor(300)
  const rows = page.locator('.open-fired button')
  await expect(rows).toHaveCount(2)
  const search = page.getByRole('searchbox')
  await search.fill('brackwater')
  await page.clock.runFor(200)
  await expect(rows).toHaveCount(1)
  await expect(rows).toContainText('35')
  await search.fill('march 2.2')
  await page.clock.runFor(200)
  await expect(rows).toContainText('36')
  await search.fill('nowhere')
  await page.clock.runFor(200)
  await expect(page.locator('.desk')).toContainText('No pot answers to that.')
  await search.fill('36')
  await page.clock.runFor(200)
  await rows.tap()
  await page.clock.runFor(300)
  const story = page.locator('.open-story')
  await expect(story).toContainText(/Gatepost .*s, about 0\.\d mm/)
  for (const line of ['Loaded at 2.2', 'Cone 6 down', 'Lid open', 'Found: ran 3 mm, crawled'])
    await expect(story).toContainText(line)
  await page.locator('.desk-back').tap()
  await expect(search).toBeVisible()
})
