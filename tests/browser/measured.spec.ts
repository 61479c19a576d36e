import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { BenchPage, EVENING } from './bench.ts'
import { key, more, open, option, type } from './desk-page.ts'

const potId = 'demo.31'
const MIN_MS = 60_000

/** Pot 31 dipped an hour ago, *not yet* half an hour ago, then *dry*. */
const hour: readonly TableEvent[][] = [
  demoEvents(),
  [
    toldDip({ dipId: 'dip.0', potId, outAt: EVENING.getTime() - 60 * MIN_MS }),
    { kind: 'sponged', potId, implied: true },
  ],
  [{ kind: 'touched', potIds: [potId], dry: false }],
]

test('the day’s air from a cloth and a pair of thermometers, asked about after an hour', async ({ page }) => {
  test.setTimeout(90_000)
  const bench = await BenchPage.on(page, hour)
  await open(page, 'room/air')
  // Two thermometers: how the wet one hung is asked, and no air drier than dry is believed.
  await page.getByText('Two thermometers').click()
  await type(page, 'Wet one reads', '10')
  await option(page, 'in still air').click()
  await expect(page.getByText('No air is that dry')).toBeVisible()
  await option(page, 'in a draught').click()
  await expect(page.getByText('Humidity 14 %')).toBeVisible()
  await key(page, 'Take it').click()
  expect((await bench.table()).air.at(-1)?.air.rh).toBeCloseTo(0.14, 9)
  // Witness cloth: hung, and weighed again three quarters of an hour later.
  await page.getByText('Witness cloth').click()
  await type(page, 'Weighs now', '117')
  await key(page, 'Cloth is up').click()
  await page.clock.fastForward(45 * MIN_MS)
  await page.clock.runFor(1000)
  await type(page, 'Weighs now', '113')
  await key(page, 'Take the reading').click()
  await expect(page.getByText('Cloth lost 4.0 g in 45 min: slow air.')).toBeVisible()
  expect((await bench.table()).air.at(-1)?.air.cloth?.factor).toBeLessThan(0.5)
  // After an hour the board asks.
  await page.clock.fastForward(61 * MIN_MS)
  await open(page, 'board')
  await page.clock.runFor(1000)
  await page.getByText('Is it still so?').click()
  await key(page, 'No change').click()
  await expect(page.getByText('Is it still so?')).toBeHidden()
})

test('what the room has taught is listed, how many and how wide, and can be left out', async ({ page }) => {
  await BenchPage.on(page, hour)
  await open(page, 'room/air')
  await page.clock.runFor(500)
  await expect(
    page.getByText(
      /From 1 check:.*Coats wait (\d+ % (longer|shorter) than|as long as) estimated \([+−]\d+ to [+−]\d+ %\)/,
    ),
  ).toBeVisible()
  await key(page, 'Leave out').click()
  await expect(page.getByText('Nothing yet.')).toBeVisible()
  await key(page, 'Count it').click()
  await expect(page.getByText('From 1 check:')).toBeVisible()
})

test('a room that has changed has its boards learned anew, unless that was said by mistake', async ({
  page,
}) => {
  await BenchPage.on(page, [
    demoEvents(),
    [toldDip({ dipId: 'dip.0', potId, outAt: EVENING.getTime() - 20 * MIN_MS })],
    [{ kind: 'touched', potIds: [potId], dry: true }],
  ])
  await open(page, 'room/air')
  await page.clock.runFor(500)
  const changed = key(page, 'The room has changed')
  await changed.click()
  await expect(page.getByText(/^Boards are learned anew since/)).toBeVisible()
  await expect(changed).toBeHidden()
  await key(page, 'It has not: count all again').click()
  await expect(changed).toBeVisible()
})

test('a stack that fills the wall says so; inside tonight, outside tomorrow is taken in one tap', async ({
  page,
}) => {
  const bench = await BenchPage.on(page, [demoEvents()])
  await open(page, 'stacks/demo.tideline')
  await page.clock.runFor(3000)
  await expect(page.getByText(/The wall fills at coat \d/)).toBeVisible()
  await key(page, /^Inside tonight/).click()
  await page.clock.runFor(3000)
  await expect(page.locator('.coat')).toHaveCount(4)
  await expect(page.getByText('pour the inside').first()).toBeVisible()
  await key(page, /^Save$/).click()
  await page.clock.runFor(500)
  const { stacks } = await bench.table()
  expect(stacks['demo.tideline']?.coats.map(({ cover }) => cover.kind)).toEqual([
    'inside',
    'upTo',
    'toSkirt',
    'collar',
  ])
})

