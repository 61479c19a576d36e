import type { Page } from '@playwright/test'
import type { TableEvent } from '../../../shared/events.ts'
import { demoEvents } from '../../../src/table/decide/demo.ts'
import { EVENING, opened, tellTime } from '../bench.ts'
import { said } from '../tongue.ts'
import { BenchPage, type Story } from './story.ts'

/** The screen asked for is there, and not the blank one until its part is fetched. */
const drawn = (page: Page) => page.locator('#app .desk :is(h1, h2, button)').first().waitFor()

/** From the first visit to a table of one's own: nothing there yet. */
export const firstVisit: Story = {
  name: 'first visit',
  hands: 'desk',
  async tell(page, see) {
    await tellTime(page, EVENING)
    await page.goto('./')
    await opened(page)
    await page.clock.pauseAt(new Date(EVENING.getTime() + 60_000))
    await see('first visit')
    await page.getByRole('button', { name: said(page, 'My own pots') }).tap()
    await drawn(page)
    await see('board: empty')
    for (const at of ['buckets', 'buckets/new', 'stacks', 'pot', 'room']) {
      await page.evaluate((to) => location.replace(`#/${to}`), at)
      await page.clock.runFor(50)
      await drawn(page)
      await see(`empty: ${at}`)
    }
  },
}

const more = (count: number): TableEvent[] =>
  demoEvents().flatMap((event): TableEvent[] => {
    if (event.kind !== 'pot-set' || event.pot.number !== 33) return []
    return Array.from({ length: count }, (_, i) => ({
      kind: 'pot-set' as const,
      pot: {
        ...event.pot,
        potId: `more.${i}`,
        number: 41 + i,
        place: { board: 'CDEFGHIJ'[Math.floor(i / 4)]!, spot: 1 + (i % 4) },
      },
    }))
  })

/** Planning with clean hands, on the demo's table. */
export const desk: Story = {
  name: 'desk',
  hands: 'desk',
  async tell(page, see) {
    const bench = await BenchPage.on(page, [demoEvents(), more(32)])
    const go = async (to: string, moment: string) => {
      await page.evaluate((at) => location.replace(`#/${at}`), to)
      await page.clock.runFor(300)
      await drawn(page)
      await see(moment)
    }
    await bench.pick(33)
    await go('board', 'board: 40 pots')
    await go('pot', 'add pots')
    await page.getByRole('radio', { name: said(page, 'own measures') }).tap()
    await page.clock.runFor(50)
    await see('own measures')
    await go('pot/demo.35', 'pot')
    await page
      .getByRole('button', { name: said(page, 'Measures') })
      .first()
      .tap()
    await page.clock.runFor(50)
    await see('pot: change')
    await go('buckets', 'buckets')
    await go('buckets/demo.heather', 'bucket')
    await go('tile/demo.brackwater/demo.gatepost', 'flow tile')
    await go('stacks', 'stacks')
    await go('stacks/demo.tideline', 'stack')
    await go('room', 'room')
    for (const door of ['air', 'kiln', 'clay', 'count', 'phone', 'keep'])
      await go(`room/${door}`, `room: ${door}`)
  },
}

/** One pot on the board. */
export const lone: Story = {
  name: 'lone pot',
  hands: 'desk',
  async tell(page, see) {
    await BenchPage.only(page, 35)
    await page.evaluate(() => location.replace('#/board'))
    await page.clock.runFor(300)
    await see('board: one pot')
  },
}
