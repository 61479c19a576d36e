import type { TableEvent } from '../../../shared/events.ts'
import { twelve } from '../../fixtures/twelve.ts'
import { EVENING } from '../bench.ts'
import { BenchPage, dip, type Story } from './story.ts'

const settings = (part: Extract<TableEvent, { kind: 'settings-set' }>['settings']): TableEvent[] => [
  { kind: 'settings-set', settings: part },
]

/** Twelve pots by the order of work: change of bucket, the visit, waiting on purpose. */
export const order: Story = {
  name: 'order of work',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, twelve())
    await bench.pass(400)
    await bench.told()
    await see('change of bucket')
    await bench.pass(180)
    await bench.hit()
    await bench.pass(11)
    await see('armed: first of nine')
    for (let i = 0; i < 6; i++) {
      await dip(bench)
      await bench.pass(34)
    }
    await see('stale in the visit')
    await bench.hit()
    for (let i = 0; i < 3; i++) {
      await dip(bench)
      await bench.pass(34)
    }
    await see('next bucket, foot first')
    await page.evaluate(() => location.replace('#/board'))
    await bench.pass(2)
    await see('board')
  },
}

/** One pot and another: hands free, what comes when. */
export const free: Story = {
  name: 'hands free',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, twelve(['GBH'], 2))
    await bench.pass(400)
    await bench.told()
    await bench.pass(180)
    await bench.hit()
    for (let i = 0; i < 2; i++) {
      await bench.pass(20)
      await dip(bench)
    }
    await bench.hit()
    await bench.pass(20)
    await see('wait for the stir')
    await bench.pass(400)
    await bench.settled()
    await see('waiting, later')
  },
}

/** Too late for the kiln, and the ways out. */
export const late: Story = {
  name: 'late',
  hands: 'bench',
  async tell(page, see) {
    const kilnOnAt = EVENING.getTime() + 5 * 3_600_000
    const bench = await BenchPage.on(page, [...twelve(), settings({ kilnOnAt })])
    await bench.pass(400)
    await bench.told()
    await see('change of bucket, late')
    await page.locator('.ways-strip').tap()
    await bench.pass(2)
    await page.locator('.way').first().waitFor()
    await see('ways out')
    await page.evaluate(() => location.replace('#/room/kiln'))
    await bench.pass(2)
    await see('room: the sitting')
    await page.evaluate(() => location.replace('#/board'))
    await bench.pass(2)
    await see('board, late')
  },
}

/** Two at one phone, too late for the kiln: half a strip has to say it. */
export const two: Story = {
  name: 'two potters',
  hands: 'bench',
  async tell(page, see) {
    const kilnOnAt = EVENING.getTime() + 5 * 3_600_000
    const bench = await BenchPage.on(page, [...twelve(), settings({ potters: 2, kilnOnAt })])
    await bench.pass(400)
    await bench.told()
    await see('first hands')
    await page.locator('.potter-strip').tap()
    await bench.pass(2)
    await see('second hands')
    await page.locator('.potter-strip').tap()
    await bench.pass(12)
    await see('first hands again')
  },
}

/** Touch this one first: glazes that dry by their own measure. */
export const touch: Story = {
  name: 'touch first',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, [...twelve(['GBH'], 4), settings({ readyMeans: 'touch' })])
    await bench.pass(400)
    await bench.told()
    await bench.pass(180)
    await bench.hit()
    for (let i = 0; i < 4; i++) {
      await bench.pass(20)
      await dip(bench)
    }
    await bench.hit()
    await bench.settled()
    await bench.pass(12)
    await see('after the first coats')
  },
}
