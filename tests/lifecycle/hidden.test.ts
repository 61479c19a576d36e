/** What a page out of sight can do in Chromium, with and without the ringing track, driven by raw protocol. */
import type { Browser, CDPSession, Page } from 'puppeteer-core'
import puppeteer from 'puppeteer-core'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { answer, ORIGIN } from '../browser/harness/page.ts'
import { CHROMIUM_ARGS, ensureChromium } from '../tools/chromium.mjs'
import { pause } from './place.ts'

/** Switches of the test driver that would take away what is tested here. */
const UNLIKE_A_PHONE = [
  '--mute-audio',
  '--disable-background-timer-throttling',
  '--disable-renderer-backgrounding',
  '--disable-backgrounding-occluded-windows',
]

let browser: Browser
let page: Page
let other: Page
let raw: CDPSession

beforeAll(async () => {
  browser = await puppeteer.launch({
    executablePath: ensureChromium(),
    args: CHROMIUM_ARGS,
    ignoreDefaultArgs: UNLIKE_A_PHONE,
  })
}, 60_000)
afterAll(() => browser.close())

beforeEach(async () => {
  await page?.close()
  await other?.close()
  other = await browser.newPage()
  page = await browser.newPage()
  await page.setRequestInterception(true)
  page.on('request', async (request) => request.respond(await answer('tape', request.url())))
  await page.goto(`${ORIGIN}/`)
  raw = await page.createCDPSession()
  await page.evaluate(() => window.tapeHarness.load())
}, 60_000)

async function arm(): Promise<void> {
  await page.evaluate(() => window.tapeHarness.armFromClick(600))
  await page.mouse.click(50, 50)
  await expect.poll(() => page.evaluate(() => window.tapeHarness.state()), { timeout: 5000 }).toBe('playing')
}

/** Beats of a 100 ms timer in a second out of sight. */
async function hiddenTicks(): Promise<number> {
  await other.bringToFront()
  await pause(1200)
  const look = () => page.evaluate(() => ({ ticks: window.tapeHarness.ticks(), atMs: performance.now() }))
  expect(await page.evaluate(() => document.visibilityState)).toBe('hidden')
  const before = await look()
  await pause(3500)
  const after = await look()
  return (1000 * (after.ticks - before.ticks)) / (after.atMs - before.atMs)
}

describe('a page out of sight', () => {
  it('runs on while the track plays, and is slowed to a beat a second without it', async () => {
    expect(await hiddenTicks()).toBeLessThan(2)
    await page.bringToFront()
    await arm()
    // Ten, less what a busy machine swallows.
    expect(await hiddenTicks()).toBeGreaterThan(5)
  }, 60_000)

  it('tells how long it was hidden, once, and that it went', async () => {
    const fromMs = await page.evaluate(() => window.tapeHarness.life() && performance.now())
    await other.bringToFront()
    await pause(2000)
    await page.bringToFront()
    await expect.poll(() => page.evaluate(() => window.tapeHarness.woken())).toContain('visible')
    const toMs = await page.evaluate(() => performance.now())
    const { wakes, sleeps } = await page.evaluate(() => window.tapeHarness.life())
    expect(sleeps).toEqual(['hidden'])
    // A machine that stalls for so long is a gap of its own.
    const returns = wakes.filter(({ reason }) => reason !== 'gap')
    expect(returns.map(({ reason }) => reason)).toEqual(['visible'])
    expect(returns[0]!.gapMs).toBeGreaterThan(1900)
    expect(returns[0]!.gapMs).toBeLessThan(toMs - fromMs)
  }, 60_000)

  it('tells of a freeze, and plays the track on where it should be by then', async () => {
    await arm()
    await page.evaluate(() => window.tapeHarness.life())
    await other.bringToFront()
    await raw.send('Page.setWebLifecycleState', { state: 'frozen' })
    await pause(2500)
    await raw.send('Page.setWebLifecycleState', { state: 'active' })
    await page.bringToFront()
    await expect.poll(() => page.evaluate(() => window.tapeHarness.state())).toBe('interrupted')
    await expect.poll(() => page.evaluate(() => window.tapeHarness.woken())).toContain('visible')
    const { wakes, sleeps } = await page.evaluate(() => window.tapeHarness.life())
    expect(sleeps).toContain('freeze')
    expect(Math.max(...wakes.map((wake) => wake.gapMs))).toBeGreaterThan(2400)
    expect(await page.evaluate(() => window.tapeHarness.resume())).toBe('playing')
  }, 60_000)
})
