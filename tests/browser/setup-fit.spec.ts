import { expect, type Page, test } from '@playwright/test'
import axe from 'axe-core'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { opened, plant } from './bench.ts'
import { demo, key, misfits, open, option } from './desk-page.ts'

/** Sizes on the screens for clean hands, and barriers that a machine can find. */

const SCREENS = [
  'board',
  'pot',
  'pot/demo.35',
  'stacks',
  'stacks/demo.tideline',
  'stacks/new',
  'buckets',
  'buckets/demo.heather',
  'tile/demo.brackwater/demo.gatepost',
  'room',
  'room/air',
  'room/kiln',
  'room/clay',
  'room/count',
  'room/phone',
  'room/keep',
  'firing',
  'shelf',
]

for (const [width, height] of [
  [320, 568],
  [360, 640],
  [390, 844],
] as const)
  test(`nothing is small or cut off at ${width} x ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await demo(page)
    for (const screen of SCREENS) {
      await open(page, screen)
      await page.waitForTimeout(150)
      expect(await page.evaluate(misfits), screen).toEqual([])
    }
  })

test('no page is longer than three screens of 360 x 640', async ({ page }) => {
  await demo(page)
  const long: string[] = []
  for (const screen of SCREENS) {
    await open(page, screen)
    await page.waitForTimeout(150)
    // What the kiln makes of a stack comes last.
    if (screen.startsWith('stacks/')) await expect(page.locator('.look-verdict').first()).toBeVisible()
    const high = await page.evaluate(() => document.documentElement.scrollHeight)
    if (high > 3 * 640) long.push(`${screen}: ${(high / 640).toFixed(1)} screens`)
  }
  expect(long).toEqual([])
})

test('twelve tiles of the own table are seen at once at 360 x 640', async ({ page }) => {
  await page.goto('./')
  await opened(page)
  await plant(page, [demoEvents()], new Date())
  await page.reload()
  await open(page, 'pot')
  for (let i = 0; i < 4; i++) await key(page, /small/).click()
  await open(page, 'board')
  const tiles = page.locator('.tile')
  await expect(tiles).toHaveCount(12)
  for (const tile of await tiles.all()) {
    const box = await tile.boundingBox()
    expect(box!.width).toBeGreaterThanOrEqual(76)
    expect(box!.height).toBeGreaterThanOrEqual(112)
  }
  const last = await tiles.last().boundingBox()
  const nav = await page.locator('.board-nav').boundingBox()
  expect(last!.y + last!.height).toBeLessThanOrEqual(nav!.y)
})

/** What axe-core finds, with the first place of each. */
async function barriers(page: Page): Promise<string[]> {
  await page.evaluate(axe.source)
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run()
    return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)
  })
}

/** `npm run prove` looks at both. */
for (const theme of process.env.PROVE ? ['paper', 'dim'] : ['dim'])
  test(`no barrier that a machine can find, theme ${theme}`, async ({ page }) => {
    test.setTimeout(120_000)
    await demo(page)
    await open(page, 'room/phone')
    await option(page, theme).click()
    for (const screen of SCREENS) {
      await open(page, screen)
      expect(await barriers(page), screen).toEqual([])
    }
  })
