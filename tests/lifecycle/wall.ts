import type { Page } from 'puppeteer-core'

declare global {
  interface Window {
    /** From the next time on that the page stands still for over a second and a half, its wall clock is so much later, ms. */
    sleepFor: (ms: number) => void
  }
}

/**
 * Sets the clock on the wall of a page and all that it opens later, epoch ms. The page's own time goes on as it is, and
 * stands still while `sleepFor` has the phone asleep.
 */
export async function setWall(page: Page, wallMs: number): Promise<void> {
  await page.emulateTimezone('Europe/London')
  await page.evaluateOnNewDocument((aheadMs) => {
    const Real = Date
    let ahead = aheadMs
    let asleep = 0
    let last = Real.now()
    const told = () => {
      const now = Real.now()
      if (asleep > 0 && now - last > 1500) {
        ahead += asleep
        asleep = 0
      }
      last = now
      return now + ahead
    }
    class Told extends Real {
      constructor(...given: []) {
        super(...(given.length === 0 ? ([told()] as unknown as []) : given))
      }
      static override now = told
    }
    window.Date = Told as DateConstructor
    window.sleepFor = (ms) => {
      told()
      asleep = ms
    }
  }, wallMs - Date.now())
}
