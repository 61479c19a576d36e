import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { BenchPage, EVENING, fetched } from './bench.ts'
import { LONG } from './places.ts'

const dipped = (number: number, coat: number, bucketId: string, agoMin: number): TableEvent =>
  toldDip({
    dipId: `early.${number}.${coat}`,
    potId: `demo.${number}`,
    coat,
    bucketId,
    cover: coat === 0 ? { kind: 'full' } : { kind: 'toSkirt' },
    holdS: 4 - coat,
    outAt: EVENING.getTime() - agoMin * 60_000,
  })

/** Pots that got their second coat at six o'clock and wait; the others are away. */
function waiting(...numbers: number[]): TableEvent[][] {
  const pots = [31, 32, 33, 34, 35, 36, 37, 38]
  const away = pots.filter((number) => !numbers.includes(number))
  return [
    demoEvents(),
    away.map((number): TableEvent => ({ kind: 'pot-gone', potId: `demo.${number}` })),
    numbers.flatMap((number): TableEvent[] => {
      const potId = `demo.${number}`
      return [
        { kind: 'waxed', potId, implied: true },
        { kind: 'wiped', potId, implied: false },
        dipped(number, 0, 'demo.gatepost', 3),
        dipped(number, 1, 'demo.brackwater', 0),
        { kind: 'sponged', potId, implied: true },
      ]
    }),
  ]
}

interface Heard {
  readonly plays: { active: boolean; lengthS: number }[]
  readonly press: (action: string) => void
}
declare global {
  interface Window {
    ringing: Heard
  }
}

/** Waits alone, with no stir that an order of work puts into them. */
const withoutOrder = (page: Page) => page.route('**/assets/asking-*.js', (route) => route.abort())

/** Writes down each start of a media element, and keeps the handlers of the headset's buttons. */
const listen = (page: Page) =>
  page.addInitScript(() => {
    const handlers = new Map<string, (details: MediaSessionActionDetails) => void>()
    const set = navigator.mediaSession.setActionHandler.bind(navigator.mediaSession)
    navigator.mediaSession.setActionHandler = (action, handler) => {
      if (handler) handlers.set(action, handler)
      set(action, handler)
    }
    const plays: Heard['plays'][number][] = []
    const play = HTMLMediaElement.prototype.play
    HTMLMediaElement.prototype.play = async function () {
      const active = navigator.userActivation.isActive
      await play.call(this)
      plays.push({ active, lengthS: this.duration })
    }
    window.ringing = {
      plays,
      press: (action) => handlers.get(action)?.({ action: action as MediaSessionAction }),
    }
  })

const plays = (page: Page) => page.evaluate(() => window.ringing.plays)

const offer = (page: Page) => page.getByText('Ring with the screen off? It stops your music')

const title = (page: Page) => page.evaluate(() => navigator.mediaSession.metadata?.title)

/** The phone is locked, or unlocked again, as the page sees it. */
const lock = (page: Page, hidden: boolean) =>
  page.evaluate((isHidden) => {
    Object.defineProperty(document, 'hidden', { configurable: true, value: isHidden })
    document.dispatchEvent(new Event('visibilitychange'))
  }, hidden)

/** What the service worker leaves when a notice was tapped. */
const tapNotice = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const writing = opening.result.transaction('knocks', 'readwrite')
          writing.objectStore('knocks').put({ at: Date.now(), tag: 'next', action: '' }, 'one')
          writing.oncomplete = () => {
            opening.result.close()
            new BroadcastChannel('bucketside-knocks').postMessage(null)
            resolve()
          }
        }
      }),
  )

