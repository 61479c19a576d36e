/** What was hit by mistake at the kiln, or said late, is put right from its own screen. */
import { expect, test } from '@playwright/test'
import { KilnPage } from './kiln-page.ts'

const HOUR_MS = 3_600_000

async function shut(kiln: KilnPage): Promise<void> {
  for (let i = 0; i < 10 && (await kiln.bar.textContent()) !== 'KILN ON'; i++) {
    await kiln.hit()
    if (i === 1) await kiln.says('SHELF 1 AS DRAWN')
  }
  await kiln.says('KILN ON')
}

test('a kiln that was on for seven hours and off by mistake goes on, with the cone it really has', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const kiln = await KilnPage.open(page)
  await shut(kiln)
  await kiln.key('On earlier')
  await kiln.says('KILN ON')
  await kiln.key('now')
  for (const back of ['−6 h', '−1 h']) await kiln.key(back)
  await kiln.shows(/It was at \d\d:\d\d, 7 h ago/)
  await kiln.hit()
  await kiln.says('READING')
  const { litAt = 0, begunAt } = await kiln.load()
  expect(Math.round((begunAt - litAt) / HOUR_MS)).toBe(7)
  await kiln.read('1050')
  await kiln.key('KILN OFF')
  await kiln.says('KILN OFF')
  await kiln.hit()
  await kiln.says('READING')
  expect((await kiln.load()).offAt).toBeDefined()
  await kiln.pass(45)
  await kiln.read('1110')
  await kiln.key('The kiln is still on')
  await kiln.shows('1110 °C at')
  const load = await kiln.load()
  expect(load.offAt).toBeUndefined()
  expect(load.readings.map(({ tempC }) => tempC)).toEqual([1050, 1110])
  await kiln.key('Put right')
  await kiln.key('Change the firing, cone 6')
  await page.getByLabel('Cone', { exact: true }).fill('7')
  await kiln.hit()
  await kiln.says('READING')
  expect((await kiln.load()).firing.cone).toBe('7')
  await kiln.shows(/Cone 7 about/)
  await kiln.key('Put right')
  await kiln.key('1110 °C at')
  await page.locator('.desk-back').tap()
  await kiln.shows('1050 °C at')
})

test('the lid was not shut, nor the shelf loaded; a kiln of other shelves is asked about', async ({
  page,
}) => {
  test.setTimeout(120_000)
  const kiln = await KilnPage.open(page)
  await shut(kiln)
  await page.clock.runFor(11_000)
  await kiln.key('Put right')
  await kiln.key(/^Lid shut, /)
  await kiln.key(/^Shelf \d loaded, /)
  await page.locator('.desk-back').tap()
  await kiln.says(/SHELF \d AS DRAWN/)
  await kiln.key('Put right')
  await kiln.key('Change the kiln')
  await page.getByRole('radio', { name: 'round, half shelves', exact: true }).tap()
  await page.clock.runFor(1100)
  await kiln.hit()
  await kiln.shows('Its shelves are of another kind')
  await kiln.key('Change it all the same')
  await kiln.says('SHELF 1 AS DRAWN')
  const { things, kiln: now } = await kiln.load()
  expect(now.shelves[0]?.kind).toBe('halfRound')
  expect(Object.values(things).every(({ column }) => column !== 'whole')).toBe(true)
})
