/** Whatever may happen to a phone at the glaze table, in any order: after each of it the app works and has all it told as saved. */
import { cp, mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'puppeteer-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { isKnownKind, type Stamped } from '../../shared/events.ts'
import { compareRecords, examine, type JournalRecord } from '../../shared/record.ts'
import { contentFault } from '../../src/store/events-schema.ts'
import { cardOf } from '../../src/table/card/card-now.ts'
import { phoneOf } from '../../src/table/fold/seen.ts'
import { deploy } from '../browser/deploy.ts'
import { recordsOf, waiting } from '../fixtures/season.ts'
import { tableOf } from '../fixtures/seen-by.ts'
import { clocksOnApp, openScreen, plant } from './app.ts'
import { at } from './built.ts'
import { randomFrom } from './kill.ts'
import { type Phone, switchOn } from './phone.ts'
import { openPlace, type Place, pause } from './place.ts'
import { freeze, suspend } from './sleep.ts'
import { listenForSaved, storedRecords } from './stored.ts'

/** Steps of the long proof; a slice, 0, has every kind once, with hits between. */
const STEPS = Number(process.env.CHAOS_STEPS ?? (process.env.PROVE ? 2000 : 0))
const SEED = Number(process.env.CHAOS_SEED ?? 20_261_129)
const HIT_SHARE = 0.6
/** Less than is there: every write is refused. */
const NO_ROOM = 1000
const HOUR_MS = 3_600_000
/** The clock is set by so much. */
const JUMPS_MS = [HOUR_MS, -HOUR_MS, 48 * HOUR_MS, -48 * HOUR_MS, 5 * 60_000, -5 * 60_000]
const POTS = 5

let root: string
let html: string
let place: Place
let phone: Phone
let windows: Page[] = []
const saved = new Set<string>()
const errors: string[] = []
let offline = false
let room = true
let version = 0
/** The clock is ahead of the machine's by so much. */
let aheadMs = 0
/** It was set forward by so much, all in all. */
let forwardMs = 0

beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'bucketside-dist-'))
  await cp(at('dist'), root, { recursive: true })
  html = await readFile(join(root, 'index.html'), 'utf8')
  place = await openPlace(root)
})
afterAll(async () => {
  await phone?.kill()
  await place?.close()
  await rm(root, { recursive: true, force: true, maxRetries: 5 })
})

/** The clock on the wall of all windows is so far from the machine's as local storage says. */
const onSetClock = (page: Page) =>
  page.evaluateOnNewDocument(() => {
    const Real = Date
    const ahead = () => Number(localStorage.getItem('ahead') ?? 0)
    window.Date = class extends Real {
      constructor(...given: []) {
        super(...(given.length === 0 ? ([Real.now() + ahead()] as unknown as []) : given))
      }
      static override now = () => Real.now() + ahead()
    } as DateConstructor
  })

async function openWindow(page: Page): Promise<void> {
  page.on('pageerror', (error) => errors.push(String(error)))
  await onSetClock(page)
  await listenForSaved(page, (ids) => {
    for (const id of ids) saved.add(id)
  })
  await page.setOfflineMode(offline)
  await openScreen(page, place.address, 'bench')
  windows.push(page)
}

/** Browsers write local storage late: a kill would set the clock as it was some seconds before, and nobody did. */
const keepSetClock = (page: Page) =>
  page.evaluateOnNewDocument((ms) => {
    if (!location.protocol.startsWith('http') || sessionStorage.getItem('on')) return
    localStorage.setItem('ahead', String(ms))
    sessionStorage.setItem('on', 'yes')
  }, aheadMs)

async function open(): Promise<void> {
  phone = await switchOn(place.folder)
  await keepSetClock(phone.page)
  windows = []
  // Neither outlives the browser.
  offline = false
  room = true
  await openWindow(phone.page)
}

/** Again where a new version has just opened the page anew. */
async function steady<T>(work: () => Promise<T>): Promise<T> {
  for (let tried = 0; ; tried++) {
    try {
      return await work()
    } catch (error) {
      if (tried === 5 || !/context|navigat|detached/i.test(String(error))) throw error
      await pause(300)
    }
  }
}

