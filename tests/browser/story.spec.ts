import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { firedLoad, LOAD } from '../fixtures/opened.ts'
import { BenchPage, EVENING } from './bench.ts'
import { misfits } from './desk-page.ts'
import { LONG } from './places.ts'

const judged = (potId: string, place: string): TableEvent[] => [
  { kind: 'taken-out', potId, loadId: LOAD, place },
  { kind: 'judged', potId, loadId: LOAD, run: { is: 'measured', mm: 3 }, faults: ['crawled'] },
]

test('a fired pot is found by glaze, place or month, and told from its first coat to what came of it', async ({
  page,
}) => {
  const hits = [judged('demo.36', '2.2'), judged('demo.35', '2.1')]
  const bench = await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'up'), ...hits])
  await page.goto('./#/board')
  await page.getByRole('button', { name: 'Fired pots' }).tap()
  await page.clock.runFor(300)
  const rows = page.locator('.open-fired button')
  await expect(rows).toHaveCount(8)
  await expect(page.locator('.open-fired button', { hasText: 'to judge' })).toHaveCount(6)
  const search = page.getByRole('searchbox')
  await search.fill('brackwater crawled')
  await page.clock.runFor(200)
  await expect(rows).toHaveCount(1)
  await expect(rows).toContainText('35')
  await expect(page.locator('.desk-title')).toContainText('1 of 8 pots')
  await search.fill('march 2.2')
  await page.clock.runFor(200)
  await expect(rows).toContainText('36')
  await search.fill('nowhere')
  await page.clock.runFor(200)
  await expect(page.locator('.desk')).toContainText('No pot answers to that.')
  await search.fill('36')
  await page.clock.runFor(200)
  await rows.tap()
  await page.clock.runFor(300)
  const story = page.locator('.open-story')
  await expect(story).toContainText(/Gatepost .*s, about 0\.\d mm/)
  for (const line of ['Loaded at 2.2', 'Cone 6 down', 'Lid open', 'Found: ran 3 mm, crawled'])
    await expect(story).toContainText(line)
  // The same once more, its seconds worked out for today.
  await page.getByRole('button', { name: 'That one again' }).tap()
  await expect(page.getByRole('heading', { name: 'That one again' })).toBeVisible()
  const seconds = page.locator('.open-story').first()
  await expect(seconds).toContainText(/Gatepost, .*\(4 s then, 0\.\d mm\)/)
  await page.getByRole('button', { name: 'A new pot of it, on a slab' }).tap()
  await page.clock.runFor(300)
  await expect(page.locator('.desk')).toContainText('Pot 39')
  const table = await bench.table()
  const made = Object.values(table.pots).find(({ facts }) => facts.number === 39)
  const like = table.pots['demo.36']
  expect(made?.facts.shape).toEqual(like?.facts.shape)
  expect(made?.ownPlan?.map(({ bucketId }) => bucketId)).toEqual(like?.dips.map(({ bucketId }) => bucketId))
  // Its page tells its slab and its waits, and one more like it has them too.
  await expect(page.locator('.pot-said')).toContainText('goes on a catch slab')
  const waits = made?.ownPlan?.filter(({ afterMin }) => afterMin !== undefined) ?? []
  await expect(page.locator('.coat-line', { hasText: 'after the coat before' })).toHaveCount(waits.length)
  expect(waits.length).toBeGreaterThan(0)
  await page.getByRole('button', { name: 'One more like it' }).tap()
  await page.clock.runFor(300)
  const { ownPlan, slab } = await bench.pot(40)
  expect({ ownPlan, slab }).toEqual({ ownPlan: made?.ownPlan, slab: true })
  await page.goto('./#/fired')
  await expect(search).toBeVisible()
})

test('a story plays by itself and stops at a tap; where motion is not wanted it is turned by hand', async ({
  page,
}) => {
  await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'up'), judged('demo.36', '2.2')])
  await page.goto('./#/story/demo.36')
  const key = (name: string) => page.getByRole('button', { name, exact: true })
  const part = page.locator('.film-parts')
  await key('Play its story').tap()
  await page.clock.runFor(500)
  await expect(key('STOP')).toBeVisible()
  await expect(part).toHaveAccessibleName(/^Part 1 of/)
  await page.clock.runFor(6000)
  await expect(part).toHaveAccessibleName(/^Part [3-5] of/)
  await key('STOP').tap()
  await page.clock.runFor(200)
  const stopped = await part.getAttribute('aria-label')
  await page.clock.runFor(6000)
  await expect(part).toHaveAttribute('aria-label', stopped ?? '')
  await key('PLAY').tap()
  await page.clock.runFor(61_000)
  await expect(page.locator('.film-said')).toContainText('ran 3 mm, crawled')
  await expect(key('AGAIN')).toBeVisible()
  await page.getByRole('button', { name: 'Back' }).first().tap()
  await page.clock.runFor(300)
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await key('Play its story').tap()
  await page.clock.runFor(5000)
  await expect(part).toHaveAccessibleName(/^Part 1 of/)
  for (const line of ['Coat 1: Gatepost', 'It dries']) {
    while (!((await page.locator('.film-said').textContent()) ?? '').includes(line)) {
      await key('NEXT').tap()
      await page.clock.runFor(200)
    }
    await expect(page.locator('.film-said')).toContainText(/\d/)
  }
})

test('runs told and found are drawn in the marks of the ruler at hand', async ({ page }) => {
  await BenchPage.on(page, [
    [{ kind: 'settings-set', settings: { units: 'us' } }],
    ...firedLoad(EVENING.getTime(), 'up'),
    judged('demo.36', '2.2'),
  ])
  await page.goto('./#/plots')
  await page.clock.runFor(600)
  const plot = page.locator('.back-part .plot').first()
  await expect(plot).toContainText('found, in')
  await expect(plot).toContainText('1/8')
  // What stands on one axis leaves a gap to the next, the names of its ends too.
  const near = await plot.evaluate((svg) => {
    const texts = [...svg.querySelectorAll('text')].map((text) => ({
      said: text.textContent,
      box: text.getBoundingClientRect(),
    }))
    return texts.flatMap(({ said, box }, i) =>
      texts
        .slice(i + 1)
        .filter(
          ({ box: other }) =>
            box.left < other.right &&
            other.left < box.right &&
            box.top < other.bottom + 2 &&
            other.top < box.bottom + 2,
        )
        .map((other) => `${said} at ${other.said}`),
    )
  })
  expect(near).toEqual([])
})

test('nothing of it is small or cut off', LONG, async ({ page }) => {
  test.setTimeout(180_000)
  await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'up'), judged('demo.36', '2.2')])
  for (const [width, height] of [
    [320, 568],
    [360, 640],
    [390, 844],
  ] as const) {
    await page.setViewportSize({ width, height })
    for (const at of [
      'opening',
      'fired',
      'story/demo.36',
      'taught',
      'looks',
      'plots',
      'results/demo.gatepost',
      'results/demo.heather/demo.gatepost',
    ]) {
      await page.goto(`./#/${at}`)
      await page.clock.runFor(500)
      await page.waitForTimeout(200)
      await page.clock.runFor(200)
      await expect(page.locator('.desk')).toBeVisible()
      expect(await page.evaluate(misfits), `${at} at ${width}`).toEqual([])
    }
  }
})
