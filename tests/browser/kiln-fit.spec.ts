/** What a person needs of the kiln's cards lies in sight on the smallest usual phone, the strip that takes back beside it. */
import { expect, type Locator, type Page, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { KILN_SIZES } from '../../src/table/load/kiln-sizes.ts'
import { BenchPage } from './bench.ts'
import { KilnPage } from './kiln-page.ts'

/** Whether all of it lies between the head and what is below the card. */
const isWhole = (of: Locator) =>
  of.evaluate((node) => {
    const [own, card] = [node.getBoundingClientRect(), node.closest('.kiln-main')?.getBoundingClientRect()]
    const strip = document.querySelector('.kiln-back')?.getBoundingClientRect().top ?? Infinity
    return card !== undefined && own.top >= card.top - 1 && own.bottom <= Math.min(strip, card.bottom) + 1
  })
const key = (page: Page, name: string) => page.locator('.kiln').getByRole('button', { name, exact: true })

test('a shelf is drawn whole with its front and its keys, while the last hit can be taken back', async ({
  page,
}) => {
  const kiln = await KilnPage.open(page, 5)
  await page.getByRole('radio', { name: 'wide round', exact: true }).tap()
  await kiln.hit()
  await kiln.hit()
  await kiln.says('SHELF 1 AS DRAWN')
  await expect(page.locator('.kiln-back')).toContainText('Take back: proposal')
  for (const part of [page.locator('.level-front'), page.locator('.caution').last()])
    expect(await isWhole(part)).toBe(true)
  await expect(page.locator('.caution').last()).toContainText('silica and razors')
  // 520 mm across: read, and hit, at arm's length.
  expect((await page.locator('.level-shelf').boundingBox())?.width).toBeGreaterThan(190)
  const where = () => page.locator('.level-front').boundingBox()
  const before = await where()
  await page.clock.runFor(11_000)
  await expect(page.locator('.kiln-back')).toHaveCount(0)
  expect(await where()).toEqual(before)
  for (const part of [key(page, 'Propose anew'), key(page, 'Put right')])
    expect(await isWhole(part)).toBe(true)
  // The same once a shelf is loaded and ticked: its keys stand as before.
  await kiln.hit()
  await kiln.says('SHELF 2 AS DRAWN')
  await expect(page.locator('.kiln-back')).toContainText('Take back: shelf loaded')
  for (const part of [page.locator('.level-front'), key(page, '1 ✓'), key(page, '3')])
    expect(await isWhole(part)).toBe(true)
  expect(await where()).toEqual(before)
  await expect(page.locator('.desk-title')).toContainText(/Shelf 2 of 3.*3 posts of \d+ mm/)
  // Another shelf that is looked at is not the one that the bar loads.
  await kiln.key('3')
  await kiln.says('TO SHELF 2')
  await expect(page.locator('.desk-title')).toContainText('Shelf 3 of 3')
  await kiln.hit()
  await kiln.says('SHELF 2 AS DRAWN')
  // A pot on a post: that gap is named, and drawn.
  const middle = async (of: string) => {
    const box = await page.locator(of).first().boundingBox()
    return { x: (box?.x ?? 0) + (box?.width ?? 0) / 2, y: (box?.y ?? 0) + (box?.height ?? 0) / 2 }
  }
  const [pot, post] = [await middle('[data-thing] .level-body'), await middle('.level-line')]
  await expect(page.locator('.level-tight')).toHaveCount(0)
  await page.mouse.move(pot.x, pot.y)
  await page.mouse.down()
  await page.mouse.move(post.x, post.y, { steps: 6 })
  await page.mouse.up()
  await page.clock.runFor(150)
  await expect(kiln.face.locator('.alarm[role=status]')).toContainText(/and a post overlap by/)
  await expect(page.locator('.level-tight')).not.toHaveCount(0)
})

test('a tap beside a pot is on it, not between it and the next', async ({ page }) => {
  const kiln = await KilnPage.open(page, 3)
  await kiln.hit()
  await kiln.hit()
  await kiln.says('SHELF 1 AS DRAWN')
  await page.clock.runFor(11_000)
  await expect(page.locator('.kiln-back')).toHaveCount(0)
  // Whatever was proposed in the time there was: on the first shelf with a bare spot beside a small pot, nearest to it by far.
  const spotHere = async () => {
    const drawn = await page.locator('[data-thing]').evaluateAll((nodes) =>
      nodes.map((node) => {
        const { x, y, width } = (node.querySelector('.level-body') ?? node).getBoundingClientRect()
        return {
          key: node.getAttribute('data-thing') ?? '',
          x: x + width / 2,
          y: y + width / 2,
          r: width / 2,
        }
      }),
    )
    const far = (a: { x: number; y: number }, b: (typeof drawn)[number]) =>
      Math.hypot(a.x - b.x, a.y - b.y) - b.r
    const [spot] = drawn
      .filter(({ key }) => key.startsWith('demo.'))
      .flatMap((to) =>
        Array.from({ length: 64 }, (_, i) => {
          const at = {
            x: to.x + 21 * Math.cos((i * Math.PI) / 32),
            y: to.y + 21 * Math.sin((i * Math.PI) / 32),
          }
          const others = drawn.filter((one) => one !== to).map((one) => far(at, one))
          return { ...at, to, clear: Math.min(...others) - far(at, to) }
        }),
      )
      .filter((at) => far(at, at.to) > 2 && at.clear > 1)
      .toSorted((a, b) => b.clear - a.clear)
    const from = drawn.find(({ key }) => key.startsWith('demo.') && key !== spot?.to.key)
    return spot && from ? { spot, from } : undefined
  }
  let found = await spotHere()
  for (const shelf of ['2', '3']) {
    if (found) break
    await kiln.key(shelf)
    await expect(page.locator('.desk-title')).toContainText(`Shelf ${shelf}`)
    found = await spotHere()
  }
  if (!found) throw new Error('no bare spot')
  const { spot, from } = found
  await page.touchscreen.tap(from.x, from.y)
  await expect(page.locator('.is-chosen')).toHaveCount(1)
  await page.touchscreen.tap(spot.x, spot.y)
  await expect(page.locator('.is-chosen')).toHaveCount(0)
  // Both went by hand: they changed places.
  const byHand = Object.entries((await kiln.load()).things).flatMap(([name, { pinned }]) =>
    pinned ? [name] : [],
  )
  expect(byHand.toSorted()).toEqual([from.key, spot.to.key].toSorted())
})

test('candling has its caution and both keys in sight; nothing is offered that is not known yet', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const kiln = await KilnPage.open(page, 1, 1)
  await kiln.candled()
  await kiln.hit()
  await kiln.says('GLASS CLEAR')
  await kiln.shows('Dry about')
  await expect(page.locator('.kiln-back')).toContainText('Take back: kiln on')
  for (const part of [page.locator('.caution'), key(page, 'READING'), key(page, 'KILN OFF')])
    expect(await isWhole(part)).toBe(true)
  // By the bench these pots are still hours from dry; of the kiln no hour is known.
  await kiln.key('KILN OFF')
  await kiln.says('KILN OFF')
  await kiln.hit()
  await kiln.shows(/cone 6 was not seen down, and no reading came near it/)
  await kiln.key('It is off')
  await kiln.says('READING')
  await kiln.shows('Two readings below 600 °C')
  await page.waitForTimeout(300)
  await page.clock.runFor(300)
  await expect(key(page, 'Into the calendar')).toHaveCount(0)
  // Opened without a number: what is waited for is said.
  await kiln.key('LID OPEN')
  // A page of its own, fetched when it is asked for.
  await kiln.shows('Heat gloves, face away')
  await kiln.hit()
  await kiln.says('READING')
  await kiln.shows('Unload below 60 °C: read it.')
})

