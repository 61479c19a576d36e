import '../../src/table/forecast/walls.ts'
import { expect, type Locator, type Page } from '@playwright/test'
import type { Stamped, TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { phoneOf } from '../../src/table/fold/seen.ts'
import type { PotState, Table } from '../../src/table/model/state.ts'
import { recordsOfHits } from '../fixtures/hits.ts'
import { tableOf } from '../fixtures/seen-by.ts'
import { heard, said } from './tongue.ts'

export const EVENING = new Date('2026-03-03T18:00:00')

/** Between two frames while time is told: what moves with them is looked at in tests of its own, and 60 take long to tell. */
const FRAME_MS = 100

/** From now on time passes only as told, and the screen has few frames. */
export async function tellTime(page: Page, time: Date): Promise<void> {
  await page.clock.install({ time })
  await page.addInitScript((ms) => {
    window.requestAnimationFrame = (frame) => window.setTimeout(() => frame(performance.now()), ms)
    window.cancelAnimationFrame = (id) => window.clearTimeout(id)
  }, FRAME_MS)
}

/** Resolves when the program behind the first screen is there. */
export const opened = (page: Page) => expect(page.locator('#app:not([aria-busy]) > *').first()).toBeVisible()

/**
 * Lets time pass until what is fetched after the first card shows: its timers stand still with the clock, its code comes in
 * real time.
 */
export async function fetched(shown: Locator): Promise<void> {
  const page = shown.page()
  for (let i = 0; i < 100 && !(await shown.isVisible()); i++) {
    await page.clock.runFor(500)
    await page.waitForTimeout(60)
  }
  await expect(shown).toBeVisible()
}

/** Ids in a store of the page's own table, or of another database, read past the app; none where it was never made. */
export const storedIds = (page: Page, store = 'journal', database = 'bucketside') =>
  page.evaluate(
    ([from, name]) =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open(from)
        // Made here it would be one without stores, for ever.
        let made = false
        opening.onupgradeneeded = () => {
          made = true
          opening.transaction?.abort()
        }
        opening.onerror = () => (made ? resolve([]) : reject(opening.error))
        opening.onsuccess = () => {
          const reading = opening.result.transaction(name).objectStore(name).getAllKeys()
          reading.onsuccess = () => {
            opening.result.close()
            resolve(reading.result as string[])
          }
        }
      }),
    [database, store] as const,
  )

/** Puts records into the journal of the own table, past the app, which has been open once. */
export const plantRecords = (page: Page, records: readonly { readonly id: string }[], as?: string) =>
  page.evaluate(
    async ({ rows, as }) => {
      // Opened before the app has, it would be a database without its stores. A timer may stand still here.
      while (!(await indexedDB.databases()).some(({ name }) => name === 'bucketside'));
      return new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('bucketside')
        opening.onsuccess = () => {
          const writing = opening.result.transaction(['journal', 'local'], 'readwrite')
          if (as) writing.objectStore('local').put(as, 'phone')
          for (const row of rows) writing.objectStore('journal').put(row, row.id)
          writing.oncomplete = () => {
            opening.result.close()
            resolve()
          }
          writing.onerror = () => reject(writing.error)
        }
      })
    },
    { rows: records, as },
  )

/** The same of hits. */
export const plant = (page: Page, events: readonly (readonly TableEvent[])[], at: Date) =>
  plantRecords(page, recordsOfHits(events, at.getTime()))

/** The app as a person with wet hands has it: a bar, two corners, and time that passes as told. */
export class BenchPage {
  constructor(readonly page: Page) {}

  /** Opens the app on the demo evening, time standing still. */
  static async demo(page: Page, at = EVENING): Promise<BenchPage> {
    await tellTime(page, at)
    await page.goto('./')
    await page.getByRole('button', { name: said(page, 'Try the demo evening') }).tap()
    const bench = new BenchPage(page)
    // The demo is a page of its own: two are opened by then. Before, a leap of time is a database that does not answer.
    await expect(bench.bar).toBeVisible({ timeout: 30_000 })
    await page.clock.pauseAt(new Date(at.getTime() + 60_000))
    await bench.dismissAway()
    return bench
  }

  /** Opens the app on a journal that was written before, time standing still at `at`. */
  static async on(page: Page, events: readonly (readonly TableEvent[])[], at = EVENING): Promise<BenchPage> {
    await tellTime(page, at)
    await page.goto('./')
    await opened(page)
    await plant(page, events, at)
    await page.goto('./#/bench')
    await page.reload()
    const bench = new BenchPage(page)
    await expect(page.locator('.bench')).toBeVisible()
    await page.clock.pauseAt(new Date(at.getTime() + 60_000))
    await bench.dismissAway()
    return bench
  }

  /** The demo evening with these pots only. */
  static only(page: Page, ...numbers: number[]): Promise<BenchPage> {
    const away = [31, 32, 33, 34, 35, 36, 37, 38].filter((number) => !numbers.includes(number))
    const gone = away.map((number) => ({ kind: 'pot-gone' as const, potId: `demo.${number}` }))
    return BenchPage.on(page, [demoEvents(), gone])
  }

  get bar() {
    return this.page.locator('.bench [data-press="bar"]').first()
  }

  get face() {
    return this.page.locator('.bench-main')
  }

