import { expect } from '@playwright/test'
import type { TableEvent } from '../../../shared/events.ts'
import { demoEvents } from '../../../src/table/decide/demo.ts'
import { toldDip } from '../../fixtures/told-dip.ts'
import { EVENING } from '../bench.ts'
import { said } from '../tongue.ts'
import { BenchPage, dip, type Story, workUntil } from './story.ts'

const NUMBERS = [31, 32, 33, 34, 35, 36, 37, 38]

/** These pots alone, waxed and wiped already, so that the evening starts at the buckets. */
export function prepared(numbers: readonly number[] = NUMBERS): TableEvent[][] {
  const hit = (kind: 'waxed' | 'wiped') =>
    numbers.map((number): TableEvent => ({ kind, potId: `demo.${number}`, implied: true }))
  const away = NUMBERS.filter((number) => !numbers.includes(number))
  return [
    demoEvents(),
    away.map((number): TableEvent => ({ kind: 'pot-gone', potId: `demo.${number}` })),
    hit('waxed'),
    hit('wiped'),
  ]
}

/** The demo evening's eight pots: a run of dips from one bucket, several ready at once, coming back. */
export const manyPots: Story = {
  name: 'many pots',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, prepared())
    await bench.pass(400)
    await see('open a bucket: eight wait')
    await bench.hit()
    await bench.pass(11)
    await see('armed: first of many')
    await dip(bench)
    await see('armed: one in hand')
    await bench.other()
    await see('other: one in hand')
    await bench.page.locator('.other-close').tap()
    await page.evaluate(() => location.replace('#/board'))
    await bench.pass(2)
    await see('board in the middle')
    await page.getByRole('button', { name: said(page, 'Bench'), exact: true }).tap()
  },
}

/** Dipped one after another a while ago, twenty seconds apart. */
const dipped = (...numbers: number[]): TableEvent[] =>
  numbers.map((number, i) =>
    toldDip({ dipId: `early.${number}`, potId: `demo.${number}`, outAt: EVENING.getTime() + i * 10_000 }),
  )

const setDown = (...numbers: number[]): TableEvent[] =>
  numbers.map((number) => ({ kind: 'sponged', potId: `demo.${number}`, implied: true }))

/** Several pots come due together; the phone lay in a pocket meanwhile. */
export const calls: Story = {
  name: 'calls',
  hands: 'bench',
  async tell(page, see) {
    const began = [31, 32]
    const open: TableEvent = { kind: 'stirred', bucketId: 'demo.gatepost' }
    const bench = await BenchPage.on(page, [...prepared(began), [open], dipped(...began), setDown(...began)])
    await bench.pass(11)
    await see('wait: two dry')
    await workUntil(bench, /STIRRED/)
    await expect(bench.face).toContainText(said(page, 'Close Gatepost.'))
    await see('the next bucket')
    await workUntil(bench, /DRY/)
    await see('ready: several')
    await page.clock.runFor(450)
    await page.locator('.ready-tile').last().tap()
    await page.clock.runFor(50)
    await see('ready: one left out')
    await page.clock.fastForward(35 * 60_000)
    await page.clock.runFor(1000)
    await see('away')
  },
}

/** Two pots with one coat on, whose next glaze harms and may run. */
function harmful(readyMeans: 'touch' | 'clock'): TableEvent[][] {
  const began = [31, 32]
  const [laid = [], ...rest] = prepared(began)
  const marked = laid.map((event) =>
    event.kind === 'bucket-set' && event.bucket.name === 'Brackwater'
      ? { ...event, bucket: { ...event.bucket, cautions: ['manganese' as const] } }
      : event,
  )
  const ready: TableEvent = { kind: 'settings-set', settings: { readyMeans } }
  return [[...marked, ready], ...rest, dipped(...began), setDown(...began)]
}

/** All that one armed card can say of its coat: tong marks, a run, gloves; or the pot before still in hand. */
export const crowded: Story = {
  name: 'much to say',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, harmful('touch'))
    await bench.pass(6 * 3600)
    await workUntil(bench, /START/)
    await dip(bench)
    await see('armed: one in hand, a run, gloves')
  },
}

export const marks: Story = {
  name: 'marks to dab',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, harmful('clock'))
    await bench.pass(11)
    await workUntil(bench, /START/)
    await bench.pass(11)
    await see('armed: marks, a run, gloves')
  },
}

/** A bottle whose inside is poured first: the word of the count is longer than IN. */
export const pouring: Story = {
  name: 'pour inside',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, prepared([35]))
    await bench.pass(400)
    await workUntil(bench, /START/)
    await bench.hit()
    await page.clock.runFor(4000)
    await expect(page.locator('.count-word')).toHaveText(said(page, 'POUR'))
    await see('count: pour')
  },
}

/** What a dip can be warned of, before it. */
export const warned: Story = {
  name: 'warnings',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, prepared())
    await bench.pass(400)
    for (const number of [33, 35, 36]) {
      await bench.pick(number)
      if ((await bench.label()).startsWith('STIRRED')) await bench.hit()
      await bench.pass(11)
      await see(`armed: ${number}`)
    }
    await bench.pick(35)
    await bench.other('Another bucket', 'Brackwater')
    if ((await bench.label()).startsWith('STIRRED')) await bench.hit()
    await bench.pass(11)
    await see('armed: too runny for its foot')
    await bench.other('More', 'Why?')
    await see('why: before the dip')
  },
}
