import { almostDone } from '../../fixtures/almost-done.ts'
import { EVENING } from '../bench.ts'
import { BenchPage, dip, type Story, untilBar, workUntil } from './story.ts'

/** The last coat of the demo evening, and all that ends it. */
export const end: Story = {
  name: 'the end',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, almostDone(EVENING.getTime()))
    await workUntil(bench, /START/)
    await dip(bench)
    await bench.hit()
    await untilBar(bench, /RETURNED/, 5)
    await see('return')
    await bench.hit()
    await bench.pass(11)
    await see('lid')
    await bench.other()
    await see('other: a step of the end')
    await page.clock.runFor(450)
    await page.locator('.other-close').tap()
    await page.clock.runFor(500)
    await bench.hit()
    await see('lid: the next, take back')
    await bench.pass(11)
    await bench.hit()
    await bench.hit()
    await bench.pass(11)
    await see('tools')
    await bench.hit()
    await bench.pass(11)
    await see('wait: the last foot')
    await bench.hit()
    await bench.pass(11)
    await see('the last foot')
    await bench.hit()
    await bench.pass(11)
    await see('floor')
    await bench.hit()
    await see('closed, take back')
    await bench.pass(11)
    await see('closed')
    await page.clock.runFor(450)
    await page.locator('.closed-key').first().tap()
    await page.clock.runFor(3000)
    await see('dry sooner')
  },
}
