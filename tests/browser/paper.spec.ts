/** The class sheet as it comes out of a printer. */
import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { recordsOfHits } from '../fixtures/hits.ts'
import { opened, plantRecords } from './bench.ts'
import { key, open } from './desk-page.ts'

const NAMES = 12
const POTS = 40

/** Twelve people with 40 pots in all, on the demo's boards and beyond, two coats or three on each. */
function classOf40(): TableEvent[] {
  const laid = demoEvents()
  const pots = laid.flatMap((event) => (event.kind === 'pot-set' ? [event.pot] : []))
  const all = Array.from({ length: POTS }, (_, i): TableEvent => {
    const { lidOf: _lid, ...pot } = pots[i % pots.length]!
    const place = { board: 'ABCDE'[Math.floor(i / 8)] ?? 'E', spot: 1 + (i % 8) }
    return {
      kind: 'pot-set',
      pot: { ...pot, potId: `p${i}`, number: 31 + i, place, whose: `Potter ${1 + (i % NAMES)}` },
    }
  })
  return [...laid.filter(({ kind }) => kind !== 'pot-set'), ...all]
}

test('forty pots of twelve people: one page, a pot a line, below its name', async ({ page }) => {
  test.setTimeout(90_000)
  await open(page, 'room')
  await plantRecords(page, recordsOfHits([classOf40()], Date.now() - 60_000))
  await page.reload()
  await opened(page)
  await open(page, 'class')
  await key(page, 'Class sheet').tap()
  await expect(page.locator('.class-row')).toHaveCount(POTS)
  await expect(page.locator('.class-codes svg, .class-codes canvas, .class-codes img').first()).toBeVisible()
  const pdf = await page.pdf({
    format: 'A4',
    margin: { top: '10mm', bottom: '10mm', left: '10mm', right: '10mm' },
    ...(process.env.SHOTS ? { path: `${process.env.SHOTS}/class.pdf` } : {}),
  })
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1)
  await page.emulateMedia({ media: 'print' })
  // A4 within its margins, CSS px.
  await page.setViewportSize({ width: 718, height: 1047 })
  const split = await page.evaluate(() =>
    [...document.querySelectorAll('.class-rows section')].flatMap((section) => {
      const lefts = [...section.children].map((child) => Math.round(child.getBoundingClientRect().left))
      return new Set(lefts).size > 1 ? [section.textContent] : []
    }),
  )
  expect(split).toEqual([])
  // Up to three coats.
  const heights = await page.evaluate(() =>
    [...document.querySelectorAll('.class-row')]
      .filter((row) => row.querySelectorAll('.class-marks .swatch').length < 4)
      .map((row) => row.getBoundingClientRect().height),
  )
  expect(heights.length).toBeGreaterThan(POTS / 2)
  expect(Math.max(...heights)).toBeLessThan(30)
})
