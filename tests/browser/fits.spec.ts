import { expect, test } from '@playwright/test'
import type { TableEvent } from '../../shared/events.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { BenchPage, EVENING } from './bench.ts'
import { measure, readable } from './measure.ts'
import { prepared } from './moments/many-pots.ts'
import { dip, keepSoundInTime, workUntil } from './moments/story.ts'

test('the caution of hot wax, over the pan, over a hit to take back and over what follows: all can be read', async ({
  page,
}) => {
  const bench = await BenchPage.demo(page)
  await page.clock.runFor(1000)
  await expect(bench.face).toContainText('Hot wax: thermostat')
  await readable(page, 'the first')
  await bench.hit()
  await expect(page.locator('.strip')).toContainText('Take back: 31 wax')
  await readable(page, 'the next')
  await bench.pass(12)
  await readable(page, 'what follows')
})

test('letters that a box cuts in half are found, where lines are left out by number too', async ({
  page,
}) => {
  const hidden = async (px: number) => {
    await page.setContent(`<meta name="viewport" content="width=device-width"><div id="app"><main><div style="height: ${px}px; overflow: hidden">
      <p style="display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 2; overflow: hidden;
        margin: 0; width: 80px; font: 20px/24px monospace">three lines long</p></div></main></div>`)
    return (await measure(page)).hidden
  }
  expect(await hidden(48)).toEqual([])
  expect(await hidden(32)).toEqual(['"three lines long" is cut above or below'])
})

/** With the coats before the last on; the bottle was poured out first. */
function beforeLast(number: number, i: number): TableEvent[] {
  const potId = `demo.${number}`
  const collarNext = [34, 36].includes(number)
  const out = (minutes: number) => EVENING.getTime() - minutes * 60_000 + i * 1000
  const onBisque =
    number === 35 ? ([{ kind: 'inside' }, { kind: 'full' }] as const) : ([{ kind: 'full' }] as const)
  const skirt = { bucketId: 'demo.brackwater', cover: { kind: 'toSkirt' }, holdS: 3 } as const
  const coats = [...onBisque.map((cover) => ({ cover })), ...(collarNext ? [] : [skirt])]
  return coats.flatMap((facts, coat) => [
    toldDip({ potId, coat, outAt: out(200 - 60 * coat), ...facts }),
    { kind: 'sponged', potId, implied: true } as const,
  ])
}

for (const numbers of [
  [31, 32, 34, 35],
  [31, 32, 33, 34, 35, 36],
])
  test(`${numbers.length} pots ready, to touch at three places: all of it can be read`, async ({ page }) => {
    const bench = await BenchPage.on(page, [...prepared(numbers), ...numbers.map(beforeLast)])
    await expect(bench.face).toContainText(`${numbers.length} ready?`)
    await expect(bench.face).toContainText(/touch .*;.*;/)
    await readable(page, 'what follows')
    await page.locator('.corner-hold').tap()
    await page.clock.runFor(500)
    await bench.hit()
    await expect(page.locator('.strip')).toContainText('Take back')
    await readable(page, 'to take back')
  })

test('a glaze too low for the pot, armed: the warning and its key can be read', async ({ page }) => {
  const bench = await BenchPage.on(
    page,
    prepared([33, 35]).map((hit) =>
      hit.map((event) =>
        event.kind === 'bucket-set' ? { ...event, bucket: { ...event.bucket, litres: 4 } } : event,
      ),
    ),
  )
  await bench.pass(400)
  await bench.arm(33)
  await expect(bench.face).toContainText('The glaze stands')
  await expect(page.locator('.strip')).toContainText('Take back')
  await readable(page, 'to take back')
  await bench.pass(11)
  await readable(page, 'what follows')
  await bench.hit()
  for (let i = 0; i < 40 && (await page.locator('.count-word').count()) === 0; i++)
    await page.clock.runFor(200)
  await page.setViewportSize({ width: 640, height: 360 })
  await page.clock.runFor(50)
  expect((await measure(page)).inPx).toBeGreaterThanOrEqual(150)
})

/** The demo's pots, wiped; its first glazes have long names of wide letters. */
const NAMES: Readonly<Record<string, string>> = { Gatepost: 'Lampsmoke', Brackwater: 'Lampsmoor' }
const named = () =>
  prepared().map((hit) =>
    hit.map((event) =>
      event.kind === 'bucket-set'
        ? { ...event, bucket: { ...event.bucket, name: NAMES[event.bucket.name] ?? event.bucket.name } }
        : event,
    ),
  )

test.describe('a clock of twelve hours', () => {
  test.use({ locale: 'en-US' })
  test('a pot in hand, what follows, and what waits: all of it can be read', async ({ page }) => {
    // Nothing is wrong that would stand where it says what follows.
    await keepSoundInTime(page)
    await page.addInitScript(() => {
      const held = Object.assign(new EventTarget(), { released: false, release: async () => {} })
      Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => held } })
    })
    const bench = await BenchPage.on(page, named())
    await bench.pass(400)
    await bench.arm(33)
    await dip(bench)
    await expect(page.locator('.strip')).toContainText(/next Lampsmoor \d+:\d\d PM/)
    await readable(page, 'in hand')
    await workUntil(bench, /TOUCH/)
    const stir = page.locator('li.due', { hasText: 'Lampsmo' })
    for (let i = 0; i < 60 && (await stir.count()) === 0; i++)
      if (/TOUCH|CHECK/.test(await bench.label())) await bench.pass(50)
      else if ((await bench.label()) === 'START') await dip(bench)
      else await bench.hit()
    await expect(stir).toContainText(/Lampsmo.*PM/)
    await readable(page, 'what waits')
  })
})
