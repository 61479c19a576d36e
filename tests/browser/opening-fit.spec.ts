import { expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { firedLoad, LOAD } from '../fixtures/opened.ts'
import { BenchPage, EVENING } from './bench.ts'
import { misfits } from './desk-page.ts'
import { GLOVE_PX, OpeningPage } from './opening-page.ts'

/** Guesses as long as they get: of a pot from none to the shelf, and of one a few millimetres. */
const guessed = (potId: string, mm: number | 'shelf', lowMm: number, highMm: number): TableEvent => ({
  kind: 'guessed',
  potId,
  loadId: LOAD,
  mm,
  app: { lowMm, likelyMm: highMm - 0.4, highMm, roomMm: 5.1 },
})
const GUESSES: readonly (readonly TableEvent[])[] = [
  [guessed('demo.35', 'shelf', 0, 5.1)],
  [guessed('demo.36', 3, 2.2, 4.1)],
]

/** What a gloved hand cannot do here: read, hit, or scroll to. */
async function faults(page: Page): Promise<string[]> {
  const found = await page.evaluate(misfits)
  const more = await page.evaluate((glove) => {
    const out: string[] = []
    // Three keys side by side: a phone of 320 px has no more.
    const wide = Math.min(glove, innerWidth * 0.3)
    const main = document.querySelector('.kiln-main')
    if (main && main.scrollHeight > main.clientHeight + 1)
      out.push(`${main.scrollHeight - main.clientHeight} px are scrolled to`)
    const [bar, live] = [document.querySelector('.bar'), document.querySelector('.bar-live')]
    const barTop = bar?.getBoundingClientRect().top ?? innerHeight
    if ((live?.getBoundingClientRect().height ?? 0) < glove) out.push('the bar is low')
    for (const key of document.querySelectorAll('.open-key, .open-step')) {
      const { width, height, bottom } = key.getBoundingClientRect()
      const cut = [...key.childNodes].some((part) => {
        const range = document.createRange()
        range.selectNodeContents(part)
        const text = range.getBoundingClientRect()
        return text.width > width || text.height > height
      })
      if (width < wide || height < glove || bottom > barTop || cut)
        out.push(`${key.textContent}: ${width} by ${height} px, ${bottom - barTop} px below the bar's edge`)
    }
    for (const caution of document.querySelectorAll('.caution'))
      if (caution.getBoundingClientRect().bottom > barTop) out.push('a caution is under the bar')
    return out
  }, GLOVE_PX)
  return [...found, ...more]
}

const TWICE = 32
const HANDS = [
  { width: 320, height: 568, letters: 16, units: 'metric' },
  { width: 360, height: 640, letters: 16, units: 'us' },
  { width: 320, height: 568, letters: TWICE, units: 'us' },
  { width: 360, height: 640, letters: TWICE, units: 'metric' },
] as const

/** Of these `npm test` looks at the smallest screen with the largest letters. */
const SLICE = HANDS.filter(({ width, letters }) => width === 320 && letters === TWICE)

for (const { width, height, letters, units } of process.env.PROVE ? HANDS : SLICE)
  test.describe(`${width} px, letters of ${letters} px, ${units}`, () => {
    test.use({ viewport: { width, height } })
    test.setTimeout(120_000)

    async function open(page: Page, lid: 'shut' | 'up') {
      const session = await page.context().newCDPSession(page)
      await session.send('Page.setFontSizes', { fontSizes: { standard: letters } })
      const opened: TableEvent = { kind: 'lid-opened', loadId: LOAD, tempC: 48 }
      const bench = await BenchPage.on(page, [
        ...firedLoad(EVENING.getTime(), 'shut'),
        [{ kind: 'settings-set', settings: { units } }],
        ...GUESSES,
        ...(lid === 'up' ? [[opened]] : []),
      ])
      await page.goto('./#/opening')
      const opening = new OpeningPage(page, bench)
      await opening.says(lid === 'up' ? 'GOOD' : 'SKIP')
      const found: string[] = []
      const look = async (moment: string) => {
        await page.clock.runFor(300)
        found.push(...(await faults(page)).map((fault) => `${moment}: ${fault}`))
      }
      const key = (name: string) => page.locator('.open-key', { hasText: name }).first().tap()
      return { opening, found, look, key }
    }

    test('a guess is read and tapped whole', async ({ page }) => {
      const { opening, found, look } = await open(page, 'shut')
      await look('to guess')
      await opening.wall(0.5)
      await look('tapped')
      await opening.hit()
      await look('to guess, just guessed another')
      await page.locator('.desk-head .key').tap()
      await page.locator('.open-pot').first().tap()
      await look('a guess that stands')
      expect(found).toEqual([])
    })

    test('nothing lies over anything on a pot that is judged, nor is scrolled to in gloves', async ({
      page,
    }) => {
      const { opening, found, look, key } = await open(page, 'up')
      await look('a pot')
      await opening.hit()
      await look('judged another')
      await key('RAN')
      await look('ran: how far')
      await opening.wall(0.4)
      await look('ran: measured')
      await opening.hit()
      await look('ran: longest drip')
      await opening.wall(1.05)
      await look('ran: dripped on the shelf')
      await opening.hit()
      await look('stuck')
      await key('KISSED')
      await key('GROUND OFF')
      await look('ground off')
      await key('OTHER')
      await look('other')
      for (const fault of ['shivered', 'blistered', 'wrong colour']) await key(fault)
      await look('shivered')
      await opening.hit()
      await look('all that can be wrong with it')
      await opening.hit()
      await look('that judged')
      await opening.press(page.locator('.strip-take-back'))
      await look('that taken back')
      expect(found).toEqual([])
    })
  })

/** Words that are broken over two lines, and numbers parted from theirs. */
const broken = (where: string): string[] => {
  const out: string[] = []
  const walker = document.createTreeWalker(
    document.querySelector(where) ?? document.body,
    NodeFilter.SHOW_TEXT,
  )
  for (let node = walker.nextNode(); node; node = walker.nextNode())
    for (const { 0: word, index } of (node.textContent ?? '').matchAll(/[^\s]+/g)) {
      const range = document.createRange()
      range.setStart(node, index)
      range.setEnd(node, index + word.length)
      if (range.getClientRects().length > 1) out.push(word)
    }
  return out
}

test.describe('in Spanish on the smallest phone', () => {
  test.use({ viewport: { width: 320, height: 568 }, locale: 'es-ES' })

  test('a pot of three figures is judged by whole words and whole keys, its guesses in sight', async ({
    page,
  }) => {
    const opened: TableEvent = { kind: 'lid-opened', loadId: LOAD, tempC: 48 }
    const bench = await BenchPage.on(page, [
      ...firedLoad(EVENING.getTime(), 'shut'),
      ...GUESSES,
      [opened],
      [{ kind: 'matched', loadId: LOAD, potId: 'demo.36', sureness: 0.34 }],
    ])
    await page.goto('./#/judge/demo.35')
    await new OpeningPage(page, bench).says('BIEN')
    for (const potId of ['demo.35', 'demo.36']) {
      await page.goto(`./#/judge/${potId}`)
      await page.clock.runFor(500)
      await expect(page.locator('.desk-title h1')).toContainText(potId.slice(-2))
      await expect(page.locator('.open-guess')).toBeVisible()
      expect([potId, await faults(page), await page.evaluate(broken, '.desk-head')]).toEqual([potId, [], []])
      await page.evaluate(() => {
        const title = document.querySelector('.desk-title h1')?.lastChild
        if (title) title.textContent = (title.textContent ?? '').replace(/\d+/, '503')
      })
      await expect(page.locator('.desk-title h1')).toContainText('503')
      await expect(page.locator('.open-guess')).toBeVisible()
      expect([potId, await faults(page), await page.evaluate(broken, '.desk-head')]).toEqual([potId, [], []])
    }
  })
})
