/**
 * What the page's own thread works, counted by its processor's clock and multiplied, as a slow phone would: unlike times by
 * the wall it is nearly the same on a busy machine. The wait for a frame, at most 17 ms, and for a disk are not in it.
 */
import '../../src/table/forecast/walls.ts'
import type { CDPSession, Page } from '@playwright/test'
import { armed, armedAmong, recordsOf, season } from '../fixtures/season.ts'
import type { Traced } from '../fixtures/traced.ts'
import { plant, singly, withApp } from './phone.ts'

const SLOWDOWN = 6
const EVENTS = 5000
const HITS = 100
const POTS = 40
/** Longer than the guard against a second hit after a card has changed. */
const BETWEEN_MS = 520
const LOOKED_AT_MS = 3000
/** Until then a first visit has fetched all that it fetches by itself. */
const SETTLED_MS = 6000
/** Longer tasks keep a finger waiting; what is beyond counts as blocking. */
const LONG_MS = 50
const THERE = 'bench-there'
/** Of the 100 ms until a hit is seen, what a frame leaves. */
const HIT_BUDGET_MS = 83

async function traced(session: CDPSession, work: () => Promise<void>): Promise<readonly Traced[]> {
  const events: Traced[] = []
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as Traced[])))
  const includedCategories = [
    'devtools.timeline',
    'disabled-by-default-devtools.timeline',
    'toplevel',
    'blink.user_timing',
  ]
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories } })
  await work()
  const complete = new Promise((done) => session.once('Tracing.tracingComplete', done))
  await session.send('Tracing.end')
  await complete
  return events.sort((a, b) => a.ts - b.ts)
}

/** Of the thread that `marks` is of: its tasks, ms as slow, and when it handed a frame on. */
function threadOf(events: readonly Traced[], marks: readonly Traced[]) {
  const [first] = marks
  if (!first) throw new Error('the trace has nothing of what was looked for')
  const own = events.filter(({ pid, tid }) => pid === first.pid && tid === first.tid)
  const tasks = own
    .filter(({ name, ph }) => name === 'RunTask' && ph === 'X')
    .map(({ ts, dur = 0, tdur = 0 }) => ({ from: ts, until: ts + dur, ms: (SLOWDOWN * tdur) / 1000 }))
  if (!tasks.some(({ ms }) => ms > 0)) throw new Error('the trace counts no work')
  const frames = own.filter(({ name }) => name === 'Commit').map(({ ts }) => ts)
  /** Work between two moments, whole tasks. */
  const between = (fromTs: number, untilTs: number) =>
    tasks.reduce((sum, { from, until, ms }) => (until > fromTs && from <= untilTs ? sum + ms : sum), 0)
  const frameAfter = (ts: number) => frames.find((frame) => frame > ts) ?? Number.POSITIVE_INFINITY
  return { tasks, between, frameAfter }
}

async function hitsOn(records: ReturnType<typeof recordsOf>): Promise<number> {
  return withApp(async (context, url) => {
    const page = await context.newPage()
    await page.goto(url)
    await page.waitForSelector('#app:not([aria-busy])')
    await plant(page, singly(records))
    await page.goto(`${url}#/bench`)
    await page.reload()
    const bar = page.locator('[data-press="bar"]').first()
    await bar.waitFor()
    await page.waitForTimeout(LOOKED_AT_MS)
    const events = await traced(await context.newCDPSession(page), async () => {
      for (let hit = 0; hit < HITS; hit++) {
        await bar.tap({ force: true, timeout: 5000 })
        await page.waitForTimeout(BETWEEN_MS)
      }
    })
    const ups = events.filter(({ name, args }) => name === 'EventDispatch' && args.data?.type === 'pointerup')
    if (ups.length < HITS) throw new Error(`only ${ups.length} hits were seen`)
    const { between, frameAfter } = threadOf(events, ups)
    const works = ups.map(({ ts }) => between(ts, frameAfter(ts))).sort((a, b) => a - b)
    return works[Math.floor(works.length * 0.98)] ?? Number.NaN
  })
}

export const benchHitWork = async () => [
  {
    name: `work from hit to frame, one evening's pots, p98 of ${HITS}, times ${SLOWDOWN}`,
    ms: await hitsOn(recordsOf(armed(Date.now()))),
    budgetMs: HIT_BUDGET_MS,
  },
  {
    name: `work from hit to frame, ${POTS} pots, p98 of ${HITS}, times ${SLOWDOWN}`,
    ms: await hitsOn(recordsOf(armedAmong(POTS, Date.now()))),
    budgetMs: HIT_BUDGET_MS,
  },
]

/** Marks in the trace when what `selector` names is there. */
const markWhenThere = (page: Page, selector: string) =>
  page.addInitScript(
    ([wanted, mark]) => {
      const looking = new MutationObserver(() => {
        if (!document.querySelector(wanted)) return
        looking.disconnect()
        performance.mark(mark)
      })
      looking.observe(document, { childList: true, subtree: true, attributes: true })
    },
    [selector, THERE] as const,
  )

export function benchFirstVisitWork() {
  return withApp(async (context, url) => {
    const page = await context.newPage()
    await markWhenThere(page, '#app:not([aria-busy])')
    const events = await traced(await context.newCDPSession(page), async () => {
      await page.goto(url)
      await page.waitForTimeout(SETTLED_MS)
    })
    const { tasks } = threadOf(
      events,
      events.filter(({ name }) => name === THERE),
    )
    const ms = tasks.reduce((sum, task) => sum + Math.max(0, task.ms - LONG_MS), 0)
    return [{ name: `blocking work of a first visit, times ${SLOWDOWN}`, ms, budgetMs: 150 }]
  })
}

export function benchStartWork() {
  return withApp(async (context, url) => {
    const page = await context.newPage()
    await page.goto(url)
    await page.evaluate(() => navigator.serviceWorker.ready)
    await page.waitForSelector('#app:not([aria-busy])')
    await plant(page, singly(recordsOf(season(EVENTS))))
    await markWhenThere(page, '.bench [data-press]')
    const open = async () => {
      await page.goto('about:blank')
      await page.goto(`${url}#/bench`)
      await page.waitForSelector('.bench [data-press]')
      await page.waitForTimeout(LOOKED_AT_MS)
    }
    // A page that lived keeps what it computed for the next one.
    await open()
    const events = await traced(await context.newCDPSession(page), open)
    const marks = events.filter(({ name }) => name === THERE)
    const { between, frameAfter } = threadOf(events, marks)
    const ms = between(0, frameAfter(marks[0]?.ts ?? 0))
    return [
      {
        name: `work of a start with ${EVENTS} events never packed, times ${SLOWDOWN}`,
        ms,
        budgetMs: 800,
      },
    ]
  })
}
