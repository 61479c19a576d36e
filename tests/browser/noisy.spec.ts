import { expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { BenchPage, fetched } from './bench.ts'
import { keepSoundInTime } from './moments/index.ts'
import { LONG } from './places.ts'

declare global {
  interface Window {
    seen: { atMs: number; noise: string }[]
  }
}

/** One pot left, and a room so loud that what sounds is shown as well. */
const loud: TableEvent[][] = [
  demoEvents(),
  [31, 32, 34, 35, 36, 37, 38].map((number): TableEvent => ({ kind: 'pot-gone', potId: `demo.${number}` })),
  [{ kind: 'settings-set', settings: { noisy: true } }],
]

/** Two knocks on the table, as a motion sensor has them, in this very moment of told time. */
const knock = (page: Page) =>
  page.evaluate(() => {
    const strokesMs = [1500, 1800]
    for (let ms = 0; ms < 2600; ms += 16) {
      const struck = strokesMs.some((from) => ms >= from && ms < from + 16)
      const event = new DeviceMotionEvent('devicemotion', {
        accelerationIncludingGravity: { x: 0, y: 0, z: struck ? 13 : 9.8 },
      })
      Object.defineProperty(event, 'timeStamp', { value: performance.now() + ms })
      dispatchEvent(event)
    }
  })

/** Writes down each change of the pattern that is shown, looked at each 20 ms. */
const watch = (page: Page) =>
  page.evaluate(() => {
    window.seen = []
    setInterval(() => {
      const pattern = document.querySelector<HTMLElement>('.noise')
      const shows = pattern && getComputedStyle(pattern).display !== 'none'
      const noise = shows ? pattern.className.replace('noise noise-', '') : ''
      if (noise !== window.seen.at(-1)?.noise) window.seen.push({ atMs: performance.now(), noise })
    }, 20)
  })

const seen = (page: Page) => page.evaluate(() => window.seen.splice(0))

test(
  'two knocks are the bar unless the app itself sounds; a noisy room sees the count, slower than three flashes a second, and less of it where less motion is wanted',
  LONG,
  async ({ page }) => {
    await keepSoundInTime(page)
    const bench = await BenchPage.on(page, loud)
    await page.evaluate(() => location.replace('#/room/count'))
    const felt = page.getByRole('radio', { name: 'felt', exact: true })
    await fetched(felt)
    await felt.click()
    await expect(page.getByText('Listening for two knocks.')).toBeVisible()
    await page.evaluate(() => location.replace('#/bench'))
    await expect(bench.face).toContainText('Wax')

    const pot = () => bench.pot(33)
    const until = async (label: string, stepMs: number) => {
      for (let i = 0; i < 100 && (await bench.label()) !== label; i++) await page.clock.runFor(stepMs)
    }
    await page.clock.runFor(500)
    await knock(page)
    await expect.poll(async () => (await pot()).waxedAt).toBeDefined()
    // Whether the pan is off wants a hand, not a knock; and one that follows the knock at once is none.
    await bench.pass(1)
    await bench.hit()
    await bench.pass(400)
    // Until the pan and the next card have been spoken of.
    await page.clock.runFor(8000)
    await knock(page)
    await expect.poll(async () => (await pot()).wipedAt).toBeDefined()
    // The card that comes is said, and the table is knocked meanwhile.
    await until('STIRRED', 500)
    await knock(page)
    await page.clock.runFor(500)
    expect(await bench.label()).toBe('STIRRED')
    await page.clock.runFor(6000)
    await knock(page)
    await until('START', 1500)
    // No knock starts a dip.
    await page.clock.runFor(6000)
    await knock(page)
    await page.clock.runFor(500)
    expect(await bench.label()).toBe('START')

    await watch(page)
    await bench.hit()
    await page.clock.runFor(15_000)
    const all = (await seen(page)).filter(({ noise }) => noise !== '')
    expect(all.filter(({ noise }) => noise === 'beat').length).toBeGreaterThanOrEqual(6)
    expect(all.at(-1)?.noise).toBe('out')
    for (const { atMs } of all)
      expect(all.filter((other) => other.atMs >= atMs && other.atMs < atMs + 1000).length).toBeLessThan(3)

    await page.emulateMedia({ reducedMotion: 'reduce' })
    await page.evaluate(() => {
      for (const kind of ['beat', 'out', 'call']) {
        const pattern = document.createElement('span')
        pattern.className = `noise noise-${kind}`
        document.querySelector('.bench')?.append(pattern)
      }
    })
    const still = await page.$$eval('.noise', (patterns) =>
      patterns.map((pattern) => {
        const { display, animationName } = getComputedStyle(pattern)
        return [pattern.className.slice(12), display !== 'none', animationName]
      }),
    )
    expect(still).toEqual([
      ['beat', false, 'none'],
      ['out', true, 'none'],
      ['call', true, 'none'],
    ])
  },
)
