/** A year of fired pots is looked back at without waiting: 1,000 pots of three coats, 400 photos. */
import { type CDPSession, expect, type Page, test } from '@playwright/test'
import { recordsOf } from '../fixtures/season.ts'
import { yearOf } from '../fixtures/year.ts'
import { opened, plantRecords } from './bench.ts'
import { LONG } from './places.ts'

const POTS = 1000
/** A page shows what it is for within so much of the processor's time, ms: what others do on the machine is not in it. */
const OPENS_MS = 1000
const DAY_MS = 86_400_000

/** Photos as the app keeps them, all of one picture. */
const plantPhotos = (page: Page, photoIds: readonly string[]) =>
  page.evaluate(async (ids) => {
    const canvas = document.createElement('canvas')
    canvas.width = 1280
    canvas.height = 960
    const context = canvas.getContext('2d')
    if (!context) throw new Error('no canvas')
    context.fillStyle = '#ddd'
    context.fillRect(0, 0, 1280, 960)
    context.fillStyle = '#865'
    context.fillRect(400, 200, 480, 640)
    const letters = atob(canvas.toDataURL('image/jpeg', 0.82).split(',')[1] ?? '')
    const data = Uint8Array.from(letters, (letter) => letter.charCodeAt(0)).buffer
    await new Promise<void>((resolve, reject) => {
      const opening = indexedDB.open('bucketside-photos', 1)
      opening.onupgradeneeded = () => opening.result.createObjectStore('photos')
      opening.onerror = () => reject(opening.error)
      opening.onsuccess = () => {
        const writing = opening.result.transaction('photos', 'readwrite')
        for (const id of ids) writing.objectStore('photos').put({ type: 'image/jpeg', data }, id)
        writing.oncomplete = () => {
          opening.result.close()
          resolve()
        }
        writing.onerror = () => reject(writing.error)
      }
    })
  }, photoIds)

async function withYear(page: Page): Promise<void> {
  const { play, photoIds } = yearOf(POTS, Date.now() - DAY_MS)
  await page.goto('./')
  await opened(page)
  await plantRecords(page, recordsOf(play.events))
  await plantPhotos(page, photoIds)
  await page.goto('./#/board')
  await page.reload()
  await opened(page)
  // The other parts are fetched by then.
  await page.waitForTimeout(4000)
}

/** From a change of the address until this shows: by the clock, and what the page's thread took of it, ms. */
async function timed(page: Page, cdp: CDPSession, to: string, shows: string) {
  const taken = async (): Promise<number> => {
    const { metrics } = await cdp.send('Performance.getMetrics')
    return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0) * 1000
  }
  const before = await taken()
  const clock = await page.evaluate(
    ([hash, selector]) =>
      new Promise<number>((resolve) => {
        const from = performance.now()
        location.hash = hash
        const look = () => {
          if (!document.querySelector(selector)) return requestAnimationFrame(look)
          return resolve(performance.now() - from)
        }
        requestAnimationFrame(look)
      }),
    [to, shows] as const,
  )
  return { clock, own: (await taken()) - before }
}

test(
  'a year is listed, told and drawn without a wait, and of its list what is near',
  LONG,
  async ({ page }) => {
    test.setTimeout(300_000)
    await withYear(page)
    const cdp = await page.context().newCDPSession(page)
    await cdp.send('Performance.enable', { timeDomain: 'threadTicks' })
    const took = {
      list: await timed(page, cdp, '/fired', '.open-fired button'),
      story: await timed(page, cdp, '/story/y39.3', '.open-story li'),
      plots: await timed(page, cdp, '/plots', '.back-part:first-child .plot'),
      results: await timed(page, cdp, '/results/demo.gatepost', '.open-fired button'),
    }
    for (const [what, { clock, own }] of Object.entries(took)) {
      console.log(`${what}: ${Math.round(own)} ms of the processor, ${Math.round(clock)} ms by the clock`)
      expect(own, what).toBeLessThan(OPENS_MS)
    }
    await page.goto('./#/fired')
    const rows = page.locator('.open-fired li')
    await expect(rows).toHaveCount(60)
    await expect(page.locator('.desk-title')).toContainText('1000 pots')
    const drawn = page.locator('canvas.is-drawn')
    await expect(drawn.first()).toBeVisible()
    const photos = await page.locator('.open-fired canvas').count()
    expect(await drawn.count()).toBeLessThan(photos)
    await page.getByRole('button', { name: '60 more of 940' }).tap()
    await expect(rows).toHaveCount(120)
    // Down the page as a thumb goes: what comes near is drawn.
    const before = await drawn.count()
    await rows.nth(100).scrollIntoViewIfNeeded()
    await expect.poll(() => drawn.count()).toBeGreaterThan(before)
  },
)