const KINDS = {
  async hit(page: Page, random: () => number) {
    // A window out of sight takes no touch.
    await page.bringToFront()
    await steady(() => clocksOnApp(root).hit(page, random, () => {}))
  },
  async reload(page: Page) {
    await openScreen(page, place.address, 'bench')
  },
  async freeze(page: Page) {
    await page.bringToFront()
    const wake = await freeze(page)
    await pause(400)
    await wake()
  },
  async suspend() {
    const resume = await suspend(phone.browser)
    await pause(700)
    resume()
  },
  async kill() {
    await phone.kill()
    await open()
  },
  async network() {
    offline = !offline
    for (const page of windows) await page.setOfflineMode(offline)
  },
  async quota(page: Page) {
    room = !room
    const session = await page.createCDPSession()
    const origin = new URL(place.address).origin
    await session.send('Storage.overrideQuotaForOrigin', room ? { origin } : { origin, quotaSize: NO_ROOM })
    await session.detach()
  },
  async clock(page: Page, random: () => number) {
    const byMs = JUMPS_MS[Math.floor(random() * JUMPS_MS.length)] ?? 0
    aheadMs += byMs
    forwardMs += Math.max(0, byMs)
    await steady(() => page.evaluate((ms) => localStorage.setItem('ahead', String(ms)), aheadMs))
  },
  async window() {
    const [first, second] = windows
    if (!second) return openWindow(await phone.browser.newPage())
    windows = first ? [first] : []
    await second.close()
  },
  async update(page: Page) {
    version++
    await deploy(root, { 'index.html': html.replace('<html', `<html data-version="${version}"`) })
    await steady(() =>
      page.evaluate(() => {
        void navigator.serviceWorker
          .getRegistration()
          .then((registration) => registration?.update().catch(() => {}))
      }),
    )
  },
}
type Kind = keyof typeof KINDS
const OTHERS = (Object.keys(KINDS) as Kind[]).filter((kind) => kind !== 'hit')

/** What has to hold at any moment. */
async function look(step: string): Promise<void> {
  for (const page of windows) {
    await steady(() =>
      page.waitForFunction(() => document.querySelector('#app:not([aria-busy]) button'), {
        polling: 100,
        timeout: 20_000,
      }),
    )
  }
  expect(errors, step).toEqual([])
  const [page] = windows
  if (!page) throw new Error('no window')
  const records = (await steady(() => storedRecords(page))) as unknown as JournalRecord<Stamped['event']>[]
  const stored = new Set(records.map(({ id }) => id))
  expect(
    [...saved].filter((id) => !stored.has(id)),
    step,
  ).toEqual([])
  for (const record of records) {
    expect(
      examine(record, ({ kind }) => isKnownKind(kind)),
      step,
    ).toHaveProperty('record')
    expect(contentFault(record.event), step).toBeUndefined()
  }
  const unique = [...new Map(records.map((record) => [record.id, record])).values()].sort(compareRecords)
  const own = unique.find(({ writer }) => !writer.startsWith('other.'))
  const table = tableOf(unique, own ? phoneOf(own) : '')
  const nowMs = await steady(() => page.evaluate(() => Date.now()))
  expect(cardOf(table, nowMs - table.skewMs).kind, step).toBeDefined()
  // No order runs away with a clock: what it was set forward, unseen, may be taken for time that passed, and no more.
  const ahead = Math.max(...unique.map(({ order, at: atMs }) => order - Math.max(atMs, Date.now())))
  expect(ahead, step).toBeLessThan(forwardMs + HOUR_MS)
}

/** What happens, in order. */
function course(random: () => number): Kind[] {
  const drawn = () => OTHERS[Math.floor(random() * OTHERS.length)] ?? 'hit'
  if (STEPS > 0) return Array.from({ length: STEPS }, () => (random() < HIT_SHARE ? 'hit' : drawn()))
  const shuffled = OTHERS.map((kind) => ({ kind, by: random() })).sort((a, b) => a.by - b.by)
  return shuffled.flatMap(({ kind }, i): Kind[] => (i % 2 === 0 ? [kind, 'hit'] : [kind]))
}

test('hits among everything that may happen: nothing told as saved is lost, and the app works after each', async () => {
  const random = randomFrom(SEED)
  await open()
  await plant(phone.page, recordsOf(waiting(POTS, Date.now())))
  await openScreen(phone.page, place.address, 'bench')
  await look('at first')
  // The network is cut later: from a phone that has kept the app.
  await phone.page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  const done: Record<string, number> = {}
  for (const [index, kind] of course(random).entries()) {
    const page = windows[Math.floor(random() * windows.length)]
    if (!page) throw new Error('no window')
    await KINDS[kind](page, random)
    // A hit counts for the card that it was meant for.
    await pause(450)
    await look(`step ${index}, ${kind}, seed ${SEED}`)
    done[kind] = (done[kind] ?? 0) + 1
  }
  console.log(`chaos: ${JSON.stringify(done)}, ${saved.size} records told as saved, none lost`)
  expect(saved.size).toBeGreaterThan(0)
}, 7_200_000)
