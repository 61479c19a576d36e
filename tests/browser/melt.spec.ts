import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import type { CoatFacts } from '../../shared/nouns.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { BenchPage, EVENING, tellTime } from './bench.ts'
import { again, demo, fieldOf, key, open, option, type } from './desk-page.ts'

/** What the kiln will do, on the built app: short foot room at the bench, flow tiles, firing, look-ahead. */

const POT = 'demo.35'
const MIN_MS = 60_000

/** Pot 35 alone, its inside poured and Gatepost on, with Brackwater to full depth to come. */
function shortFoot(): TableEvent[][] {
  const away = [31, 32, 33, 34, 36, 37, 38].map((n): TableEvent => ({ kind: 'pot-gone', potId: `demo.${n}` }))
  const coats: readonly CoatFacts[] = [
    { bucketId: 'demo.gatepost', cover: { kind: 'inside' }, holdS: 3 },
    { bucketId: 'demo.gatepost', cover: { kind: 'full' }, holdS: 4 },
    { bucketId: 'demo.brackwater', cover: { kind: 'full' }, holdS: 3 },
  ]
  const done = coats.slice(0, 2).map(
    ({ bucketId, cover, holdS }, coat): TableEvent =>
      toldDip({
        dipId: `early.${coat}`,
        potId: POT,
        coat,
        bucketId,
        cover,
        holdS,
        outAt: EVENING.getTime() - (20 - coat * 8) * MIN_MS,
      }),
  )
  return [
    demoEvents(),
    [...away, { kind: 'plan-changed', potId: POT, coats }],
    [
      { kind: 'waxed', potId: POT, implied: true },
      { kind: 'wiped', potId: POT, implied: false },
      ...done,
      { kind: 'sponged', potId: POT, implied: true },
      { kind: 'set-down', potId: POT, implied: true },
      { kind: 'touched', potIds: [POT], dry: true },
    ],
  ]
}

test('short foot room: warned before dipping, a higher edge in one hit (scenario 7)', async ({ page }) => {
  const bench = await BenchPage.on(page, shortFoot())
  await bench.hit()
  await expect(bench.bar).toContainText('START')
  await expect(bench.face.locator('.alarm')).toContainText(
    /May run down its \d mm of bare foot onto the shelf/,
  )
  await page.clock.runFor(450)
  await bench.face.locator('.warning-key').tap()
  await page.clock.runFor(450)
  await expect(page.locator('.warnings')).toContainText(/Stop at \d+ mm up, or use a catch slab/)
  await page.locator('.other').getByRole('button', { name: 'Keep it off the shelf' }).tap()
  await page.clock.runFor(450)
  await expect(page.getByRole('button', { name: /^Catch slab/ })).toBeVisible()
  await expect(page.getByRole('button', { name: /^Stack Doorstep/ })).toBeVisible()
  await page.clock.runFor(450)
  await page.getByRole('button', { name: /^Brackwater down to \d+ mm.*off the shelf/ }).tap()
  await page.clock.runFor(100)
  await expect(bench.face).not.toContainText('onto the shelf')
  expect((await bench.pot(35)).ownPlan?.[2]?.cover.kind).toBe('downTo')
})

test('a flow tile: refused beside the field with its range, kept, and removed', async ({ page }) => {
  await demo(page)
  await open(page, 'tile/demo.heather')
  await option(page, 'over Brackwater').click()
  await expect(page.getByText('it stays untried')).toBeVisible()
  await type(page, 'Dry coat', '9')
  await expect(fieldOf(page, 'Dry coat').getByRole('alert')).toHaveText('Only 0.05 to 3 mm.')
  await type(page, 'Run, mean', '2.5')
  await type(page, 'Longest drip', '1')
  await key(page, 'Keep this tile').click()
  await expect(page.locator('.tile-list li')).toHaveCount(0)
  await type(page, 'Dry coat', '1')
  await key(page, 'Keep this tile').click()
  await expect(fieldOf(page, 'Longest drip').getByRole('alert')).toHaveText('Only 2.5 to 400 mm.')
  await type(page, 'Longest drip', '6')
  await type(page, 'Cone', '66')
  await key(page, 'Keep this tile').click()
  await expect(fieldOf(page, 'Cone').getByRole('alert')).toHaveText('No such cone: 022 to 10.')
  await type(page, 'Cone', 'cone 6')
  await expect(page.getByText('Gives a flow dose of 10 /mm.')).toBeVisible()
  await key(page, 'Keep this tile').click()
  await expect(page.locator('.tile-list')).toContainText('1.0 mm ran 2.5 mm')
  await again(page)
  await expect(page.locator('.tile-dose')).toContainText(/Flow dose 10 \/mm.*drips run 2\.4 times/)
  await open(page, 'stacks')
  await expect(page.getByText('No tile would change what goes on a slab here.')).toBeVisible()
  await open(page, 'tile/demo.heather/demo.brackwater')
  await key(page, 'Remove').click()
  await expect(page.locator('.tile-list li')).toHaveCount(0)
  await key(page, 'Take back').click()
  await expect(page.locator('.tile-list li')).toHaveCount(1)
})

test('a top temperature that disagrees with the cone is asked about, and nothing is changed', async ({
  page,
}) => {
  await demo(page)
  await open(page, 'firing')
  await type(page, 'Top temperature', '2300 F')
  const query = page.locator('.firing-query')
  await expect(query).toContainText('1260 °C goes with cone 9. Cone 6 falls at 1222 °C.')
  await expect(page.getByLabel('Cone', { exact: true })).toHaveValue('6')
  await again(page)
  await expect(query).toBeVisible()
  await query.getByRole('button', { name: 'Cone 9' }).click()
  await expect(query).toBeHidden()
  await open(page, 'tile/demo.brackwater')
  await expect(page.locator('.tile-dose')).toContainText('Carried over from cone 6 to 9')
})

test('the stack softens on the pot that is shown, and a remedy is one tap', async ({ page }) => {
  await tellTime(page, EVENING)
  await demo(page)
  await open(page, 'stacks/demo.tideline')
  const look = page.locator('.look')
  const settle = () => page.clock.runFor(2000)
  await settle()
  await expect(look).toContainText('Heather over Brackwater: untried')
  for (let i = 0; i < 3; i++) {
    await key(page, 'Other pot').click()
    await settle()
  }
  await expect(look).toContainText('cone 6: over, it can reach the shelf')
  // A busy machine looks too late: the play waits for it.
  await page.clock.pauseAt(await page.evaluate(() => Date.now() + 1000))
  await key(page, 'Watch it melt').click()
  await expect(option(page, 'raw')).toBeChecked()
  await page.clock.runFor(6000)
  await expect(option(page, 'cone 7')).toBeChecked()
  await look.locator('summary', { hasText: 'To mend Brackwater' }).click()
  await look.getByRole('button', { name: /^Brackwater down to \d+ mm.*off the shelf/ }).click()
  await settle()
  await expect(look).toContainText('cone 6: near')
  await expect(page.locator('.coats')).toContainText(/down to \d+\smm up/)
})

test('whom motion disturbs sees three stills', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await demo(page)
  await open(page, 'stacks/demo.doorstep')
  await expect(page.locator('.look-stills li')).toHaveText(['raw', 'cone 6', 'cone 7'])
  await expect(key(page, 'Watch it melt')).toHaveCount(0)
  await expect(page.locator('.look')).toContainText('cone 6: clear of the foot line')
})
