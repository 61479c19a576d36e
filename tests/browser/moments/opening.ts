import { OpeningPage } from '../opening-page.ts'
import { said } from '../tongue.ts'
import type { Story } from './story.ts'

/** A load with its lid up, judged pot by pot, and what is told of it afterwards. */
export const opening: Story = {
  name: 'the opening',
  hands: 'desk',
  async tell(page, see) {
    const opening = await OpeningPage.open(page, 'up')
    // Large letters push some of the keys below the bar's edge: they are scrolled to.
    const key = async (name: string) => {
      await page
        .locator('.open-key', { hasText: said(page, name) })
        .first()
        .tap()
      await page.clock.runFor(300)
    }
    await opening.says('GOOD')
    await see('a pot')
    await key('RAN')
    await see('ran: how far')
    await opening.wall(0.5)
    await see('ran: measured')
    await opening.hit()
    await see('ran: longest drip')
    await opening.hit()
    await key('STUCK')
    await see('stuck')
    await page.locator('.desk-back').tap()
    await key('OTHER')
    await see('other')
    await page.getByRole('button', { name: said(page, 'SHIVERED') }).tap()
    await page.clock.runFor(300)
    await see('shivered')
    await page.locator('.desk-back').tap()
    while (/^(NEXT|GOOD)/.test(await opening.label())) await opening.hit()
    await see('all judged')
    for (const at of ['fired', 'story/demo.35']) {
      await page.evaluate((to) => location.replace(`#/${to}`), at)
      await page.clock.runFor(500)
      await see(at)
    }
  },
}
