import type { Page } from 'puppeteer-core'
import type {} from './page/sitting.ts'
import { CLOCKS } from './page/sitting.ts'

/** What the kill test does with a page: the bare journal here, the app elsewhere. */
export interface Sitting {
  /** Folder that is served. */
  readonly root: string
  /** The page, opened; ready for hits when it resolves. */
  open(page: Page, address: string): Promise<void>
  /** One hit of the potter's; `random` is 0 to 1, `saved` for ids that the page itself does not tell as saved. */
  hit(page: Page, random: () => number, saved: (ids: readonly string[]) => void): Promise<void>
  /** Ids that the page itself knows after a start, where it can be asked. */
  known?(page: Page): Promise<string[]>
  /** Longest time from the first hit to the kill. */
  readonly longestMs: number
  /** Shortest and longest pause between two hits. */
  readonly pauseMs: readonly [least: number, most: number]
}

/** Five clocks on the journal and nothing else. */
export const clocksOnJournal = (root: string): Sitting & Required<Pick<Sitting, 'known'>> => ({
  root,
  longestMs: 900,
  // Faster than any hand.
  pauseMs: [0, 40],
  async open(page, address) {
    await page.goto(address)
    await page.waitForSelector('body[data-ready]')
  },
  async hit(page, random) {
    const clock = 1 + Math.floor(random() * CLOCKS)
    await page.evaluate((chosen) => {
      document.querySelector<HTMLButtonElement>(`[data-clock="${chosen}"]`)?.click()
    }, clock)
  },
  known: (page) => page.evaluate(() => window.sitting.journal.records.map((record) => record.id)),
})
