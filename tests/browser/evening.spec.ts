import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { almostDone } from '../fixtures/almost-done.ts'
import { BenchPage, EVENING, opened, tellTime } from './bench.ts'
import { KilnPage } from './kiln-page.ts'
import { dip, workUntil } from './moments/story.ts'
import { type OwnServer, ownServer } from './own-server.ts'
import { LONG } from './places.ts'

const HOUR_MS = 3_600_000

/** Brackwater may run on these feet: they stand on slabs. */
const slabs = demoEvents().flatMap((event): TableEvent[] =>
  event.kind === 'pot-set' && event.pot.stackId.includes('tideline')
    ? [{ kind: 'slab-set', potId: event.pot.potId, slab: true }]
    : [],
)

let folder: string
let server: OwnServer
let phone: BrowserContext | undefined

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bucketside-evening-'))
  server = await ownServer('/')
})
test.afterEach(async () => {
  await phone?.close()
  await server.stop()
  await rm(folder, { recursive: true, force: true, maxRetries: 5 })
})

/** The phone with what it keeps, opened anew: what ran on it before is gone with its process. */
async function reopened(): Promise<Page> {
  await phone?.close()
  const { launchOptions, ...use } = test.info().project.use
  phone = await chromium.launchPersistentContext(folder, {
    ...launchOptions,
    viewport: { width: 360, height: 640 },
    hasTouch: true,
    isMobile: true,
    locale: use.locale ?? 'en-GB',
    timezoneId: use.timezoneId ?? 'UTC',
    baseURL: server.url,
  })
  return phone.newPage()
}

/** The app on a phone that was dead for a while, without a network: at `at`, epoch ms. */
async function goneOn(hash: string, at: number): Promise<Page> {
  const page = await reopened()
  await phone?.setOffline(true)
  await tellTime(page, new Date(at))
  await page.goto(`./#/${hash}`)
  await opened(page)
  await page.clock.pauseAt(new Date(at + 60_000))
  return page
}

/** Its parts are in `npm test` one by one: the end of a sitting, loading to cooling, offline. */
test(
  'from the last coat to below 60 degC: no network, by the bar, the phone dead again and again',
  LONG,
  async () => {
    test.setTimeout(300_000)
    const visit = await reopened()
    // The hour of the phone goes on from visit to visit: set back while closed would be a jump.
    await tellTime(visit, new Date(EVENING.getTime() - HOUR_MS))
    await visit.goto('./')
    await opened(visit)
    await visit.goto('./#/room/phone')
    await expect(visit.getByText('Ready without a network.')).toBeVisible({ timeout: 20_000 })
    await server.stop()

    // The last coat of the demo's evening.
    const first = await reopened()
    await phone?.setOffline(true)
    const glazing = await BenchPage.on(first, [...almostDone(EVENING.getTime()), slabs])
    await workUntil(glazing, /START/)
    await dip(glazing)
    const wet = await first.evaluate(() => Date.now())

    // What is left to do, by the bar; dead in the middle of it.
    let bench = new BenchPage(await goneOn('bench', wet + 120_000))
    await workUntil(bench, /LID ON/)
    await bench.hit()
    const lidded = await bench.page.evaluate(() => Date.now())
    bench = new BenchPage(await goneOn('bench', lidded + 60_000))
    await expect(bench.bar).toContainText('GO ON')
    await workUntil(bench, /LID ON/)
    for (let i = 0; i < 40 && (await bench.page.locator('.closed-sum').count()) === 0; i++) {
      const label = await bench.label()
      if (label === '' || /^(TOUCH|CHECK)/.test(label)) await bench.pass(240)
      else await bench.hit()
    }
    await expect(bench.page.locator('.closed-sum')).toHaveText('8 pots22 coats')
    expect(
      Object.values((await bench.table()).pots).every(({ footSignedAt }) => footSignedAt !== undefined),
    ).toBe(true)

    // The next evening all of it is dry.
    const next = EVENING.getTime() + 26 * HOUR_MS
    let page = await goneOn('bench', next)
    bench = new BenchPage(page)
    await expect(bench.bar).toContainText('GO ON')
    await bench.hit()
    await page.clock.runFor(450)
    await page.getByRole('button', { name: 'LOAD THE KILN' }).tap({ timeout: 10_000 })
    let kiln = new KilnPage(page, new BenchPage(page))
    await kiln.says('THIS KILN')
    await kiln.hit()
    await kiln.says('PROPOSE')
    await kiln.hit()
    await kiln.says('SHELF 1 AS DRAWN')
    await kiln.hit()
    const drawn = (await kiln.load()).things

    page = await goneOn('shelf', next + HOUR_MS)
    kiln = new KilnPage(page, new BenchPage(page))
    await kiln.says(/SHELF 2 AS DRAWN|LID SHUT/)
    expect((await kiln.load()).things).toEqual(drawn)
    while ((await kiln.bar.textContent()) !== 'LID SHUT') await kiln.hit()
    await kiln.hit()
    await kiln.says('KILN ON')
    await kiln.hit()
    await kiln.says('READING')
    const lit = await page.evaluate(() => Date.now())
    await kiln.pass(420)
    await kiln.read('1050')

    page = await goneOn('shelf', lit + 7.75 * HOUR_MS)
    kiln = new KilnPage(page, new BenchPage(page))
    await kiln.read('1110')
    await kiln.pass(45)
    await kiln.read('1160')
    await kiln.pass(56)
    await expect(page.locator('.kiln .bar')).toContainText('CONE DOWN')
    await kiln.hit()
    await kiln.says('KILN OFF')
    await kiln.hit()
    const off = await page.evaluate(() => Date.now())

    page = await goneOn('shelf', off + 5 * HOUR_MS)
    kiln = new KilnPage(page, new BenchPage(page))
    await kiln.read('560')
    await kiln.pass(90)
    await kiln.read('430')
    await expect(kiln.face).toContainText(/Below 60 °C: .*\(.* to .*\)/)
    const cooling = await page.evaluate(() => Date.now())

    page = await goneOn('shelf', cooling + 8 * HOUR_MS)
    kiln = new KilnPage(page, new BenchPage(page))
    await kiln.read('118')
    await expect(page.locator('.kiln .bar')).toContainText('LID OPEN')
    await kiln.hit()
    await kiln.hit()
    await kiln.says('READING')
    await kiln.pass(200)
    await kiln.read('58')
    await kiln.says('JUDGE')
    const load = await kiln.load()
    expect(load.readings.map(({ tempC }) => tempC)).toEqual([1050, 1110, 1160, 560, 430, 118, 58])
    const standing = Object.values(load.things).filter(({ what }) => what === 'pot')
    expect(standing).toHaveLength(8)
    expect(new Set(standing.map(({ place }) => place)).size).toBe(8)
  },
)
