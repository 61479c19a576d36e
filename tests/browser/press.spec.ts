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
type Kind = 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel'
/** A touch as the browser gets it; `atMs` is its page time, whenever it is sent. */
async function send(page: Page, type: Kind, contacts: readonly Contact[], atMs?: number): Promise<void> {
  const originMs = atMs === undefined ? 0 : await page.evaluate(() => performance.timeOrigin)
  await touch.send('Input.dispatchTouchEvent', {
    type,
    touchPoints: contacts.map(({ x, y, id, radius = 8 }) => ({ x, y, id, radiusX: radius, radiusY: radius })),
    ...(atMs === undefined ? {} : { timestamp: (originMs + atMs) / 1000 }),
  })
}
const take = (page: Page) => page.evaluate(() => window.pressHarness.take())
const pageMs = (page: Page) => page.evaluate(() => performance.now())

/** One contact of `lastsMs` by its own stamps, however long this machine takes over it. */
async function knuckle(page: Page, at: Contact, lastsMs: number, downMs: number): Promise<void> {
  await send(page, 'touchStart', [at], downMs)
  await send(page, 'touchEnd', [], downMs + lastsMs)
}
const finger = (at: { x: number; y: number }, radius: number): Contact => ({ ...at, id: 0, radius })

test('a slow, wide knuckle on the bar counts once, stamped at touch-down', async ({ page }) => {
  const downMs = await pageMs(page)
  await knuckle(page, finger(BAR, 60), 1500, downMs)
  const { intents, refusals } = await take(page)
  expect(refusals).toEqual([])
  expect(intents).toEqual([{ on: 'bar', by: 'press', atMs: expect.any(Number), heldMs: expect.any(Number) }])
  expect(intents[0]!.heldMs).toBeCloseTo(1500, 0)
  expect(Math.abs(intents[0]!.atMs - downMs)).toBeLessThan(20)
})

test('a palm, a second contact elsewhere and a cancelled touch do nothing and say so', async ({ page }) => {
  const atMs = await pageMs(page)
  await knuckle(page, finger(BAR, 160), 100, atMs)
  expect((await take(page)).refusals.map((r) => r.code)).toEqual(['palm'])
  const pair = [
    { ...BAR, id: 0 },
    { x: 60, y: 60, id: 1 },
  ]
  await send(page, 'touchStart', pair, atMs + 1200)
  await send(page, 'touchEnd', [], atMs + 1250)
  const two = await take(page)
  expect(two.intents).toEqual([])
  expect(two.refusals).toEqual([expect.objectContaining({ code: 'elsewhere', heard: true })])
  await send(page, 'touchStart', [{ ...BAR, id: 0 }], atMs + 2400)
  await send(page, 'touchCancel', [], atMs + 2450)
  const cancelled = await take(page)
  expect(cancelled.intents).toEqual([])
  expect(cancelled.refusals.map((r) => r.code)).toEqual(['cancelled'])
})

test('four drops at once lock the glass for two seconds', async ({ page }) => {
  const atMs = await pageMs(page)
  const drops = [40, 120, 220, 320].map((x, id) => ({ x, y: 450 + 30 * id, id }))
  await send(page, 'touchStart', drops, atMs)
  await send(page, 'touchEnd', [], atMs + 30)
  const splash = await take(page)
  expect(splash.intents).toEqual([])
  expect(splash.refusals.map((r) => r.code)).toContain('splash')
  await knuckle(page, finger(BAR, 20), 60, atMs + 1900)
  expect((await take(page)).refusals.map((r) => r.code)).toEqual(['locked'])
  await knuckle(page, finger(BAR, 20), 60, atMs + 2100)
  expect((await take(page)).intents).toHaveLength(1)
})

test('what erases fires while it is held, at 700 ms, and not before', async ({ page }) => {
  const erase = finger({ x: 70, y: 250 }, 10)
  const atMs = await pageMs(page)
  await knuckle(page, erase, 690, atMs + 60_000)
  const short = await take(page)
  expect(short.intents).toEqual([])
  expect(short.refusals.map((r) => r.code)).toEqual(['short'])
  // Timers may fire a fraction of a millisecond early, and then never again.
  await page.evaluate(() => {
    const later = window.setTimeout
    window.setTimeout = ((done: () => void, ms: number) => later(done, ms - 5)) as typeof setTimeout
  })
  await send(page, 'touchStart', [erase])
  const hits = () => page.evaluate(() => window.pressHarness.hits())
  await expect.poll(hits).toMatchObject([{ on: 'erase', by: 'hold' }])
  expect((await hits())[0]!.heldMs).toBeGreaterThanOrEqual(700)
  await send(page, 'touchEnd', [])
  const { intents, holding } = await take(page)
  expect(intents).toHaveLength(1)
  expect(holding).toEqual(['erase', null])
})

test('a slow knuckle on a bar that can be held is a press; held two seconds and let go it is a hold', async ({
  page,
}) => {
  const stale = finger({ x: 290, y: 250 }, 40)
  const downMs = await pageMs(page)
  await send(page, 'touchStart', [stale], downMs)
  await expect.poll(() => page.evaluate(() => window.pressHarness.held())).toEqual(['stale'])
  await send(page, 'touchEnd', [], downMs + 2150)
  const held = await take(page)
  expect(held.intents.map((i) => [i.on, i.by])).toEqual([['stale', 'hold']])
  expect(held.intents[0]!.atMs - downMs).toBeGreaterThan(2000)
  expect(held.holding).toEqual(['stale', null])
  await knuckle(page, stale, 1100, downMs + 3000)
  const slow = await take(page)
  expect(slow.intents.map((i) => [i.on, i.by])).toEqual([['stale', 'press']])
})

test('a hit right after the card changed, and a bounce, are passed over', async ({ page }) => {
  await page.evaluate(() => window.pressHarness.cardChanged())
  const atMs = await pageMs(page)
  await knuckle(page, finger(BAR, 20), 40, atMs + 100)
  expect((await take(page)).refusals).toEqual([expect.objectContaining({ code: 'card', heard: false })])
  await knuckle(page, finger(BAR, 20), 40, atMs + 1000)
  await knuckle(page, finger(BAR, 20), 40, atMs + 1100)
  const bounce = await take(page)
  expect(bounce.intents).toHaveLength(1)
  expect(bounce.refusals.map((r) => r.code)).toEqual(['again'])
})

test('a screen reader clicks, any key is the big action, a focused button keeps its own', async ({
  page,
}) => {
  // A pointer that only moves, as when a page is laid out under one, is no finger whose click this could be.
  await page.mouse.move(20, 300)
  await page.evaluate(() => document.getElementById('small')!.click())
  expect((await take(page)).intents.map((i) => i.on)).toEqual(['small'])
  await page.keyboard.press('PageDown')
  expect((await take(page)).keys).toBe(1)
  await page.waitForTimeout(450)
  await page.focus('#small')
  await page.keyboard.press('Enter')
  const focused = await take(page)
  expect(focused.keys).toBe(1)
  expect(focused.intents.map((i) => i.on)).toEqual(['small'])
  await page.focus('#bar')
  await page.keyboard.press(' ')
  const onBar = await take(page)
  expect(onBar.keys).toBe(2)
  expect(onBar.intents).toEqual([])
})
