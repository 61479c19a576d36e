import { expect, type Page } from '@playwright/test'
import { loadsOf } from '../../src/table/load/loads.ts'
import { glazed } from '../fixtures/glazed.ts'
import { BenchPage, EVENING } from './bench.ts'
import { heard, said } from './tongue.ts'

/** Loading, firing and cooling by the bar of the kiln's screen. */
export class KilnPage {
  constructor(
    readonly page: Page,
    readonly bench: BenchPage,
  ) {}

  static async open(page: Page, times = 1, hours?: number): Promise<KilnPage> {
    const bench = await BenchPage.on(page, glazed(EVENING.getTime(), times, hours))
    await page.goto('./#/shelf')
    const kiln = new KilnPage(page, bench)
    await expect(kiln.bar).toBeVisible()
    return kiln
  }

  get bar() {
    return this.page.locator('.kiln [data-press="bar"]')
  }
  label = async () => heard(this.page, (await this.bar.textContent()) ?? '')
  get face() {
    return this.page.locator('.kiln-main')
  }
  says = (text: string | RegExp) => expect(this.bar).toHaveText(said(this.page, text), { timeout: 20_000 })

  /** What is fetched, or computed beside the page, shows with a frame after it has come. */
  shows = (text: string | RegExp) =>
    expect(async () => {
      await this.page.clock.runFor(50)
      await expect(this.face).toContainText(text, { timeout: 200 })
    }).toPass({ timeout: 20_000 })

  async hit(): Promise<void> {
    await this.page.clock.runFor(450)
    // The rules for touches go by the browser's own stamps, which no clock here moves.
    await this.page.waitForTimeout(420)
    const before = await this.bar.textContent()
    await this.bar.tap()
    await this.page.clock.runFor(150)
    // What comes next may be fetched first, in real time; a hit that is refused leaves the bar as it is.
    for (let i = 0; i < 20 && (await this.bar.textContent()) === before; i++) {
      await this.page.waitForTimeout(30)
      await this.page.clock.runFor(20)
    }
  }
  async key(name: string | RegExp): Promise<void> {
    await this.page.clock.runFor(150)
    const key = this.page
      .locator('.kiln')
      .getByRole('button', { name: said(this.page, name) })
      .first()
    // What lies under the strip that takes back is drawn up.
    await key.evaluate((node) => node.scrollIntoView({ block: 'center' }))
    await key.tap()
    await this.page.clock.runFor(150)
  }
  async pass(minutes: number): Promise<void> {
    await this.page.clock.fastForward(minutes * 60_000 - 1000)
    await this.page.clock.runFor(1000)
  }
  /** READING, its digits, SAVE. */
  async read(text: string): Promise<void> {
    await this.hit()
    await this.type(text)
    await this.hit()
  }
  async type(text: string): Promise<void> {
    for (const digit of text) {
      await this.page.locator('.kiln-pad').getByText(digit, { exact: true }).tap()
      await this.page.clock.runFor(30)
    }
  }
  async load() {
    const [load] = loadsOf(await this.bench.table())
    if (!load) throw new Error('no load')
    return load
  }
  /** As after the phone has killed the page. */
  async again(): Promise<void> {
    await this.load()
    await this.page.reload()
    await expect(this.bar).toBeVisible()
    await this.page.clock.runFor(500)
  }
  /** Wet pots, to be candled first, from PROPOSE to KILN ON. */
  async candled(): Promise<void> {
    await this.hit()
    await this.hit()
    await this.shows('not dry when the kiln goes on')
    await this.key('Candle first')
    await this.shows('may go in now')
    await this.hit()
    await this.says('SHELF 1 AS DRAWN')
    while ((await this.bar.textContent()) !== 'KILN ON') await this.hit()
  }
}