  /** What the bar says, in its large letters; empty where there is none, as in a count. */
  async label(): Promise<string> {
    const large = this.page.locator('.bench .bar-label, .bench .bar-answer-big > :first-child').first()
    return (await large.count()) === 0 ? '' : heard(this.page, ((await large.textContent()) ?? '').trim())
  }

  /** Time passes without anybody touching the phone. A gap as long as a minute shows the list of what came due. */
  async pass(seconds: number): Promise<void> {
    const ms = seconds * 1000
    if (ms > 2000) await this.page.clock.fastForward(ms - 1000)
    await this.page.clock.runFor(Math.min(ms, 1000))
    await this.dismissAway()
  }

  private async dismissAway(): Promise<void> {
    const back = this.page.locator('.bench-returned ~ .bar .bar-live')
    if ((await back.count()) === 0) return
    await this.page.clock.runFor(500)
    await back.tap()
    await this.page.clock.runFor(500)
  }

  /** A hit on the bar, and the moment after it. */
  async hit(): Promise<void> {
    await this.page.clock.runFor(450)
    await this.bar.tap()
    await this.page.clock.runFor(50)
    await this.settled()
  }

  /** The order of work is that of the table as it is, where one is told at all. */
  async settled(): Promise<void> {
    await expect(this.page.locator('html')).not.toHaveAttribute('data-order', 'asked', { timeout: 20_000 })
    await this.page.clock.runFor(20)
  }

  /** The bench has its first order of work. */
  async told(): Promise<void> {
    await this.page.clock.runFor(1500)
    await expect(this.page.locator('html')).toHaveAttribute('data-order', 'told', { timeout: 20_000 })
    await this.page.clock.runFor(20)
  }

  /** Holds the bar for its other meaning. */
  async holdBar(): Promise<void> {
    await this.page.clock.runFor(450)
    await this.bar.dispatchEvent('pointerdown', { pointerId: 5, button: 0, clientX: 180, clientY: 500 })
    await this.page.clock.runFor(2050)
    await this.bar.dispatchEvent('pointerup', { pointerId: 5, clientX: 180, clientY: 500 }).catch(() => {})
    await this.page.clock.runFor(50)
  }

  /** Other, then the tiles with these words, one after another. */
  async other(...tiles: (string | RegExp)[]): Promise<void> {
    // The order of work may bring another card in this very moment: a hit on a fresh card does nothing.
    for (let i = 0; i < 3; i++) {
      await this.page.clock.runFor(450)
      await this.page.locator('.corner-other').tap()
      await this.page.clock.runFor(50)
      const opened = this.page.locator('.other').waitFor({ timeout: 2000 })
      if (
        await opened.then(
          () => true,
          () => false,
        )
      )
        break
    }
    const shown = () => this.page.evaluate(() => document.querySelector('.other')?.innerHTML)
    for (const tile of tiles) {
      const before = await shown()
      for (let i = 0; i < 2 && (await shown()) === before; i++) {
        await this.page.clock.runFor(450)
        await this.page
          .locator('.other')
          .getByRole('button', { name: said(this.page, tile) })
          .first()
          .tap()
        await this.page.clock.runFor(50)
      }
    }
  }

  /** The card follows the hand to this pot. */
  pick(number: number): Promise<void> {
    return this.other('Another pot', new RegExp(`${number}$`))
  }

  /** The table as the journal on the phone gives it. */
  async table(): Promise<Table> {
    await expect
      .poll(() => this.page.evaluate(() => document.querySelector('.not-saved') === null))
      .toBe(true)
    const records = await this.page.evaluate(
      () =>
        new Promise<unknown[]>((resolve, reject) => {
          const demo = sessionStorage.getItem('bucketside.demo') !== null
          const opening = indexedDB.open(demo ? 'bucketside-demo' : 'bucketside')
          opening.onerror = () => reject(opening.error)
          opening.onsuccess = () => {
            const all = opening.result.transaction('journal').objectStore('journal').getAll()
            all.onsuccess = () => resolve(all.result)
            all.onerror = () => reject(all.error)
          }
        }),
    )
    // At rest they may lie in packs.
    const stamped = records.flatMap((value) => {
      const { text } = value as { text?: string }
      return text === undefined ? [value] : text.split('\n').map((line): unknown => JSON.parse(line))
    }) as (Stamped & { order: number; seq: number })[]
    const sorted = [...stamped].sort((a, b) => a.order - b.order || a.seq - b.seq)
    const last = sorted.at(-1)
    return tableOf(sorted, last ? phoneOf(last) : '')
  }

  async pot(number: number): Promise<PotState> {
    const pot = Object.values((await this.table()).pots).find((p) => p.facts.number === number)
    if (!pot) throw new Error(`no pot ${number}`)
    return pot
  }

  /** One pot alone from bisque to wiped: picked, waxed, set, wiped, dry. */
  async prepare(number: number): Promise<void> {
    await this.pick(number)
    await this.hit()
    // Nothing is left to wax: it is asked whether the pan is off.
    if ((await this.label()) === 'IT IS OFF') await this.hit()
    await this.pass(400)
    await this.pick(number)
    await this.hit()
    await this.pass(62)
  }

  /** Stirs the bucket the picked pot wants, and has its card armed. */
  async arm(number: number): Promise<void> {
    await this.pick(number)
    if ((await this.label()).startsWith('STIRRED')) {
      await this.hit()
      await this.pick(number).catch(() => {})
    }
    await expect(this.bar).toContainText('START')
  }
}
