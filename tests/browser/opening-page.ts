import { expect, type Locator, type Page } from '@playwright/test'
import { firedOf } from '../../src/table/fired/fired-pot.ts'
import { firedLoad } from '../fixtures/opened.ts'
import { BenchPage, EVENING } from './bench.ts'
import { heard, said } from './tongue.ts'

/** A gloved finger finds what is as large as this, px. */
export const GLOVE_PX = 108

/** The opening by its bar and its large keys. */
export class OpeningPage {
  constructor(
    readonly page: Page,
    readonly bench: BenchPage,
  ) {}

  static async open(page: Page, lid: 'shut' | 'up'): Promise<OpeningPage> {
    const bench = await BenchPage.on(page, firedLoad(EVENING.getTime(), lid))
    await page.goto('./#/opening')
    const opening = new OpeningPage(page, bench)
    await expect(opening.bar).toBeVisible()
    return opening
  }
  get bar() {
    return this.page.locator('.open [data-press="bar"]')
  }
  get title() {
    return this.page.locator('.desk-title')
  }
  says = (text: string | RegExp) => expect(this.bar).toHaveText(said(this.page, text))
  label = async () => heard(this.page, (await this.bar.textContent()) ?? '')
  private async drawn(): Promise<void> {
    await this.page.clock.runFor(200)
    await this.page.waitForTimeout(60)
    await this.page.clock.runFor(100)
    // What is taken back is folded anew, a slice at a time: each waits for a timer.
    await this.page.waitForTimeout(60)
    await this.page.clock.runFor(200)
  }
  hit = () => this.press(this.bar)
  async press(key: Locator): Promise<void> {
    await this.page.clock.runFor(450)
    // The rules for touches go by the browser's own stamps, which no clock here moves.
    await this.page.waitForTimeout(420)
    await key.tap()
    await this.drawn()
  }
  /** A key for gloves: it is large enough, and all of it is in sight. */
  async key(name: string): Promise<void> {
    const key = this.page.locator('.open-key', { hasText: name }).first()
    await expect(key).toBeInViewport({ ratio: 1 })
    const box = await key.boundingBox()
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(GLOVE_PX)
    await key.tap()
    await this.drawn()
  }
  /** Taps the ruler so far down its wall, 0 where the glaze ended, 1 at the shelf; beyond it is the shelf. */
  async wall(share: number): Promise<void> {
    const box = await this.page.locator('.ruler').boundingBox()
    if (!box) throw new Error('no ruler')
    await this.page.touchscreen.tap(box.x + 60, box.y + 40 + (box.height - 92) * share)
    await this.drawn()
  }
  /** As after the phone has killed the page. */
  async again(): Promise<void> {
    await this.bench.table()
    await this.page.reload()
    await expect(this.bar).toBeVisible()
    await this.page.clock.runFor(500)
  }
  async fired(number: number) {
    const pot = (await this.bench.table()).pots[`demo.${number}`]
    if (!pot) throw new Error(`no pot ${number}`)
    return { ...firedOf(pot), gone: pot.gone }
  }
}
