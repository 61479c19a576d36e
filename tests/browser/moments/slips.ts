import { said } from '../tongue.ts'
import { prepared } from './many-pots.ts'
import { BenchPage, dip, type See, type Story, untilBar } from './story.ts'

const close = async ({ page }: BenchPage) => {
  await page.clock.runFor(450)
  await page.locator('.other-close').tap()
  await page.clock.runFor(50)
}

/** Other, then each of its pages by the tile that opens it. */
async function look(bench: BenchPage, see: See, menu: string, pages: Readonly<Record<string, string>>) {
  await bench.other()
  await see(menu)
  for (const [tile, moment] of Object.entries(pages)) {
    await bench.page.clock.runFor(450)
    await bench.page
      .locator('.other')
      .getByRole('button', { name: said(bench.page, tile) })
      .first()
      .tap()
    await bench.page.clock.runFor(50)
    await see(moment)
    await close(bench)
  }
  await close(bench)
}

/** Other and its pages, and the cards that want a decision. */
export const slips: Story = {
  name: 'slips',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.on(page, prepared([34, 38]))
    await bench.pass(400)
    await bench.hit()
    await bench.pick(34)
    await look(bench, see, 'other', {
      'Another pot': 'other: which pot',
      'Another bucket': 'other: which bucket',
      'Log a dip': 'other: told later',
      More: 'other: more',
    })
    await dip(bench)
    await look(bench, see, 'other: in hand', {
      'It was another pot': 'other: was which pot',
      'Change the seconds': 'other: held',
      'I lifted earlier': 'other: earlier',
    })
    await bench.other('Change the seconds', '+5 s')
    await dip(bench)
    await bench.other('It was another bucket', 'Heather')
    await see('other: after another bucket')
    await close(bench)
    await close(bench)
    await bench.hit()
    await bench.pick(34)
    await bench.other('More', 'Why?')
    await see('why')
    await close(bench)
    await close(bench)
    await bench.other('More', 'Weigh it')
    await see('other: on the scale')
    await close(bench)
    await close(bench)
    await bench.other('Another bucket', 'Gatepost')
    if ((await bench.label()).startsWith('STIRRED')) await bench.hit()
    await see('armed: has it already')
    await bench.other('More', 'not sure')
    await see('stuck: uncounted')
    await bench.pass(1)
    await bench.page.locator('.coat-key').nth(1).tap()
    await bench.pass(1)
    await bench.pick(38)
    await untilBar(bench, /KEEP IT/, 600)
    await see('stuck: strayed')
  },
}

/** What the phone itself can do to a hit. */
export const phone: Story = {
  name: 'the phone',
  hands: 'bench',
  async tell(page, see) {
    await page.addInitScript(() => {
      Reflect.deleteProperty(window, 'AudioContext')
      Reflect.deleteProperty(Navigator.prototype, 'wakeLock')
    })
    const bench = await BenchPage.on(page, prepared([33]))
    await bench.pass(400)
    await bench.pick(33)
    await bench.hit()
    await bench.pass(11)
    await see('sound is off')
    await bench.hit()
    await page.clock.runFor(5000)
    await page.clock.fastForward(20_000)
    await page.clock.runFor(1000)
    await see('slept in the count')
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    })
    await bench.hit()
    for (let i = 0; i < 20; i++) await page.clock.runFor(500)
    await see('not saved')
  },
}
