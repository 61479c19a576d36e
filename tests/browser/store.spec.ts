import { randomBytes } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, expect, type Page, test } from '@playwright/test'
import type {} from '../lifecycle/page/sitting.ts'
import { storedIds } from './bench.ts'
import { LONG, PAGE_URL } from './places.ts'

async function open(page: Page) {
  await page.goto(PAGE_URL)
  await page.waitForSelector('body[data-ready]')
}

const count = (page: Page) => page.evaluate(() => window.sitting.journal.records.length)

/** Puts a value into the journal past the app. */
const plant = (page: Page, key: string, value: unknown) =>
  page.evaluate(
    ([at, planted]) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onsuccess = () => {
          const writing = opening.result.transaction('journal', 'readwrite')
          writing.objectStore('journal').put(planted, at as string)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
          writing.onabort = () => reject(writing.error)
        }
      }),
    [key, value] as const,
  )

/** Leaves the page almost no room. Comes before `open`: the browser remembers for a while how much there was. */
async function fillDisk(page: Page) {
  const client = await page.context().newCDPSession(page)
  const origin = new URL(PAGE_URL).origin
  await client.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 500_000 })
  return { leaveRoom: () => client.send('Storage.overrideQuotaForOrigin', { origin }) }
}

test('a hit shows as saved only once it is in the database, and outlives the browser', async ({
  launchOptions,
}) => {
  const folder = await mkdtemp(join(tmpdir(), 'bucketside-'))
  try {
    const first = await chromium.launchPersistentContext(folder, launchOptions)
    const page = await first.newPage()
    await open(page)
    const ids = await page.evaluate(async () => {
      const { records, saved } = window.sitting.hit(2, 'twice')
      await saved
      return records.map((record) => record.id)
    })
    expect(ids).toHaveLength(2)
    expect(await storedIds(page)).toEqual(ids)
    await first.close()

    const second = await chromium.launchPersistentContext(folder, launchOptions)
    const later = await second.newPage()
    await open(later)
    expect(await later.evaluate(() => window.sitting.journal.records.map((record) => record.id))).toEqual(ids)
    await second.close()
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
})

test('appends are strict about durability', async ({ page }) => {
  await page.addInitScript(() => {
    const modes: string[] = []
    Object.assign(window, { modes })
    const original = IDBDatabase.prototype.transaction
    IDBDatabase.prototype.transaction = function (...args) {
      const made = original.apply(this, args)
      if (args[1] === 'readwrite') modes.push(made.durability)
      return made
    }
  })
  await open(page)
  const modes = await page.evaluate(async () => {
    await window.sitting.hit(1).saved
    return (window as unknown as { modes: string[] }).modes
  })
  expect(modes.length).toBeGreaterThan(0)
  expect(new Set(modes)).toEqual(new Set(['strict']))
})

test('two tabs on one phone see each other, and neither overwrites the other', async ({ context }) => {
  const [one, two] = [await context.newPage(), await context.newPage()]
  await open(one)
  await open(two)
  await Promise.all(
    [one, two].map((page) =>
      page.evaluate(async () => {
        for (let number = 1; number <= 20; number++) await window.sitting.hit(number % 5).saved
      }),
    ),
  )
  await expect.poll(() => count(one)).toBe(40)
  await expect.poll(() => count(two)).toBe(40)
  const order = (page: Page) =>
    page.evaluate(() => window.sitting.journal.records.map((record) => record.id).join())
  expect(await order(one)).toBe(await order(two))
  expect(await storedIds(one)).toHaveLength(40)
})

test('a full disk: the hit stays in memory and beside the database, and is saved when there is room', async ({
  page,
}) => {
  const { leaveRoom } = await fillDisk(page)
  await open(page)
  // Random, as zeros would be packed away.
  const large = randomBytes(900_000).toString('base64')
  const saved = await page.evaluate(async (text) => {
    const { journal, hit } = window.sitting
    const hits = [hit(1, text), hit(2), hit(3, 'after')]
    const until = (status: string) =>
      new Promise<void>((resolve) => {
        if (journal.status === status) resolve()
        journal.subscribe((change) => change.kind === 'status' && change.status === status && resolve())
      })
    await until('not-saved')
    let settled = false
    hits[0]!.saved.then(() => {
      settled = true
    })
    await new Promise((resolve) => setTimeout(resolve, 50))
    return { settled, count: journal.records.length }
  }, large)
  expect(saved).toEqual({ settled: false, count: 5 })

  const spilled = await page.evaluate(() => Object.keys(localStorage).map((key) => localStorage.getItem(key)))
  expect(spilled.join()).toContain('"noted"')

  await leaveRoom()
  await page.evaluate(() => window.sitting.journal.retry())
  await expect.poll(() => page.evaluate(() => window.sitting.journal.status)).toBe('saved')
  expect(await storedIds(page)).toHaveLength(5)
  expect(await page.evaluate(() => localStorage.length)).toBe(0)
})

test('what could not be stored before the page went is taken up by the next one', async ({ page }) => {
  const { leaveRoom } = await fillDisk(page)
  await open(page)
  const large = randomBytes(900_000).toString('base64')
  await page.evaluate((text) => window.sitting.hit(1, text), large)
  await expect.poll(() => page.evaluate(() => window.sitting.journal.status)).toBe('not-saved')
  await leaveRoom()
  await open(page)
  expect(await count(page)).toBe(2)
  expect(await page.evaluate(() => window.sitting.journal.opening.recovered)).toBe(2)
  await expect.poll(async () => (await storedIds(page)).length).toBe(2)
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0)
})

