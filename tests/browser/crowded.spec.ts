import { expect, test } from '@playwright/test'
import { toldDip } from '../fixtures/told-dip.ts'
import { twelve } from '../fixtures/twelve.ts'
import { BenchPage, EVENING } from './bench.ts'
import { measure } from './measure.ts'

const SIZES = [
  [360, 640],
  [320, 568],
  [640, 360],
] as const

for (const [told, limitMm] of [
  ['nothing new against it', 0.4],
  ['too thick with this coat', 0.8],
] as const)
  test(`a pot in hand, tong marks, three harmful things, a screen that may sleep, ${told}: all of it can be read`, async ({
    page,
  }) => {
    const table = twelve(['GGG'], 3).map((hit) =>
      hit.map((event) =>
        event.kind === 'bucket-set'
          ? {
              ...event,
              bucket: { ...event.bucket, limitMm, cautions: ['lead', 'cadmium', 'barium'] as const },
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
    await expect(bench.face).toContainText('3: sponge the foot, set down at A 3')
    await expect(bench.face).toContainText(
      'Contains lead, cadmium, more: wear gloves. Not known to be safe for food.',
    )
    await expect(bench.face).toContainText(limitMm < 0.5 ? 'Dab the tong marks' : 'too thick. Skip this coat')
    await expect(page.locator('.strip')).toContainText('The screen may sleep.')
    for (const [width, height] of SIZES) {
      await page.setViewportSize({ width, height })
      await page.clock.runFor(300)
      expect((await measure(page)).hidden, `${width} by ${height}`).toEqual([])
    }
  })