test('a weighed slide: a film no glaze leaves is refused, a likely one is kept with its bucket', async ({
  page,
}) => {
  const bench = await BenchPage.on(page, [demoEvents()])
  await open(page, 'buckets/demo.gatepost')
  await more(page, 'How thick it goes on')
  await page.getByText('Film on a full wall').click()
  await type(page, 'The slide gained', '15')
  await expect(page.getByText('No glaze leaves such a film')).toBeVisible()
  await type(page, 'The slide gained', '')
  await expect(page.getByText('No glaze leaves such a film')).toBeHidden()
  await type(page, 'The slide gained', '0.9')
  await expect(page.getByText('A full wall keeps 0.12 mm; its yield stress is 2.9 Pa at most.')).toBeVisible()
  await key(page, 'Take it').last().click()
  await expect(page.getByText('By its slide, a full wall keeps 0.12 mm.')).toBeVisible()
  await key(page, /^Save$/).click()
  await page.clock.runFor(500)
  const { buckets } = await bench.table()
  expect(buckets['demo.gatepost']?.facts.clingsGramsPerCm2).toBeCloseTo(0.03, 9)
})

test('before a sitting the board and the clay say what one measurement would buy', async ({ page }) => {
  await BenchPage.on(page, [demoEvents()])
  for (const at of ['board', 'room/clay']) {
    await open(page, at)
    await page.clock.runFor(2000)
    const line = page.getByText(/Waits are known to a factor of \d/)
    await expect(line).toBeVisible()
    await expect(line).toHaveText(/Pot \d+ on a kitchen scale, bare and right after coat \d: factor \d/)
  }
})

test('after three touches the board says what they bought', async ({ page }) => {
  const potIds = ['demo.31', 'demo.32', 'demo.33']
  await BenchPage.on(page, [
    demoEvents(),
    ...potIds.map((id): TableEvent[] => [
      toldDip({ potId: id, outAt: EVENING.getTime() - 20 * MIN_MS }),
      { kind: 'sponged', potId: id, implied: true },
    ]),
    ...potIds.map((id): TableEvent[] => [{ kind: 'touched', potIds: [id], dry: true }]),
  ])
  await open(page, 'board')
  await page.clock.runFor(2000)
  await expect(page.getByText(/^3 checks brought waits from a factor of [\d.]+ to [\d.]+\./)).toBeVisible()
  await expect(page.getByText(/Waits are known to/)).toBeHidden()
})

test('a pot weighed dry and after its seconds in water tells the clay once, and stands wet from then on', async ({
  page,
}) => {
  const bench = await BenchPage.on(page, [demoEvents()])
  await open(page, 'room/clay')
  await page.getByText('One pot in water').click()
  await type(page, 'Dry', '310')
  await type(page, 'Wet', '910')
  await expect(page.getByText('No pot does that: weigh again.')).toBeVisible()
  await type(page, 'Wet', '323')
  await key(page, 'Take it').click()
  await page.clock.runFor(500)
  // Told once, with its way back; the fields are the next pot's, and empty.
  await expect(page.getByText('This clay drinks 35 % faster than assumed.')).toHaveCount(1)
  await expect(key(page, 'Take it')).toBeHidden()
  await expect(page.getByLabel('Dry', { exact: true })).toHaveValue('')
  await expect(option(page, '31')).toBeHidden()
  const { pots, board } = await bench.table()
  expect(board.sorptivityMmPerSqrtS).toBeCloseTo(0.133, 3)
  expect(pots[potId]?.damp?.water).toBe('washed')
  await open(page, 'board')
  const tile = page.locator('.tile', { hasText: '31' }).first()
  await page.clock.runFor(1000)
  await expect(tile.locator('.tile-state')).toHaveText(/min|h/)
})