test('ringing is offered once, plays from that hit, and follows what the next hits change', async ({
  page,
}) => {
  await listen(page)
  await withoutOrder(page)
  const bench = await BenchPage.on(page, waiting(33, 38))
  await fetched(offer(page))
  await bench.hit()
  await expect.poll(() => plays(page)).toHaveLength(1)
  const [first] = await plays(page)
  expect(first?.active).toBe(true)
  const named = (await title(page)) ?? ''
  expect(named).toMatch(/^Next 18:\d\d: A3$/)
  // Both calls with their repeats of six minutes, and half a minute more.
  const lastMin = Number((await page.locator('.due-clock').allTextContents()).at(-1)?.replace('18:', ''))
  expect(first?.lengthS).toBeGreaterThan((lastMin - 2 + 6) * 60)
  expect(first?.lengthS).toBeLessThan((lastMin + 1 + 6) * 60 + 60)
  await expect(page.locator('.strip')).toContainText('not tested')
  await expect(offer(page)).toBeHidden()

  await bench.hit()
  await expect(bench.face).toContainText('Ready?')
  expect(await plays(page)).toHaveLength(1)
  await bench.pass(1)
  await bench.hit()
  await expect.poll(() => plays(page)).toHaveLength(2)
  expect((await plays(page))[1]?.active).toBe(true)
  expect(await title(page)).toMatch(/^Next 18:\d\d: B4$/)

  await page.reload()
  await page.evaluate(() => location.replace('#/room/count'))
  const asked = page.getByRole('checkbox', { name: 'Ring with the screen off' })
  await fetched(asked)
  await expect(asked).toBeChecked()
})

test('a tapped notice opens the bench; a headset first answers the call, then is the big action', async ({
  page,
}) => {
  await listen(page)
  await withoutOrder(page)
  const bench = await BenchPage.on(page, waiting(38))
  await fetched(offer(page))
  await bench.hit()
  await expect.poll(() => plays(page)).toHaveLength(1)
  await page.evaluate(() => location.replace('#/room/count'))
  await page.clock.runFor(500)
  await tapNotice(page)
  await expect(bench.bar).toBeVisible()
  await bench.pass(900)
  await expect(bench.face).toContainText('Ready?')
  const next = () => page.evaluate(() => window.ringing.press('nexttrack'))
  await next()
  await page.clock.runFor(600)
  expect((await bench.pot(38)).touches).toEqual([])
  await next()
  await page.clock.runFor(100)
  await expect.poll(async () => (await bench.pot(38)).touches.map(({ dry }) => dry)).toEqual([true])
})

test('the guided test proves it for this phone, unless the screen was on', LONG, async ({ page }) => {
  await listen(page)
  const bench = await BenchPage.on(page, waiting(38))
  await page.evaluate(() => location.replace('#/room/count'))
  const test = page.getByRole('button', { name: 'Test it' })
  await fetched(test)
  await test.click()
  await expect.poll(() => plays(page)).toHaveLength(1)
  expect((await plays(page))[0]?.lengthS).toBeGreaterThan(60)
  await expect(page.getByText(/Lock the phone now. It rings at 18:0\d:\d\d/)).toBeVisible()
  await page.clock.runFor(67_000)
  await expect(page.getByText('The screen was on when it was due')).toBeVisible()

  await test.click()
  await lock(page, true)
  await page.clock.runFor(70_000)
  await lock(page, false)
  await expect(page.getByText('Did it ring?')).toBeVisible()
  await page.getByRole('button', { name: 'It rang' }).click()
  await expect(page.getByText('Rang with the screen off on this phone')).toBeVisible()

  await page.reload()
  await fetched(page.getByText('Rang with the screen off on this phone'))
  await page.locator('.switch', { hasText: 'Ring with the screen off' }).click()
  await page.evaluate(() => location.replace('#/bench'))
  await page.clock.runFor(1000)
  await expect(bench.page.locator('.strip')).toContainText('rings with the screen off')
})

test('long waits go to the calendar as a file, and short ones do not', async ({ page }) => {
  const last: TableEvent[] = [
    { ...dipped(38, 2, 'demo.heather', -1), cover: { kind: 'collar', depthMm: 25 } } as TableEvent,
    { kind: 'sponged', potId: 'demo.38', implied: true },
  ]
  await BenchPage.on(page, [...waiting(33, 38), last])
  await page.evaluate(() => location.replace('#/room/count'))
  const key = page.getByRole('button', { name: 'Long waits to the calendar' })
  await fetched(key)
  const saving = page.waitForEvent('download')
  await key.click()
  const saved = await saving
  expect(saved.suggestedFilename()).toBe('bucketside-2026-03-03.ics')
  const text = await readFile(await saved.path(), 'utf8')
  expect(text.match(/BEGIN:VEVENT/g)).toHaveLength(1)
  expect(text).toContain('SUMMARY:B4 kiln-dry')
  expect(text).toContain('BEGIN:VALARM')
  await expect(page.getByText('Saved as a file')).toBeVisible()
})
