import { expect, test } from '@playwright/test'
import { toldDip } from '../fixtures/told-dip.ts'
import { twelve } from '../fixtures/twelve.ts'
import { BenchPage, EVENING } from './bench.ts'

test('hands are free: a row a pot dries before the eye, and a touch on it opens that pot', async ({
  page,
}) => {
  const bench = await BenchPage.on(page, [
    ...twelve(['GB'], 2),
    [{ kind: 'stirred', bucketId: 'B' }],
    [toldDip({ potId: 't.1', outAt: EVENING.getTime(), bucketId: 'G' })],
    [toldDip({ potId: 't.2', outAt: EVENING.getTime() + 90_000, bucketId: 'G' })],
    ['t.1', 't.2'].map((potId) => ({ kind: 'sponged', potId, implied: true }) as const),
  ])
  await bench.pass(120)
  await expect(bench.face).toContainText('Free for')
  // Ringing with the screen off is offered first.
  await page.clock.runFor(450)
  await page.locator('.bar-answer-small').tap()
  await page.clock.runFor(450)
  const rows = page.locator('button.due')
  await expect(rows).toHaveCount(2)
  /** Heights of what is drawn wet, a row each. */
  const drawn = (of: string) =>
    page.locator(of).evaluateAll((all) => all.map((one) => Number(one.getAttribute('height'))))
  const [first = 0, second = 0] = await drawn('.due-damp')
  expect(second).toBeGreaterThan(first)
  // The film is in the wall after the first seconds of the wait, not at its end.
  expect(await drawn('.due-film')).toEqual([0, 0])
  // Of the minutes of this room nine in ten are still to come; its walls are thick, and nearly dry.
  expect(first).toBeGreaterThan(0)
  expect(first).toBeLessThan(20)
  await bench.pass(8)
  expect((await drawn('.due-damp'))[0]).toBeLessThan(first)
  // An order that is told may bring a key below the rows: the first keeps its place.
  await bench.settled()
  await rows.first().tap()
  // The page of a pot is fetched when the thread is free.
  await expect(async () => {
    await page.clock.runFor(50)
    await expect(page.getByRole('heading', { level: 1 })).toContainText('1', { timeout: 200 })
  }).toPass({ timeout: 10_000 })
  expect(new URL(page.url()).hash).toContain('t.1')
  await page.locator('.desk-back').tap()
  await page.clock.runFor(500)
  await expect(page.locator('.dues')).toBeVisible()
})

test('rows that have no room stretch the axis of none that is shown', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 640 })
  const ids = ['t.1', 't.2', 't.3', 't.4', 't.5', 't.6']
  const bench = await BenchPage.on(page, [
    ...twelve(['GB'], ids.length),
    [{ kind: 'stirred', bucketId: 'B' }],
    ...ids.map((potId, i) => [
      toldDip({ potId, outAt: EVENING.getTime() + i * 20_000, bucketId: 'G' }),
      { kind: 'sponged', potId, implied: true } as const,
    ]),
  ])
  await bench.pass(130)
  await page.clock.runFor(450)
  const offer = page.locator('.bar-answer-small')
  if (await offer.isVisible()) await offer.tap()
  await page.clock.runFor(450)
  const rows = page.locator('.due')
  await expect(rows.first()).toBeVisible()
  expect(await rows.count()).toBeLessThan(ids.length)
  const ticks = await page
    .locator('.due-span > b')
    .evaluateAll((all) => all.map((one) => Number.parseFloat((one as HTMLElement).style.left)))
  expect(Math.max(...ticks)).toBeCloseTo(80, 0)
})
