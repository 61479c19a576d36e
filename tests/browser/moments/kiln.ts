import { KilnPage } from '../kiln-page.ts'
import type { Story } from './story.ts'

/** From glazed pots to a kiln that is cool enough to unload. */
export const kiln: Story = {
  name: 'the kiln',
  hands: 'desk',
  async tell(page, see) {
    const kiln = await KilnPage.open(page)
    await see('this kiln')
    await kiln.hit()
    await kiln.says('PROPOSE')
    await see('the pots')
    await kiln.hit()
    await kiln.says('SHELF 1 AS DRAWN')
    await see('a shelf')
    while ((await kiln.label()) !== 'LID SHUT') await kiln.hit()
    await see('lid shut')
    await kiln.hit()
    await kiln.says('KILN ON')
    await see('on')
    await kiln.hit()
    await kiln.says('READING')
    await kiln.pass(420)
    await see('firing')
    await kiln.hit()
    await see('a reading')
    await kiln.type('1050')
    await kiln.hit()
    for (const tempC of ['1110', '1160']) {
      await kiln.pass(45)
      await kiln.read(tempC)
    }
    await see('the cone to come')
    await kiln.key('Cone')
    await kiln.says('6 DOWN')
    await see('a cone')
    await page.locator('.desk-back').tap()
    await kiln.pass(56)
    await see('cone down?')
    await kiln.hit()
    await kiln.says('KILN OFF')
    await see('off')
    await kiln.hit()
    await kiln.pass(300)
    await kiln.read('560')
    await kiln.pass(90)
    await kiln.read('430')
    await see('cooling')
    await kiln.pass(500)
    await kiln.read('118')
    await see('lid open?')
    await kiln.hit()
    await see('at what degrees')
    await kiln.hit()
    await kiln.pass(200)
    await kiln.read('58')
    await see('unload')
  },
}
