import { expect, test } from '@playwright/test'
import { again, demo, key, open, option, type } from './desk-page.ts'

/** Setting boards, on the built app: a class of forty, alike and unlike, in order, with exceptions. */

const MOST_HITS = 120

test('a class of forty from nothing: bucket, stack and pots, exceptions and order, in few hits', async ({
  page,
}, info) => {
  test.setTimeout(60_000)
  let hits = 0
  const hit = async (target: ReturnType<typeof key>) => {
    await target.click()
    hits++
  }
  /** Typing is one hit a character, and one into the field. */
  const fill = async (label: string, text: string) => {
    await type(page, label, text)
    hits += 1 + text.length
  }
  await open(page, 'board')
  await hit(key(page, /Name your buckets/))
  await fill('Name of the glaze', 'Fen')
  await hit(key(page, /^Save$/))
  await hit(key(page, /Put pots on the board/))
  const lots = [
    ['beaker', /small/, 6],
    ['bowl', /medium/, 6],
    ['cup', /small/, 8],
    ['jar', /large/, 4],
    ['plate', /medium/, 6],
    ['bottle', /medium/, 4],
    ['cylinder', /small/, 5],
  ] as const
  for (const [form, size, copies] of lots) {
    await hit(option(page, form))
    for (let i = 1; i < copies; i++) await hit(key(page, 'more'))
    await hit(key(page, size))
  }
  await hit(key(page, 'Done'))
  await hit(key(page, /^Pot 33 /))
  await hit(key(page, 'One more like it'))
  await expect(page.locator('.tile')).toHaveCount(40)

  // One exception: a thin wall. And one pot to another place.
  await hit(key(page, /^Pot 37 /))
  await hit(key(page, 'Measures and stack'))
  await fill('Wall', '3')
  await hit(key(page, /^Save$/))
  await expect(page.getByText('wall 3 mm')).toBeVisible()
  await hit(key(page, 'Move it on the board'))
  await hit(key(page, /^Pot 31 at A 1/))
  await expect(key(page, /^Pot 37 at A 1/)).toBeVisible()
  await expect(key(page, /^Pot 31 at B 3/)).toBeVisible()
  info.annotations.push({ type: 'hits for a class of 40', description: `${hits}` })
  expect(hits).toBeLessThan(MOST_HITS)
  await again(page)
  await open(page, 'board')
  await expect(key(page, /^Pot 37 at A 1/)).toBeVisible()
})

test('over Gatepost: what is proved, untried or went wrong is a list, entered by hand', async ({ page }) => {
  await demo(page)
  await open(page, 'buckets/demo.heather')
  await page.locator('summary', { hasText: 'On top of Heather' }).click()
  const line = key(page, /Brackwater/)
  await expect(line).toContainText('untried')
  await line.click()
  for (let i = 0; i < 4; i++) await key(page, 'Came out well +1').click()
  await expect(line).toContainText('proved 4 times')
  await key(page, 'Went wrong +1').click()
  await expect(line).toContainText('went wrong')
  await again(page)
  await page.locator('summary', { hasText: 'On top of Heather' }).click()
  await expect(line).toContainText('went wrong')
  // The other way round is another pair.
  await open(page, 'buckets/demo.brackwater')
  await page.locator('summary', { hasText: 'On top of Brackwater' }).click()
  await expect(key(page, /Heather/).filter({ hasText: 'untried' })).toBeVisible()
})

test('a cup on the scale gives the reading; the level says whether the board is covered', async ({
  page,
}) => {
  await demo(page)
  await open(page, 'buckets/demo.gatepost')
  await page.locator('summary', { hasText: 'Weigh a cup' }).click()
  await type(page, 'Cup empty', '52')
  await type(page, 'Cup with glaze', '205')
  await key(page, 'Take 1.53 as the reading').click()
  // 12 L from 1.53 to 1.45: 12 · 0.08 / 0.45 = 2.13 L, two thirds 1.4 L.
  await expect(page.getByText('Add 1.4 L of water first, stir, weigh again.')).toBeVisible()
  await expect(page.getByText('Stands 182 mm deep, 12 L. 9 dips to come')).toBeVisible()
  await type(page, 'Glaze in it now', '30')
  await key(page, 'Save the level').click()
  await expect(page.getByText(/Only 0.2 to 21.\d+ L/)).toBeVisible()
  await type(page, 'Glaze in it now', '9')
  await key(page, 'Save the level').click()
  await expect(page.getByText(/with 35 in it. It needs 200 mm: dip it first, or top up./)).toBeVisible()
  await key(page, 'Log a sieving').click()
  await expect(page.locator('.fill-log li')).toHaveCount(2)
})
