import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { firedLoad, LOAD } from '../fixtures/opened.ts'
import { BenchPage, EVENING } from './bench.ts'
import { LONG } from './places.ts'

const judged = (potId: string): TableEvent[] => [
  { kind: 'taken-out', potId, loadId: LOAD },
  { kind: 'judged', potId, loadId: LOAD, run: { is: 'measured', mm: 4.5 }, faults: ['crawled'] },
]
const PAGES = [
  'board',
  'pot/demo.31',
  'stacks',
  'stacks/demo.tideline',
  'buckets/demo.brackwater',
  'results/demo.brackwater',
  'taught',
  'story/demo.36',
  'plots',
  'room',
] as const

test.describe('in Spanish', () => {
  test.use({ locale: 'es-ES' })

  test('no number has a point, in a field neither, but a shelf place', LONG, async ({ page }) => {
    test.setTimeout(120_000)
    await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'up'), judged('demo.36'), judged('demo.35')])
    const decimals = new Set<string>()
    for (const at of PAGES) {
      await page.goto(`./#/${at}`)
      await page.clock.runFor(1000)
      await expect(page.locator('.desk, .board, .open').first()).toBeVisible()
      await page.clock.runFor(1000)
      for (const more of await page.locator('summary, .more > button').all())
        if (await more.isVisible()) await more.tap()
      await page.clock.runFor(300)
      const typed = await page
        .locator('input')
        .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))
      const said = [...(await page.locator('body').allInnerTexts()), ...typed]
      for (const text of said) {
        // Shelf places: two levels of four.
        const points = text.match(/\d+\.\d+/g)?.filter((number) => !/^[12]\.[1-4]$/.test(number)) ?? []
        expect([at, points]).toEqual([at, []])
        for (const [decimal] of text.matchAll(/\d,\d/g)) decimals.add(`${at} ${decimal}`)
      }
    }
    expect(decimals.size).toBeGreaterThan(5)
  })
})
