/** A copy outside the phone that is due is said where the hands rest, and one tap makes it. */
import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { almostDone } from '../fixtures/almost-done.ts'
import { BenchPage, EVENING, fetched } from './bench.ts'
import { key, misfits, open } from './desk-page.ts'

/** All coats are on, and all is put away but for what is left out of `done`; four pots stand there. */
const put = (...done: readonly TableEvent[]): TableEvent[][] => {
  const gone = [35, 36, 37, 38].map((number): TableEvent => ({ kind: 'pot-gone', potId: `demo.${number}` }))
  const lids = ['gatepost', 'heather', 'brackwater'].map(
    (name): TableEvent => ({ kind: 'lid-on', bucketId: `demo.${name}` }),
  )
  return [...almostDone(EVENING.getTime(), 0), gone, lids, [...done]]
}
const NEVER = 'No copy outside this phone yet.'

test('a copy that is due is told on the closing card and the board, not now keeps it quiet for a week', async ({
  page,
}) => {
  test.setTimeout(90_000)
  const bench = await BenchPage.on(page, put({ kind: 'tools-washed' }, { kind: 'floor-mopped' }))
  const { clock } = page
  const line = page.getByText(NEVER)
  await fetched(bench.face.getByText(NEVER))
  await clock.runFor(500)
  await page.getByRole('button', { name: 'Not now' }).tap()
  await clock.runFor(500)
  await expect(line).toBeHidden()
  await page.goto('./#/board')
  await page.reload()
  await clock.runFor(2000)
  await expect(page.locator('.tile').first()).toBeVisible()
  await clock.runFor(1000)
  await expect(line).toBeHidden()
  // A week later.
  await clock.fastForward(8 * 86_400_000)
  await clock.runFor(1000)
  await page.reload()
  await fetched(line)
  expect(await page.evaluate(misfits)).toEqual([])
  await page.evaluate(() => {
    const make = URL.createObjectURL
    URL.createObjectURL = () => {
      URL.createObjectURL = make
      throw new Error('no room')
    }
  })
  await key(page, 'Back up').tap()
  await clock.runFor(500)
  await expect(page.getByText('There is no new copy.')).toBeVisible()
  expect(await page.evaluate(misfits)).toEqual([])
  const saved = page.waitForEvent('download')
  await key(page, 'Back up').tap()
  expect((await saved).suggestedFilename()).toBe('bucketside-2026-03-11.txt')
  await clock.runFor(500)
  await expect(line).toBeHidden()
})

test('while anything is left to do nobody is asked for a copy', async ({ page }) => {
  const bench = await BenchPage.on(page, put({ kind: 'tools-washed' }))
  await page.clock.runFor(2000)
  await expect(bench.face).toContainText('Mop it wet')
  await open(page, 'board')
  await page.clock.runFor(2000)
  await expect(page.locator('.tile').first()).toBeVisible()
  await expect(page.getByText(NEVER)).toBeHidden()
})
