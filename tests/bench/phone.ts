/** Times of the built app in a browser slowed six times: start from what is kept, and hits on the bench. */
import '../../src/table/forecast/walls.ts'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import { armed, armedAmong, recordsOf, season } from '../fixtures/season.ts'
import { CHROMIUM_ARGS, ensureChromium } from '../tools/chromium.mjs'
import { serve } from '../tools/static.mjs'
import { packed } from './journal.ts'

const SLOWDOWN = 6
const EVENTS = 5000
const STARTS = 5
const HITS = 100
const POTS = 400
const SLOWDOWN_OF_MANY = 4
/** Longer than the guard against a second hit after a card has changed. */
const BETWEEN_MS = 500
/** Nobody hits a card before having read it; what an opening costs is told by the cold start. */
const LOOKED_AT_MS = 3000

/** Records as a journal keeps them that was never packed. */
export const singly = (records: readonly { readonly id: string }[]): Entries =>
  records.map((record) => [record.id, record])

type Entries = readonly (readonly [string, unknown])[]

const dist = fileURLToPath(new URL('../../dist', import.meta.url))
const at = (sorted: readonly number[], share: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN

async function slow(context: BrowserContext, page: Page, rate = SLOWDOWN) {
  const session = await context.newCDPSession(page)
  await session.send('Emulation.setCPUThrottlingRate', { rate })
}

/** Replaces what the journal holds. */
export const plant = (page: Page, entries: Entries) =>
  page.evaluate(
    (values) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onsuccess = () => {
          const writing = opening.result.transaction('journal', 'readwrite')
          const store = writing.objectStore('journal')
          store.clear()
          for (const [key, value] of values) store.put(value, key)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
          writing.onabort = () => reject(writing.error)
        }
      }),
    entries,
  )

/** From navigation to a bench that takes a hit, ms; the service worker has to start as well. `looked`: at it for a while. */
async function start(context: BrowserContext, url: string, looked = false): Promise<number> {
  const page = await context.newPage()
  const session = await context.newCDPSession(page)
  await session.send('ServiceWorker.enable')
  await session.send('ServiceWorker.stopAllWorkers')
  await slow(context, page)
  await page.goto(`${url}#/bench`)
  const handle = await page.waitForFunction(() => {
    return document.querySelector('.bench [data-press]') ? performance.now() : 0
  })
  const ms = await handle.jsonValue()
  if (looked) await page.waitForTimeout(LOOKED_AT_MS)
  await page.close()
  return ms
}

/** Runs `work` with the built app, served, in a browser of a phone's size that never was there. */
export async function withApp<T>(work: (context: BrowserContext, url: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'bucketside-bench-'))
  const { server, port } = await serve({ root: dist })
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: ensureChromium(),
    args: CHROMIUM_ARGS,
    viewport: { width: 360, height: 640 },
    hasTouch: true,
    isMobile: true,
  })
  try {
    return await work(context, `http://localhost:${port}/`)
  } finally {
    await context.close()
    server.closeAllConnections()
    server.close()
    await rm(folder, { recursive: true, force: true })
  }
}

export function benchStart() {
  return withApp(async (context, url) => {
    const page = await context.newPage()
    await page.goto(url)
    await page.evaluate(() => navigator.serviceWorker.ready)
    await page.waitForSelector('#app:not([aria-busy])')
    const records = recordsOf(season(EVENTS))
    const measured = async (entries: Entries) => {
      await plant(page, entries)
      // A page that lived keeps what it computed for the next one.
      await start(context, url, true)
      const times: number[] = []
      for (let index = 0; index < STARTS; index++) times.push(await start(context, url))
      return at(
        times.sort((a, b) => a - b),
        0.5,
      )
    }
    return [
      {
        name: `cold start, ${EVENTS} events, packed, CPU slowed ${SLOWDOWN} times`,
        ms: await measured(packed(records)),
        budgetMs: 800,
      },
      {
        name: `cold start, ${EVENTS} events never packed, CPU slowed ${SLOWDOWN} times`,
        ms: await measured(singly(records)),
      },
    ]
  })
}

/** START, and back again within the lead-in, on a bench of these records: every other hit has to sound at once. */
function hitsOn(records: ReturnType<typeof recordsOf>, rate: number) {
  return withApp(async (context, url) => {
    const page = await context.newPage()
    await page.goto(url)
    await page.waitForSelector('#app:not([aria-busy])')
    await plant(page, singly(records))
    await page.addInitScript(watchHits)
    await page.goto(url)
    await page.goto(`${url}#/bench`)
    const bar = page.locator('[data-press="bar"]').first()
    await bar.waitFor()
    await slow(context, page, rate)
    await page.waitForTimeout(LOOKED_AT_MS)
    for (let hit = 0; hit < HITS; hit++) {
      await bar.tap({ force: true, timeout: 5000 })
      await page.waitForTimeout(BETWEEN_MS)
    }
    const { paints, sounds } = await page.evaluate(
      () => (window as unknown as { hits: { paints: number[]; sounds: number[] } }).hits,
    )
    const sorted = (times: number[]) => times.sort((a, b) => a - b)
    if (paints.length < HITS / 4) throw new Error(`only ${paints.length} hits were seen`)
    if (sounds.length === 0) throw new Error('no hit sounded')
    return { paints: sorted(paints), sounds: sorted(sounds) }
  })
}

export async function benchHits() {
  const { paints, sounds } = await hitsOn(recordsOf(armed(Date.now())), SLOWDOWN)
  return [
    { name: `hit to next paint, p98 of ${paints.length}`, ms: at(paints, 0.98), budgetMs: 100 },
    { name: `hit to sound scheduled, p98 of ${sounds.length}`, ms: at(sounds, 0.98), budgetMs: 50 },
  ]
}

export async function benchManyPots() {
  const { paints } = await hitsOn(recordsOf(armedAmong(POTS, Date.now())), SLOWDOWN_OF_MANY)
  const name = `hit to next paint, ${POTS} pots, CPU slowed ${SLOWDOWN_OF_MANY} times, p98 of ${paints.length}`
  return [{ name, ms: at(paints, 0.98), budgetMs: 100 }]
}

/** Runs in the page: how long after a finger left was something painted, or a sound scheduled. */
function watchHits() {
  const paints: number[] = []
  const sounds: number[] = []
  Object.assign(window, { hits: { paints, sounds } })
  let leftMs: number | undefined
  addEventListener(
    'pointerup',
    (event) => {
      leftMs = event.timeStamp
    },
    { capture: true },
  )
  const sounded = () => {
    if (leftMs !== undefined) sounds.push(performance.now() - leftMs)
    leftMs = undefined
  }
  for (const node of [AudioBufferSourceNode, OscillatorNode]) {
    const original = node.prototype.start
    node.prototype.start = function (...args: [number?]) {
      sounded()
      return original.apply(this, args)
    }
  }
  // What takes less than 16 ms is not reported: the share given is that of the slower hits.
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (entry.name === 'pointerup') paints.push(entry.duration)
  }).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit)
}
