import { expect, test } from '@playwright/test'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { twelve } from '../fixtures/twelve.ts'
import { BenchPage, EVENING } from './bench.ts'
import { measure } from './measure.ts'

test('main path: one hit starts the count, the dose is logged as planned, the foot is asked for', async ({
  page,
}) => {
  const bench = await BenchPage.demo(page)
  await bench.prepare(33)
  await bench.arm(33)
  await bench.pass(60)
  await expect(bench.face).toContainText('Gatepost')
  await expect(bench.face).toContainText('4 s')
  await expect(bench.face).toContainText('coat 1 of 3')
  await bench.hit()
  await expect(page.locator('.count-lead-in')).toContainText('33 Gatepost')
  // The seconds until IN are not those of the dose: both are named.
  await expect(page.locator('.count-lead-in')).toContainText(/IN in *[34] *then 4 s under/)
  await page.clock.runFor(4000)
  await expect(page.locator('.count-hold')).toContainText('IN')
  await page.clock.runFor(2200)
  await expect(page.locator('.count-numeral')).toHaveText('1')
  await page.clock.runFor(1000)
  await expect(page.locator('.count-numeral')).toHaveText('2')
  await page.clock.runFor(2200)
  await expect(page.locator('.count-out')).toContainText('OUT')
  await page.clock.runFor(13_000)
  await expect(bench.face).toContainText('Sponge the foot')
  const [dip] = (await bench.pot(33)).dips
  expect(dip).toMatchObject({ coat: 0, holdS: 4, how: 'planned', unstirred: false })
  expect(dip!.outAt - dip!.tappedAt).toBeCloseTo(4000 + 600 + 4000, -1)
})

test('stir gate: stale after five minutes, a plain hit stirs, a long one dips unstirred', async ({
  page,
}) => {
  const bench = await BenchPage.demo(page)
  await bench.prepare(33)
  await bench.pick(33)
  await expect(bench.face).toContainText('Gatepost')
  await expect(bench.bar).toContainText('STIRRED')
  await bench.hit()
  await expect(bench.bar).toContainText('START')
  await bench.pass(5 * 60 + 2)
  await expect(bench.bar).toContainText('STIRRED')
  await expect(bench.face).toContainText('last stir 5 min ago')
  await bench.holdBar()
  await page.clock.runFor(9500)
  const [dip] = (await bench.pot(33)).dips
  expect(dip).toMatchObject({ unstirred: true })
  expect(Math.round(dip!.stirredAgoMs! / 60_000)).toBe(5)
})

test('late FOOT CLEAN leaves the ready time alone; a dip told late counts from when it was', async ({
  page,
}) => {
  const bench = await BenchPage.demo(page)
  await bench.prepare(33)
  await bench.arm(33)
  await bench.hit()
  await page.clock.runFor(8700)
  const out = (await bench.pot(33)).dips[0]!.outAt
  await bench.pass(120)
  expect(await bench.label()).toBe('FOOT CLEAN')
  await bench.hit()
  expect((await bench.pot(33)).dips[0]!.outAt).toBe(out)
  await bench.pick(34)
  await bench.other('Log a dip', '5 min ago')
  const told = (await bench.pot(34)).dips[0]!
  const now = await page.evaluate(() => Date.now())
  expect(told.how).toBe('logged')
  expect(now - told.outAt).toBeGreaterThan(299_000)
  expect(now - told.outAt).toBeLessThan(303_000)
})

test('the clock set an hour on leaves what remains of a wait', async ({ page }) => {
  const bench = await BenchPage.demo(page)
  await bench.prepare(31)
  await bench.pick(31)
  await bench.other('Log a dip', 'just now')
  const before = await bench.pot(31)
  // Another zone changes what the clock on the wall says, not how much is left.
  const left = async () => {
    const { forecastOf } = await import('../../src/table/forecast/forecast.ts')
    const table = await bench.table()
    const now = (await page.evaluate(() => Date.now())) - table.skewMs
    return forecastOf(table, table.pots['demo.31']!)!.touch.likely - now
  }
  const was = await left()
  const real = await page.evaluate(() => Date.now())
  await page.clock.setSystemTime(new Date(real + 3_600_000))
  await page.clock.runFor(2000)
  await expect.poll(async () => (await bench.table()).skewMs).toBeGreaterThan(3_500_000)
  expect(Math.abs((await left()) - was)).toBeLessThan(5000)
  expect((await bench.pot(31)).dips).toEqual(before.dips)
})

test('bar only: from wax to kiln-dry, over a Hold and a reload, one hit a coat', async ({ page }) => {
  test.setTimeout(120_000)
  const bench = await BenchPage.only(page, 33)
  // Bare clay to be waxed is drawn bare.
  await expect(page.locator('.outline')).toBeVisible()
  await expect(page.locator('.outline rect[fill]')).toHaveCount(0)
  const hits: string[] = []
  let reloaded = false
  for (let i = 0; i < 200; i++) {
    const label = await bench.label()
    if (await page.locator('.closed').count()) break
    if (label === '' || /^(TOUCH|CHECK)/.test(label) || label === 'FOOT CLEAN') {
      const foot = await page.getByText('Finger round the foot').count()
      if (foot === 0) {
        await bench.pass(59)
        continue
      }
    }
    hits.push(label)
    await bench.hit()
    if (label === 'START') {
      await page.clock.runFor(12_500)
      if (!reloaded) {
        reloaded = true
        await page.locator('.corner-hold').tap()
        await page.clock.runFor(500)
        await expect(page.getByText('Paused')).toBeVisible()
        await page.reload()
        await page.clock.runFor(500)
        await expect(page.getByText('Paused')).toBeVisible()
      }
    }
  }
  await expect(page.locator('.closed-sum'), hits.join(', ')).toHaveText('1 pot3 coats')
  // What ends the sitting, a hit a step: collar glaze, three lids, tools, floor.
  const ends = hits.slice(hits.indexOf('RETURNED')).filter((hit) => hit !== 'FOOT CLEAN')
  expect(ends).toEqual(['RETURNED', ...Array(3).fill('LID ON'), 'TOOLS IN', 'MOPPED'])
  const count = (name: string) => hits.filter((hit) => hit === name).length
  expect(count('START')).toBe(3)
  expect(count('DRY')).toBe(2)
  expect(count('STIRRED')).toBeLessThanOrEqual(3)
})