test('with a second kiln warm the title stays on its line, and the other load has its key below', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const kiln = await KilnPage.open(page)
  await kiln.hit()
  await kiln.hit()
  await kiln.says('SHELF 1 AS DRAWN')
  while ((await kiln.bar.textContent()) !== 'READING') await kiln.hit()
  await kiln.pass(24 * 60)
  await kiln.key('Next firing')
  await kiln.says('PROPOSE')
  await expect(kiln.face.getByRole('button', { name: /^Load of .* yesterday/ })).toBeVisible()
  await kiln.shows('This kiln is on')
  await expect(kiln.face).not.toContainText('Kiln isolated')
  expect((await page.locator('.desk-title').boundingBox())?.height).toBeLessThan(64)
})

test('two loads that are lit in one kiln are said on the card of each', async ({ page }) => {
  const kiln = { ...KILN_SIZES.round, kilnId: 'k.1' }
  const firing = { cone: '6', make: 'american', riseCPerH: 60, holdMin: 0 } as const
  const lit = (loadId: string): TableEvent[] => [
    { kind: 'load-begun', loadId, kilnId: 'k.1', firing },
    { kind: 'kiln-lit', loadId },
  ]
  await BenchPage.on(page, [demoEvents(), [{ kind: 'kiln-set', kiln }], lit('l.1'), lit('l.2')])
  for (const loadId of ['l.1', 'l.2']) {
    await page.goto(`./#/shelf/${loadId}`)
    await expect(page.locator('.kiln-main .alarm')).toContainText('is warm in this kiln too')
  }
})