test('a database handle that died is opened anew, and the hit is saved once', async ({ page }) => {
  await page.addInitScript(() => {
    const original = IDBDatabase.prototype.transaction
    let failures = 0
    Object.assign(window, {
      failNext: (times: number) => {
        failures = times
      },
    })
    IDBDatabase.prototype.transaction = function (...args) {
      if (failures-- > 0) throw new DOMException('lost', 'InvalidStateError')
      return original.apply(this, args)
    }
  })
  await open(page)
  const status = await page.evaluate(async () => {
    ;(window as unknown as { failNext(times: number): void }).failNext(2)
    await window.sitting.hit(1).saved
    return window.sitting.journal.status
  })
  expect(status).toBe('saved')
  expect(await storedIds(page)).toHaveLength(1)
})

test('a damaged record and one of unknown kind are set aside, the rest opens', async ({ page }) => {
  await open(page)
  const good = await page.evaluate(async () => {
    const { records, saved } = window.sitting.hit(1)
    await saved
    return records[0]!
  })
  await plant(page, 'torn-1', { ...good, id: 'torn-1', writer: 'torn', seq: 1 })
  await plant(page, 'odd', 42)
  await open(page)
  expect(await count(page)).toBe(1)
  const aside = await page.evaluate(() =>
    window.sitting.journal.opening.quarantined.map((entry) => entry.reason),
  )
  expect(aside.sort()).toEqual(['shape', 'sum'])
  expect(await storedIds(page)).toEqual([good.id])
  expect(await storedIds(page, 'quarantine')).toHaveLength(2)
})

test('a record of a newer program makes the journal read-only, and stays where it is', async ({ page }) => {
  await open(page)
  await page.evaluate(() => window.sitting.hit(1).saved)
  await plant(page, 'future-1', { v: 2, whatever: true })
  await open(page)
  const seen = await page.evaluate(() => {
    const { journal, hit } = window.sitting
    let refused = false
    try {
      hit(1)
    } catch {
      refused = true
    }
    return {
      count: journal.records.length,
      readOnly: journal.readOnly,
      newer: journal.opening.newer,
      refused,
    }
  })
  expect(seen).toEqual({ count: 1, readOnly: true, newer: 1, refused: true })
  expect(await storedIds(page)).toContain('future-1')
})

test('a newer program in another tab stops this one from writing, and is told', async ({ context }) => {
  const page = await context.newPage()
  await open(page)
  await page.evaluate(() => window.sitting.hit(1).saved)
  const other = await context.newPage()
  await open(other)
  await other.evaluate(() => window.sitting.journal.close())
  await other.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside', 99)
        opening.onblocked = () => reject(new Error('blocked by the older page'))
        opening.onsuccess = () => resolve()
      }),
  )
  // Told at once: nothing is taken that could not be kept.
  await expect.poll(() => page.evaluate(() => window.sitting.journal.readOnly)).toBe(true)
  expect(
    await page.evaluate(() =>
      Promise.resolve()
        .then(() => window.sitting.hit(2))
        .then(
          () => 'kept',
          () => 'refused',
        ),
    ),
  ).toBe('refused')
  await other.close()
  await open(page)
  expect(await page.evaluate(() => window.sitting.journal.readOnly)).toBe(true)
  expect(await count(page)).toBe(1)
})

// Long: left to `npm run prove`.
test(
  'a long season opens, and packing it changes nothing but the time that takes',
  LONG,
  async ({ page }) => {
    await open(page)
    const before = await page.evaluate(async () => {
      const { journal } = window.sitting
      const events = Array.from(
        { length: 10_000 },
        (_, clock) => ({ kind: 'started', clock, dueAt: 0 }) as const,
      )
      await journal.append(events, { at: Date.now(), tz: 0 }).saved
      return journal.records
    })
    await open(page)
    const single = await page.evaluate(() => window.sitting.openMs)
    await page.evaluate(() => window.sitting.journal.tidy())
    expect((await storedIds(page)).length).toBe(10)
    await open(page)
    const packed = await page.evaluate(() => window.sitting.openMs)
    expect(await page.evaluate(() => window.sitting.journal.records)).toEqual(before)
    console.log(`opening 10,000 records: ${single.toFixed(0)} ms singly, ${packed.toFixed(0)} ms packed`)
  },
)
