import { expect, test } from '@playwright/test'
import { almostDone } from '../fixtures/almost-done.ts'
import { BenchPage, EVENING } from './bench.ts'
import { measure } from './measure.ts'
import { dip, workUntil } from './moments/story.ts'

test('the end of the demo evening: by the bar alone, offline and over a reload', async ({
  page,
  context,
}) => {
  test.setTimeout(120_000)
  const bench = await BenchPage.on(page, almostDone(EVENING.getTime()))
  const { clock } = page
  await workUntil(bench, /START/)
  await context.setOffline(true)
  await dip(bench)
  await bench.hit()
  await bench.pass(11)
  await expect(bench.face).toContainText('Pour it back into Heather')
  await bench.hit()

  // The bucket that is open comes first; its level is the read one less what the dips took.
  await expect(bench.face).toContainText('Lid on Heather')
  await expect(bench.face).toContainText('181 mm deep')
  await bench.hit()
  const { level, lid } = (await bench.table()).buckets['demo.heather']!
  expect(level!.litres).toBeLessThan(12)
  expect(lid!.at).toBe(level!.at)

  // A hit too many is taken back, and put back.
  await expect(bench.face).toContainText('Lid on Gatepost')
  await bench.hit()
  await clock.runFor(450)
  await page.locator('.strip-take-back').tap()
  // It is folded anew, a slice at a time: each waits for a timer.
  await expect(async () => {
    await clock.runFor(50)
    await expect(bench.face).toContainText('Lid on Gatepost', { timeout: 200 })
  }).toPass()

  // Another figure is typed where the bucket's own page has it, and the lid goes on with it.
  await context.setOffline(false)
  await clock.runFor(450)
  await page.locator('.bar-answer-small').tap()
  await clock.runFor(500)
  const field = page.getByLabel('Glaze in it now')
  await field.fill('9.5')
  await page.getByRole('button', { name: 'Save the level' }).tap()
  await clock.runFor(500)
  await expect(bench.face).toContainText('9.5 L as you read it')
  await bench.hit()
  await expect(bench.face).toContainText('Lid on Brackwater')
  await bench.hit()
  expect((await bench.table()).buckets['demo.gatepost']!.level!.litres).toBe(9.5)

  // The phone is opened anew in between: what was done stands.
  await page.reload()
  await clock.runFor(1500)
  await expect(bench.face).toContainText('Tools into the settling bucket')
  await bench.hit()
  await expect(bench.face).toContainText('check the foot of 34')
  await bench.hit()
  // Right after a key that asks for a pot another knock does nothing.
  await bench.pass(1)
  await bench.hit()

  // The floor comes last. The mop is left out, and told of on the last card until it is done.
  await expect(bench.face).toContainText('never sweep')
  await bench.other('Leave this step out')
  await clock.runFor(50)
  await expect(page.locator('.closed-sum')).toHaveText('8 pots22 coats')
  await expect(page.locator('.closed-dry li')).toHaveCount(6)
  await expect(page.locator('.closed-dry li').first()).toContainText(/^31\d\d:\d\d–\d\d:\d\dtomorrow$/)
  await clock.runFor(450)
  await page.getByRole('button', { name: 'Left out: mop' }).tap()
  await clock.runFor(50)
  await expect(page.getByText('Left out')).toHaveCount(0)
  await expect(page.locator('.closed-dry li')).toHaveCount(8)
  // Dry over midnight, a row names two days.
  await page.evaluate(() => {
    const day = document.querySelector('.closed-dry li:nth-child(6) small')
    day?.classList.add('closed-days')
    if (day) day.textContent = 'today – tomorrow'
  })
  expect((await measure(page)).hidden).toEqual([])

  // What would help, in one tap: the hours on the card are sooner by it.
  const last = () => page.locator('.closed-dry li').nth(4).textContent()
  const before = await last()
  await clock.runFor(450)
  await page.getByRole('button', { name: 'DRY SOONER' }).tap()
  for (let i = 0; i < 60 && (await page.locator('.way').count()) === 0; i++) await clock.runFor(100)
  await expect(page.locator('.way').first()).toContainText('Fan close to the pots')
  await clock.runFor(450)
  await page.locator('.way').first().tap()
  await clock.runFor(500)
  expect(await last()).not.toBe(before)
  expect((await bench.table()).air.at(-1)!.air.draught).toBe('fanClose')

  // What comes next is one key away.
  await clock.runFor(450)
  await page.getByRole('button', { name: 'LOAD THE KILN' }).tap()
  await expect(page).toHaveURL(/#\/shelf/)
})
