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
  await bench.pass(20)
  expect((await drawn('.due-damp'))[0]).toBeLessThan(first)
  await rows.nth(1).tap()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('2')
  expect(new URL(page.url()).hash).toContain('t.2')
})
