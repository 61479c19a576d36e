import { expect, test } from '@playwright/test'
import { demoEvents } from '../../src/table/decide/demo.ts'
import { toldDip } from '../fixtures/told-dip.ts'
import { twelve } from '../fixtures/twelve.ts'
import { BenchPage, EVENING } from './bench.ts'
import { readable } from './measure.ts'

for (const [told, limitMm] of [
  ['nothing new against it', 0.4],
  ['too thick with this coat', 0.8],
] as const)
  test(`a pot in hand, tong marks, three harmful things, a screen that may sleep, ${told}: all of it can be read`, async ({
    page,
  }) => {
    const harm = { limitMm, cautions: ['lead', 'cadmium', 'barium'] as const }
    const table = twelve(['GGG'], 3).map((hit) =>
      hit.map((event) =>
        event.kind === 'bucket-set'
          ? {
              ...event,
              bucket: {
                ...event.bucket,
                ...harm,
                name: event.bucket.letter === 'G' ? 'Lampsmoke' : 'Gatepost',
              },
            }
          : event,
      ),
    )
    const long = EVENING.getTime() - 10 * 3_600_000
    const first = ['t.1', 't.2'].flatMap((potId) => [
      [toldDip({ potId, outAt: long, bucketId: 'G' })],
      [{ kind: 'sponged', potId, implied: true } as const],
    ])
    const bench = await BenchPage.on(page, [...table, ...first])
    await bench.pass(2 * 3600)
    await bench.arm(3)
    await bench.told()
    await bench.hit()
    await page.clock.runFor(9000)
    await bench.pass(24)
    await expect(bench.bar).toContainText('START')
    await expect(bench.face).toContainText('3: sponge the foot, to A 3')
    await expect(bench.face).toContainText(
      'Contains lead, cadmium, more: wear gloves. Not known to be safe for food.',
    )
    await expect(bench.face).toContainText(
      limitMm < 0.5 ? 'Dab the tong marks' : 'too thick. Better without this coat',
    )
    await expect(page.locator('.strip')).toContainText('The screen may sleep.')
    await readable(page)
  })

test('six pots ready at once, held by tongs, with a hit to take back: all of it can be read', async ({
  page,
}) => {
  const first = [1, 2, 3, 4, 5, 6, 7].map((number) => [
    toldDip({ potId: `t.${number}`, outAt: EVENING.getTime() + number * 5000, bucketId: 'G' }),
    { kind: 'sponged', potId: `t.${number}`, implied: true } as const,
  ])
  const bench = await BenchPage.on(page, [
    ...twelve(['GB'], 7),
    [{ kind: 'settings-set', settings: { readyMeans: 'touch' } }],
    ...first,
  ])
  for (let i = 0; i < 60 && (await bench.label()) !== 'DRY'; i++)
    if ((await bench.label()).startsWith('STIRRED')) await bench.hit()
    else await bench.pass(59)
  await expect(bench.face).toContainText('6 ready?')
  await expect(page.locator('.ready-tile')).toHaveCount(6)
  await page.clock.runFor(450)
  await page.locator('.corner-hold').tap()
  await page.clock.runFor(500)
  await bench.hit()
  await expect(page.locator('.strip')).toContainText('Take back')
  await readable(page)
})

test('a coat that was held too long, then the next pot: what it came to can be read', async ({ page }) => {
  const bench = await BenchPage.on(page, twelve(['GBH'], 3))
  await bench.pass(400)
  await bench.arm(1)
  await bench.hit()
  await page.clock.runFor(9000)
  await bench.pass(20)
  await bench.other('Change the seconds', '+5 s')
  await expect(page.locator('.said-note')).toContainText(/^1: 8 s, .* Its next coat: (better )?\d/)
  await readable(page, 'drip')
  await page.clock.runFor(6000)
  await expect(bench.bar).toContainText('START')
  await expect(page.locator('.said-note')).toContainText(/^1: 8 s, .* Its next coat: (better )?\d/)
  await readable(page, 'next')
})

test('a change of bucket that pours off a collar glaze with a caution of its own: all of it can be read', async ({
  page,
}) => {
  const potId = 'demo.34'
  const bench = await BenchPage.on(page, [
    demoEvents(),
    [toldDip({ potId, outAt: EVENING.getTime() - 3 * 3_600_000 })],
    [{ kind: 'sponged', potId, implied: true }],
    [{ kind: 'stirred', bucketId: 'demo.brackwater' }],
  ])
  await bench.pick(34)
  if ((await bench.label()) === 'DRY') await bench.hit()
  await bench.pick(34)
  await expect(bench.bar).toContainText('STIRRED, POURED')
  await expect(bench.face).toContainText('Close Brackwater.')
  await expect(bench.face).toContainText('Contains manganese')
  await expect(page.locator('.strip')).toContainText('Take back')
  await readable(page)
})

test('hands that are free, and pots that are kept for two buckets: all of it can be read', async ({
  page,
}) => {
  const bench = await BenchPage.on(page, [
    ...twelve(['GB'], 2),
    [toldDip({ potId: 't.1', outAt: EVENING.getTime(), bucketId: 'G' })],
    [toldDip({ potId: 't.2', outAt: EVENING.getTime() + 5000, bucketId: 'G' })],
    ['t.1', 't.2'].map((potId) => ({ kind: 'sponged', potId, implied: true }) as const),
  ])
  await bench.told()
  for (let i = 0; i < 20 && !(await bench.face.textContent())?.includes('Free for'); i++) await bench.pass(20)
  await expect(bench.face).toContainText('Free for')
  // Which pots an order keeps is not for a test of sizes to wait for.
  await page.evaluate(() => {
    const face = document.querySelector('.bench-main .face')
    for (const each of face?.querySelectorAll('.kept, .soft') ?? []) each.remove()
    for (const text of [
      'Pot 38 ready. Kept for a later Brackwater 18:22.',
      'Pots 31, 32, 33, 34, 37, +2 ready. Kept for Heather 18:24.',
      'waiting on purpose: saves one stir',
    ]) {
      const line = document.createElement('p')
      line.className = text.startsWith('Pot') ? 'strong figures kept' : 'soft'
      line.textContent = text
      face?.append(line)
    }
  })
  await readable(page)
})

test('the seconds until IN, and the dose below them: no text lies over another', async ({ page }) => {
  const bench = await BenchPage.on(page, twelve())
  await bench.pass(400)
  await bench.arm(1)
  await bench.hit()
  await expect(page.locator('.count-lead-in')).toBeVisible()
  await readable(page)
})