test('four splashes, a bounce and a hit on a fresh card do nothing', async ({ page }) => {
  const bench = await BenchPage.demo(page)
  await page.clock.runFor(1000)
  const before = (await bench.table()).hits.length
  const cdp = await page.context().newCDPSession(page)
  const drops = [60, 140, 220, 300].map((x, id) => ({ x, y: 470 + id * 20, id, radiusX: 9, radiusY: 9 }))
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: drops })
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  await page.clock.runFor(2500)
  expect((await bench.table()).hits).toHaveLength(before)
  await bench.bar.tap()
  await page.clock.runFor(100)
  await bench.bar.tap()
  await page.clock.runFor(100)
  expect((await bench.table()).hits).toHaveLength(before + 1)
})

test('take back names the hit, undoes it exactly, and can be put back', async ({ page }) => {
  const bench = await BenchPage.demo(page)
  await bench.hit()
  await expect(page.locator('.back-strip')).toContainText('Take back: 31 wax')
  await page.clock.runFor(450)
  await page.locator('.back-strip').tap()
  await page.clock.runFor(50)
  expect((await bench.pot(31)).waxedAt).toBeUndefined()
  await page.clock.runFor(450)
  await page.locator('.back-strip').tap()
  await page.clock.runFor(50)
  expect((await bench.pot(31)).waxedAt).toBeDefined()
})

test('what is fetched after the first card is late: head and bar stand, the bar works, the rest follows', async ({
  page,
}) => {
  const late = '**/assets/faces-*.js'
  await page.route(late, (route) => route.abort())
  const bench = await BenchPage.demo(page)
  await page.clock.runFor(500)
  await page.locator('.corner-hold').tap()
  await page.clock.runFor(500)
  await expect(bench.face).toHaveText('Paused')
  await bench.hit()
  await expect(bench.bar).toContainText('WAXED')
  await page.clock.runFor(500)
  await page.locator('.corner-hold').tap()
  await page.unroute(late)
  await page.clock.runFor(2500)
  await expect(bench.face).toContainText('Drying goes on')
})

test('a harmful glaze: gloves at the stir, the dip, the drip and the foot, words of food where it goes inside', async ({
  page,
}) => {
  const events = demoEvents()
  const harmful = events.map((event) =>
    event.kind === 'bucket-set' && event.bucket.name === 'Gatepost'
      ? { ...event, bucket: { ...event.bucket, cautions: ['lead' as const] } }
      : event,
  )
  const bench = await BenchPage.on(page, [harmful])
  await bench.prepare(33)
  await bench.pick(33)
  await expect(bench.face).toContainText('lead')
  await expect(bench.face).toContainText('GFCI or RCD')
  await bench.hit()
  await expect(bench.face).toContainText('lead: wear gloves')
  await expect(bench.face).toContainText('food')
  await bench.hit()
  await page.clock.runFor(12_000)
  await expect(bench.face).toContainText('Drip')
  await expect(bench.face).toContainText('lead: wear gloves')
  await bench.pass(30)
  await expect(bench.face).toContainText('Sponge the foot')
  await expect(bench.face).toContainText('lead: wear gloves')
})

test('a coat that follows its wait at once has the tong marks of the last one on its card', async ({
  page,
}) => {
  const bench = await BenchPage.only(page, 33)
  await bench.prepare(33)
  await bench.arm(33)
  await expect(bench.face).not.toContainText('tong marks')
  await bench.hit()
  await page.clock.runFor(12_000)
  await bench.pass(12 * 3600)
  await bench.hit()
  await expect(bench.bar).toContainText('START')
  await expect(bench.face).toContainText('Dab the tong marks')
})

test('a wait that ends by the clock is said as one time, not as a span from it to itself', async ({
  page,
}) => {
  const dip = toldDip({ potId: 't.1', outAt: EVENING.getTime(), bucketId: 'G' })
  const down = { kind: 'sponged', potId: 't.1', implied: true } as const
  const bench = await BenchPage.on(page, [...twelve(['GH'], 1), [dip], [down]])
  await bench.told()
  const dips = bench.face.filter({ hasText: 'then dip 1' })
  for (let i = 0; i < 40 && (await dips.count()) === 0; i++)
    await ((await bench.label()) === 'STIRRED' ? bench.hit() : bench.pass(20))
  await expect(dips).toBeVisible()
  await expect(bench.face).not.toContainText(/:\d\d to /)
})

test('a change back to a bucket that was stirred before says all of it above the strip', async ({ page }) => {
  const stirred = (bucketId: string) => ({ kind: 'stirred', bucketId }) as const
  const bench = await BenchPage.on(page, [...twelve(['LH'], 3), [stirred('L')], [stirred('G')]])
  await bench.told()
  await bench.pass(360)
  for (let i = 0; i < 20 && (await bench.label()) !== 'STIRRED'; i++) await bench.pass(20)
  await expect(bench.face).toContainText('Close Gatepost')
  await expect(bench.face).toContainText('last stir')
  expect((await measure(page)).hidden).toEqual([])
})
