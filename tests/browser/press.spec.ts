import type { CDPSession, Page } from '@playwright/test'
import { expect, test } from '@playwright/test'
import { openHarness } from './harness/page.ts'

interface Contact {
  readonly x: number
  readonly y: number
  readonly id: number
  readonly radius?: number
}

let touch: CDPSession
test.use({ viewport: { width: 360, height: 640 }, hasTouch: true })
test.beforeEach(async ({ page, context }) => {
  await openHarness(page, 'press')
  touch = await context.newCDPSession(page)
})

const BAR = { x: 180, y: 500 }
const send = (type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel', contacts: readonly Contact[]) =>
  touch.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: contacts.map(({ x, y, id, radius = 8 }) => ({ x, y, id, radiusX: radius, radiusY: radius })),
  })
const take = (page: Page) => page.evaluate(() => window.pressHarness.take())

async function knuckle(
  page: Page,
  at: { x: number; y: number },
  lastsMs: number,
  radius: number,
): Promise<void> {
  await send('touchStart', [{ ...at, id: 0, radius }])
  await page.waitForTimeout(lastsMs)
  await send('touchEnd', [])
}

test('a slow, wide knuckle on the bar counts once, stamped at touch-down', async ({ page }) => {
  const before = await page.evaluate(() => performance.now())
  await knuckle(page, BAR, 1500, 60)
  const { intents, refusals } = await take(page)
  expect(refusals).toEqual([])
  expect(intents).toHaveLength(1)
  expect(intents[0]!.act).toBe('start')
  expect(intents[0]!.heldMs).toBeGreaterThan(1400)
  expect(intents[0]!.atMs - before).toBeLessThan(500)
})

test('a palm, a second contact elsewhere and a cancelled touch do nothing and say so', async ({ page }) => {
  await knuckle(page, BAR, 100, 160)
  expect((await take(page)).refusals.map((r) => r.code)).toEqual(['palm'])
  await page.waitForTimeout(1100)
  await send('touchStart', [
    { ...BAR, id: 0 },
    { x: 60, y: 60, id: 1 },
  ])
  await send('touchEnd', [])
  const two = await take(page)
  expect(two.intents).toEqual([])
  expect(two.refusals).toEqual([expect.objectContaining({ code: 'elsewhere', heard: true })])
  await page.waitForTimeout(1100)
  await send('touchStart', [{ ...BAR, id: 0 }])
  await send('touchCancel', [])
  const cancelled = await take(page)
  expect(cancelled.intents).toEqual([])
  expect(cancelled.refusals.map((r) => r.code)).toEqual(['cancelled'])
})

test('four drops at once lock the glass for two seconds', async ({ page }) => {
  await send(
    'touchStart',
    [40, 120, 220, 320].map((x, id) => ({ x, y: 450 + 30 * id, id })),
  )
  await send('touchEnd', [])
  const splash = await take(page)
  expect(splash.intents).toEqual([])
  expect(splash.refusals.map((r) => r.code)).toContain('splash')
  await knuckle(page, BAR, 60, 20)
  expect((await take(page)).refusals.map((r) => r.code)).toEqual(['locked'])
  await page.waitForTimeout(2100)
  await knuckle(page, BAR, 60, 20)
  expect((await take(page)).intents).toHaveLength(1)
})

test('what erases fires while it is held, at 700 ms, and not before', async ({ page }) => {
  await knuckle(page, { x: 70, y: 250 }, 300, 10)
  const short = await take(page)
  expect(short.intents).toEqual([])
  expect(short.holding).toEqual(['gone', null])
  // Timers may fire a fraction of a millisecond early, and then never again.
  await page.evaluate(() => {
    const later = window.setTimeout
    window.setTimeout = ((done: () => void, ms: number) => later(done, ms - 5)) as typeof setTimeout
  })
  await page.waitForTimeout(700)
  await send('touchStart', [{ x: 70, y: 250, id: 0 }])
  await page.waitForTimeout(900)
  const held = await take(page)
  expect(held.intents.map((i) => [i.act, i.by])).toEqual([['gone', 'hold']])
  expect(held.holding).toEqual(['gone', null])
  await send('touchEnd', [])
  expect((await take(page)).intents).toEqual([])
})

test('a slow knuckle on a bar that can be held is a press; held two seconds and let go it is a hold', async ({
  page,
}) => {
  const stale = { x: 290, y: 250 }
  await knuckle(page, stale, 1100, 40)
  const slow = await take(page)
  expect(slow.intents.map((i) => [i.act, i.by])).toEqual([['stirred', 'press']])
  expect(slow.holding).toEqual([])
  await page.waitForTimeout(450)
  const before = await page.evaluate(() => performance.now())
  await knuckle(page, stale, 2150, 40)
  const held = await take(page)
  expect(held.intents.map((i) => [i.act, i.by])).toEqual([['stirred', 'hold']])
  expect(held.intents[0]!.atMs - before).toBeGreaterThan(2000)
  expect(held.holding).toEqual(['stirred', null])
})

test('a hit right after the card changed, and a bounce, are passed over', async ({ page }) => {
  await page.evaluate(() => window.pressHarness.cardChanged())
  await knuckle(page, BAR, 40, 20)
  expect((await take(page)).refusals).toEqual([expect.objectContaining({ code: 'card', heard: false })])
  await page.waitForTimeout(600)
  await knuckle(page, BAR, 40, 20)
  await knuckle(page, BAR, 40, 20)
  const bounce = await take(page)
  expect(bounce.intents).toHaveLength(1)
  expect(bounce.refusals.map((r) => r.code)).toEqual(['again'])
})

test('a screen reader clicks, any key is the big action, a focused button keeps its own', async ({
  page,
}) => {
  await page.evaluate(() => document.getElementById('small')!.click())
  expect((await take(page)).intents.map((i) => i.act)).toEqual(['hold'])
  await page.keyboard.press('PageDown')
  expect((await take(page)).keys).toBe(1)
  await page.waitForTimeout(450)
  await page.focus('#small')
  await page.keyboard.press('Enter')
  const focused = await take(page)
  expect(focused.keys).toBe(1)
  expect(focused.intents.map((i) => i.act)).toEqual(['hold'])
  await page.focus('#bar')
  await page.keyboard.press(' ')
  const onBar = await take(page)
  expect(onBar.keys).toBe(2)
  expect(onBar.intents).toEqual([])
})
