import { expect, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { opened, plant } from './bench.ts'
import { again, demo, key, misfits, open } from './desk-page.ts'

/** The board with its pots on planks: moved by hand, all of it in sight. */

const numberAt = (page: Page, place: string) => page.locator(`.tile[data-place="${place}"] strong`)

const middle = async (page: Page, place: string) => {
  const box = await page.locator(`[data-place="${place}"]`).boundingBox()
  return { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 }
}

/** A finger that holds, carries and lets go. */
async function carry(page: Page, from: string, to: string) {
  const [a, b] = [await middle(page, from), await middle(page, to)]
  const session = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points })
  await touch('touchStart', [a])
  await expect(page.locator('.is-carried')).toBeVisible()
  for (let i = 1; i <= 8; i++)
    await touch('touchMove', [{ x: a.x + ((b.x - a.x) * i) / 8, y: a.y + ((b.y - a.y) * i) / 8 }])
  await touch('touchEnd', [])
}

test('a pot moves by two taps, by a finger and by a mouse; it is kept, and taken back', async ({ page }) => {
  await demo(page)
  await open(page, 'board')
  await key(page, 'Move pots').tap()
  await key(page, /^Pot 33 at A 3/).tap()
  await key(page, 'C 2, free').tap()
  await expect(page.getByText('33 stands on C 2.')).toBeVisible()
  await again(page)
  await expect(numberAt(page, 'C 2')).toHaveText('33')
  // A place that is taken: both change places.
  await carry(page, 'C 2', 'A 1')
  await expect(page.getByText('33 stands on A 1. 31 stands on C 2.')).toBeVisible()
  await expect(numberAt(page, 'A 1')).toHaveText('33')
  await expect(numberAt(page, 'C 2')).toHaveText('31')
  await key(page, 'Take back').tap()
  await expect(numberAt(page, 'A 1')).toHaveText('31')
  await expect(numberAt(page, 'C 2')).toHaveText('33')
  const [from, to] = [await middle(page, 'B 4'), await middle(page, 'A 3')]
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(to.x, to.y, { steps: 4 })
  await page.mouse.up()
  await expect(numberAt(page, 'A 3')).toHaveText('38')
  // None of it opened a pot; a tap still does.
  await expect(page).toHaveURL(/#\/board$/)
  await again(page)
  await expect(numberAt(page, 'A 3')).toHaveText('38')
  await key(page, /^Pot 38 at A 3/).tap()
  await expect(page).toHaveURL(/#\/pot\/demo.38$/)
})

/** The demo's pots, and as many more as make it so many. */
const boardOf = (pots: number): TableEvent[] => {
  const like = demoEvents().find((event) => event.kind === 'pot-set')
  if (like?.kind !== 'pot-set') throw new Error('the demo has no pot')
  return Array.from({ length: pots - 8 }, (_, i) => ({
    kind: 'pot-set' as const,
    pot: {
      ...like.pot,
      potId: `more.${i}`,
      number: 98 + i,
      place: { board: 'CDEFGHIJ'[Math.floor(i / 4)]!, spot: 1 + (i % 4) },
    },
  }))
}

/** Pot 37 with all its coats and a foot that was looked at: it dries for the kiln. */
const done = (now: number): TableEvent[] => [
  toldDip({ dipId: 'first', potId: 'demo.37', outAt: now - 9_000_000 }),
  toldDip({
    dipId: 'second',
    potId: 'demo.37',
    coat: 1,
    bucketId: 'demo.heather',
    cover: { kind: 'collar', depthMm: 30 },
    outAt: now - 3_400_000,
  }),
  { kind: 'sponged', potId: 'demo.37', implied: true },
  { kind: 'foot-signed', potId: 'demo.37' },
]

/** Of phones that met: a pot where another stands, and one on a fifth place. */
const met = (place: { board: string; spot: number }, number: number): TableEvent[] =>
  boardOf(9).map((event) =>
    event.kind === 'pot-set'
      ? { ...event, pot: { ...event.pot, potId: `met.${number}`, number, place } }
      : event,
  )

test('40 pots: all on them is read, no board is cut by the navigation, none is hidden by another', async ({
  page,
}) => {
  await page.goto('./')
  await opened(page)
  await plant(page, [demoEvents(), boardOf(40), done(Date.now())], new Date())
  await page.reload()
  for (const [width, height] of [
    [320, 568],
    [360, 640],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    await open(page, 'board')
    await expect(page.locator('.tile')).toHaveCount(40)
    await expect(page.locator('.tile-kiln .tile-state')).toHaveText(/^kiln-dry in\d+ (h|min)/)
    expect(await page.evaluate(misfits)).toEqual([])
    const nav = (await page.locator('.board-nav').boundingBox())!.y
    const boxes = await page.locator('.tile').evaluateAll((tiles) =>
      tiles.map((tile) => {
        const { top, bottom } = tile.getBoundingClientRect()
        return { top, bottom }
      }),
    )
    expect(boxes.filter(({ top, bottom }) => top < nav - 1 && bottom > nav + 1)).toEqual([])
    expect(boxes.filter(({ bottom }) => bottom <= nav).length).toBeGreaterThanOrEqual(12)
    await page.locator('.tile').last().scrollIntoViewIfNeeded()
    const last = await page.locator('.tile').last().boundingBox()
    expect(last!.y + last!.height).toBeLessThanOrEqual(nav + 0.5)
  }
  await plant(page, [met({ board: 'A', spot: 1 }, 201), met({ board: 'B', spot: 5 }, 202)], new Date())
  await page.reload()
  await expect(page.locator('.tile')).toHaveCount(42)
  await expect(numberAt(page, 'A 1')).toHaveText(['201', '31'])
  await expect(numberAt(page, 'B 5')).toHaveText('202')
})