test('a half shelf is drawn large beside what is said of it, and its measures are in sight before', async ({
  page,
}) => {
  const kiln = await KilnPage.open(page)
  await page.getByRole('radio', { name: 'round, half shelves', exact: true }).tap()
  expect(await isWhole(key(page, 'Change its measures'))).toBe(true)
  expect(await isWhole(page.locator('svg.level'))).toBe(true)
  await page.clock.runFor(1100)
  await kiln.hit()
  await kiln.says('PROPOSE')
  await kiln.hit()
  await kiln.says('SHELF 1 AS DRAWN')
  expect(await isWhole(page.locator('svg.level'))).toBe(true)
  // 520 mm from front to back.
  expect((await page.locator('.level-shelf').boundingBox())?.height).toBeGreaterThan(210)
})

test('a kiln that was typed once is chosen again among the others, and is the same', async ({ page }) => {
  const kiln = await KilnPage.open(page)
  const choose = (name: string | RegExp) => page.getByRole('radio', { name }).tap()
  const first = async () => Object.keys((await kiln.bench.table()).kilns ?? {})
  await kiln.key('Change its measures')
  await page.getByLabel('Inside, high', { exact: true }).fill('610')
  await page.clock.runFor(1100)
  await kiln.hit()
  await kiln.says('PROPOSE')
  const [own] = await first()
  await kiln.key('Change the kiln')
  await choose('small round')
  await page.clock.runFor(1100)
  await kiln.hit()
  await kiln.says('PROPOSE')
  await kiln.key('Change the kiln')
  await expect(page.getByRole('radio', { checked: true })).toHaveText('round, 360 mm × 340 mm in use')
  await choose('round, 460 mm × 610 mm')
  await page.clock.runFor(1100)
  await kiln.hit()
  await kiln.says('PROPOSE')
  expect((await first()).at(-1)).toBe(own)
  expect(await first()).toHaveLength(2)
  // One more of the same size is told from it by its shelves.
  await kiln.key('Change the kiln')
  await choose(/^round$/)
  await kiln.key('Change its measures')
  await page.getByLabel('Inside, high', { exact: true }).fill('610')
  await page.getByLabel('Shelves, how many', { exact: true }).fill('4')
  await page.clock.runFor(1100)
  await kiln.hit()
  await kiln.says('PROPOSE')
  await kiln.key('Change the kiln')
  for (const shelves of [/610 mm 4 round 400 mm in use/, /610 mm 5 round 400 mm$/])
    await expect(page.getByRole('radio', { name: shelves })).toHaveCount(1)
})
