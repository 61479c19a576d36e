/** A year of another phone's records is taken in without freezing the page. */
import { writeFile } from 'node:fs/promises'
import { expect, test } from '@playwright/test'
import { writeBackup } from '../../src/store/backup.ts'
import { recordsOf, season } from '../fixtures/season.ts'
import type { Traced } from '../fixtures/traced.ts'
import { opened, plantRecords } from './bench.ts'
import { LONG } from './places.ts'

/** Events of a year, and how many of them the phone had before. */
const YEAR = 50_000
const OWN = 10_000
/** Longest that the page's thread may be at one thing, ms. */
const LONGEST_MS = 50
/** A phone of a sixth of this machine's speed. */
const SLOWDOWN = 6

/** What runs of the page's own; what was waited for is gone on with at a checkpoint. */
const SCRIPTS = ['v8.callFunction', 'v8.run', 'BlinkScheduler_PerformMicrotaskCheckpoint']

const sum = (of: readonly Traced[]) => of.reduce((all, { tdur = 0 }) => all + tdur, 0)

/** Merged and folded by then on any machine, ms. */
const MERGED_MS = 110_000

test(
  `a year of records is merged in slices, none over ${LONGEST_MS} ms on a slow phone`,
  LONG,
  async ({ page, browser }) => {
    test.setTimeout(400_000)
    const played = season(YEAR)
    // Nothing of it is ahead of the clock.
    const lateMs = Date.now() - 86_400_000 - (played.at(-1)?.at ?? 0)
    const year = recordsOf(played.map((one) => ({ ...one, at: one.at + lateMs })))
    await page.goto('./')
    await opened(page)
    // Every fifth is here: both lie among each other.
    await plantRecords(
      page,
      year.filter((_, i) => i % (YEAR / OWN) === 0),
    )
    await page.goto('./#/room/keep')
    await page.reload()
    // Never marked, they are all examined first.
    await page.locator('#app:not([aria-busy]) > *').first().waitFor({ timeout: 60_000 })
    const input = page.locator('input[type="file"]')
    await input.waitFor({ state: 'attached' })
    // Comparing the second copy, keeping the files: over by then.
    await page.waitForTimeout(6000)
    const file = test.info().outputPath('year.txt')
    await writeFile(file, writeBackup(year, { at: Date.now(), tz: 0 }))
    const session = await page.context().newCDPSession(page)
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN })
    await browser.startTracing(page, {
      categories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline', 'v8'],
    })
    // Joined as soon as it was looked into, and left for a screen that shows nothing of the table: what another costs to
    // draw anew is no part of it. Asking from here would be tasks of its own.
    await page.evaluate(() =>
      new MutationObserver((_, observer) => {
        const join = document.querySelector<HTMLButtonElement>('.looked button')
        if (!join) return
        observer.disconnect()
        // As a finger does: in a task of its own.
        setTimeout(() => {
          join.click()
          setTimeout(() => location.replace('#/first'))
        })
      }).observe(document.body, { subtree: true, childList: true }),
    )
    await input.setInputFiles(file)
    // Not asked meanwhile whether it is there: the question would be a task of its own.
    await page.waitForTimeout(MERGED_MS)
    const trace: { readonly traceEvents: readonly Traced[] } = JSON.parse(
      (await browser.stopTracing()).toString(),
    )
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 })
    await page.evaluate(() => location.replace('#/room/keep'))
    await input.setInputFiles(file)
    const all = `${YEAR} notes`
    await expect(page.locator('.looked').filter({ hasText: all })).toContainText(' 0 not here yet.', {
      timeout: 90_000,
    })
    const main = trace.traceEvents.find(({ args }) => args.name === 'CrRendererMain')
    const own = trace.traceEvents
      .filter(
        ({ ph, tdur, pid, tid }) =>
          ph === 'X' && tdur !== undefined && pid === main?.pid && tid === main?.tid,
      )
      .sort((a, b) => a.ts - b.ts)
    /** The first of them at that time or later. */
    const from = (ts: number) => {
      let [low, high] = [0, own.length]
      while (low < high) {
        const middle = (low + high) >> 1
        if ((own[middle]?.ts ?? 0) < ts) low = middle + 1
        else high = middle
      }
      return low
    }
    // Script of the page's. What the browser collects as garbage cannot be sliced; the tracer asks nothing of scripts.
    const slices = own
      .filter((task) => task.name === 'RunTask')
      .map((task) => {
        const inside = own.slice(from(task.ts), from(task.ts + (task.dur ?? 0)))
        const garbage = inside.filter(({ name }) => name === 'MajorGC' || name === 'MinorGC')
        return {
          ms: ((task.tdur ?? 0) - sum(garbage)) / 1000,
          scripted: inside.some(({ name }) => SCRIPTS.includes(name)),
        }
      })
      .filter(({ scripted }) => scripted)
      .map(({ ms }) => ms)
      .sort((a, b) => b - a)
    expect(slices.length).toBeGreaterThan(50)
    console.log(
      `longest slices at ${SLOWDOWN}x: ${slices.slice(0, 8).map((ms) => ms.toFixed(0))} of ${LONGEST_MS} ms`,
    )
    expect(slices[0]).toBeLessThan(LONGEST_MS)
  },
)
