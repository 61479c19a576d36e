import { BenchPage, dip, type See, type Story, untilBar, workUntil } from './story.ts'

/** One bowl from bisque to the last coat. */
export const onePot: Story = {
  name: 'one pot',
  hands: 'bench',
  async tell(page, see) {
    const bench = await BenchPage.only(page, 33)
    await see('wax')
    await page.clock.runFor(450)
    await page.locator('.corner-hold').tap()
    await page.clock.runFor(500)
    await see('on hold')
    await bench.hit()
    await bench.hit()
    await see('wax done: pan off?')
    await bench.hit()
    await see('take back: wax pan')
    await bench.pass(15)
    await see('wait: wax sets')
    await untilBar(bench, /WIPED/)
    await see('wipe')
    await bench.hit()
    await bench.pass(11)
    await see('open a bucket')
    await bench.hit()
    await bench.pass(11)
    await see('wait: damp leaves')
    await untilBar(bench, /START/)
    await see('armed')
    await bench.pass(302)
    await see('stir again')
    await bench.hit()
    await count(bench, see)
    await wait(bench, see)
    await workUntil(bench, /START/)
    await see('armed: second coat')
    await dip(bench)
    await workUntil(bench, /STIRRED/)
    await see('decant')
    await bench.hit()
    await workUntil(bench, /START/)
    await see('armed: collar')
    await dip(bench)
    await bench.hit()
    await workUntil(bench, /RETURNED/)
    await see('return')
    await bench.hit()
    for (let i = 0; i < 3; i++) {
      await untilBar(bench, /LID ON/)
      await bench.hit()
    }
    await bench.pass(11)
    await see('tools: in the settling bucket')
    await bench.hit()
    await untilBar(bench, /FOOT CLEAN/)
    await bench.pass(11)
    await see('foot check')
    await bench.hit()
    await bench.pass(11)
    // The floor comes last.
    await bench.hit()
    await bench.pass(11)
    await see('closed')
  },
}

/** Lead-in 4 s, lowering 0.6 s, hold 4 s, OUT 3 s, drip 10 s. */
async function count(bench: BenchPage, see: See): Promise<void> {
  const { clock } = bench.page
  await bench.hit()
  await clock.runFor(950)
  await see('count: lead-in')
  await clock.runFor(3200)
  await see('count: IN')
  await clock.runFor(3500)
  await see('count: three')
  await clock.runFor(1200)
  await see('count: OUT')
  await clock.runFor(3500)
  await see('drip')
  await clock.runFor(7000)
  await see('foot')
}

async function wait(bench: BenchPage, see: See): Promise<void> {
  await bench.hit()
  await bench.pass(11)
  await see('wait: drying')
  // The next bucket may be opened while the coat dries.
  await workUntil(bench, /DRY|NOT YET/)
  await see('ready: one')
  await bench.page.clock.runFor(450)
  await bench.page.locator('.bar-answer-small').tap()
  await bench.page.clock.runFor(50)
  await see('not yet')
}
