import { expect, test } from '@playwright/test'
import { firedOf } from '../../src/table/fired/fired-pot.ts'
import { firing, whole } from '../fixtures/fired/kiln-play.ts'
import { glazed } from '../fixtures/glazed.ts'
import { firedLoad, nextLoad } from '../fixtures/opened.ts'
import { recordsOf } from '../fixtures/season.ts'
import { Play } from '../unit/table/play.ts'
import { BenchPage, EVENING, fetched, opened, plantRecords, tellTime } from './bench.ts'
import { OpeningPage } from './opening-page.ts'

test('the demo load is guessed, opened and judged with gloves, killed in between', async ({
  page,
  context,
}) => {
  test.setTimeout(240_000)
  const opening = await OpeningPage.open(page, 'shut')
  await expect(opening.title).toContainText('Pot 35')
  await expect(opening.title).toContainText('Stands at 2.1')
  await opening.wall(0.6)
  await opening.says(/^GUESS3 mm$/)
  await page.getByRole('button', { name: '1 mm more' }).tap()
  await page.getByRole('button', { name: '1 mm less' }).tap()
  await page.getByRole('button', { name: '1 mm less' }).tap()
  await opening.hit()
  await opening.again()
  await expect(opening.title).toContainText('Pot 36')
  await opening.wall(1.05)
  await opening.says(/on the shelf$/)
  await opening.hit()
  for (let skipped = 0; skipped < 6; skipped++) {
    await opening.says('SKIP')
    await opening.hit()
  }
  await opening.says('TO THE KILN')
  expect((await opening.fired(35)).guess?.mm).toBe(2)
  expect((await opening.fired(36)).guess?.mm).toBe('shelf')
  await opening.hit()
  await expect(page.locator('.kiln-keys')).toContainText('Guess the runs')
  const kilnBar = page.locator('.kiln [data-press="bar"]')
  await opening.press(kilnBar)
  await expect(page.locator('.kiln-main')).toContainText('Heat gloves')
  await opening.press(kilnBar)
  await expect(kilnBar).toHaveText('JUDGE')
  await context.setOffline(true)
  await opening.press(kilnBar)
  await opening.says('GOOD')
  await expect(page.locator('.open')).toContainText('Heat gloves. Then cut gloves.')
  await expect(opening.title).toContainText('Pot 35')
  await expect(page.locator('.open-guess')).toContainText('2 mm')
  await opening.hit()
  expect(await opening.fired(35)).toMatchObject({ place: '2.1', gone: true, found: { run: { is: 'none' } } })
  // Taken back within its ten seconds, and hit again.
  await opening.press(page.locator('.strip-take-back'))
  await expect(opening.title).toContainText('Pot 35')
  expect((await opening.fired(35)).gone).toBe(false)
  await opening.hit()
  await context.setOffline(false)
  await opening.again()
  // One ran, and stuck.
  await expect(opening.title).toContainText('Pot 36')
  await opening.key('RAN')
  await opening.says('NOT MEASURED')
  await opening.wall(0.4)
  await opening.says(/^FRONT 4 mm$/)
  await opening.hit()
  await opening.wall(0.8)
  await opening.says(/^DRIP 8 mm$/)
  await opening.hit()
  await opening.key('STUCK')
  await expect(page.locator('.caution')).toContainText('Chip and grind wet')
  await opening.key('GROUND OFF')
  await expect(page.locator('.caution')).toContainText('Chip and grind wet: eye cover')
  // What is tapped outlives the page, and is not judged by that.
  await opening.again()
  expect((await opening.fired(36)).found).toBeUndefined()
  await opening.says('NEXT')
  await expect(page.locator('.open-keys')).toContainText('4 mm, drip 8 mm')
  await opening.key('CRAWLED')
  await opening.key('OTHER')
  await opening.key('shivered')
  await expect(page.locator('.caution')).toContainText('never for food. Do not refire')
  await opening.says('DONE')
  await opening.hit()
  await opening.says('NEXT')
  await opening.hit()
  expect((await opening.fired(36)).found).toMatchObject({
    run: { is: 'measured', mm: 4, longestMm: 8 },
    stuck: 'ground',
    faults: ['crawled', 'shivered'],
  })
  // Taken back, all that was tapped is there again.
  await opening.press(page.locator('.strip-take-back'))
  await expect(page.locator('.open-keys')).toContainText('shivered')
  await opening.hit()
  for (let good = 0; good < 6; good++) {
    await opening.says('GOOD')
    await opening.hit()
  }
  await opening.says('DONE')
  await expect(page.locator('.kiln-main')).toContainText('7 good, 1 ran, 1 stuck, 1 with a fault')
  await expect(page.locator('.kiln-main')).toContainText('cannot tell whether a pot is safe for food')
  // Both guesses are scored, alike, now that both and what was found are known.
  const { appGuess: app } = await opening.fired(35)
  expect(app?.lowMm).toBeLessThanOrEqual(app?.likelyMm ?? -1)
  await expect(page.locator('.open-score')).toContainText(
    /You were [\d.]+ mm off, the app [\d.]+ mm \(2 pots\)\./,
  )
  // What it taught moves nothing until it is taken, and can be left out again.
  await page.getByRole('button', { name: 'What the fire taught' }).tap()
  await page.clock.runFor(500)
  const use = page.getByRole('button', { name: 'USE IT' }).first()
  await expect(use).toBeVisible()
  expect((await opening.bench.table()).taken).toBeUndefined()
  // More taps on the same spot take nothing else: it says that it was taken, and what is undone.
  const box = await use.boundingBox()
  for (let tap = 0; tap < 3; tap++) {
    await page.touchscreen.tap((box?.x ?? 0) + 40, (box?.y ?? 0) + (box?.height ?? 0) * 0.85)
    await page.clock.runFor(600)
  }
  const taken = (await opening.bench.table()).taken ?? []
  expect(taken.map(({ event }) => event.kind)).toEqual(['lesson-taken'])
  await expect(page.locator('.open-lesson').filter({ hasText: 'You took it.' })).toHaveCount(1)
  await expect(page.locator('.open-back')).toHaveText(/^Take back: lesson \w+$/)
  await page.locator('.desk-back').tap()
  await page.clock.runFor(500)
  await page.getByRole('button', { name: 'What the fire taught' }).tap()
  await page.clock.runFor(500)
  await expect(page.locator('.open-lesson').filter({ hasText: 'As the tiles say again' })).toHaveCount(1)
  await page.getByRole('button', { name: 'As the tiles say again' }).tap()
  await page.clock.runFor(300)
  await expect(page.locator('.open-lesson').filter({ hasText: 'As the tiles say again' })).toHaveCount(0)
  await page.locator('.open-lesson summary').first().tap()
  await page.getByRole('button', { name: 'Leave out' }).first().tap()
  await page.clock.runFor(300)
  await page.getByText(/Results that teach nobody/).tap()
  await expect(page.locator('.open-behind').last()).toContainText('left out')
})

test('what ran on the shelf is asked how it came off, all the front and its drip kept', async ({ page }) => {
  const opening = await OpeningPage.open(page, 'up')
  await opening.key('RAN')
  await opening.wall(0.4)
  await opening.hit()
  await opening.wall(1.05)
  await opening.says('DRIP on the shelf')
  await expect(page.locator('.ruler')).not.toContainText('no run')
  await opening.hit()
  await expect(opening.title).toContainText('Stuck')
  await expect(page.locator('.caution')).toContainText('Chip and grind wet')
  await opening.key('KISSED')
  await opening.says('DONE')
  await opening.hit()
  await expect(page.locator('.caution')).toContainText('Chip and grind wet')
  await opening.hit()
  expect((await opening.fired(35)).found).toMatchObject({
    run: { is: 'measured', mm: 2, longestMm: 'shelf' },
    faults: ['kissed'],
  })
})

test('what was tapped wrong is taken off again where it was tapped, and the pot is good', async ({
  page,
}) => {
  const opening = await OpeningPage.open(page, 'up')
  for (const text of ['2.1', 'Pot 35']) {
    const px = await page
      .locator('.desk-title h1', { hasText: text })
      .evaluate((title) => parseFloat(getComputedStyle(title).fontSize))
    expect(px).toBeGreaterThanOrEqual(34)
  }
  await opening.key('CRAWLED')
  await opening.says('NEXT')
  await opening.key('tap again: off')
  await opening.says('GOOD')
  await opening.key('RAN')
  await opening.wall(0.4)
  await expect(page.locator('.ruler')).toContainText('no run')
  await opening.wall(-0.1)
  await opening.says('NO RUN')
  await opening.hit()
  await opening.says('GOOD')
  await opening.key('STUCK')
  await expect(page.locator('.open-key', { hasText: 'NOT STUCK' })).toHaveCount(0)
  await opening.key('LOST')
  await opening.says('NEXT')
  await opening.key('STUCK')
  await opening.key('NOT STUCK')
  await opening.says('NOT STUCK')
  await opening.hit()
  await opening.says('GOOD')
})

test('a guess stands and shows, and once a pot was seen nobody guesses another', async ({ page }) => {
  const opening = await OpeningPage.open(page, 'shut')
  await opening.wall(0.6)
  await opening.hit()
  await page.getByRole('button', { name: 'Pots' }).tap()
  await page.locator('.open-pot').first().tap()
  await opening.says('NEXT')
  await expect(page.locator('.open-told')).toHaveText('3 mm')
  await opening.wall(0.2)
  await expect(page.locator('.open-told')).toHaveText('3 mm')
  await page.locator('.desk-back').tap()
  const kilnBar = page.locator('.kiln:not(.open) [data-press="bar"]')
  await expect(kilnBar).toHaveText('LID OPEN')
  await opening.press(kilnBar)
  await fetched(page.locator('.kiln-pad'))
  await opening.press(kilnBar)
  await expect(kilnBar).toHaveText('JUDGE')
  await opening.press(kilnBar)
  await opening.says('GOOD')
  await opening.press(page.locator('.strip-take-back'))
  await opening.says('TO THE KILN')
  await expect(page.locator('.kiln-main')).toContainText('The lid was up: nothing is guessed any more.')
})

test('pots that are all out at once are put back with one hit, and judged with the next', async ({
  page,
}) => {
  const opening = await OpeningPage.open(page, 'up')
  await page.getByRole('button', { name: 'Pots' }).tap()
  await page.getByRole('button', { name: 'All out, judge later' }).tap()
  await page.clock.runFor(300)
  expect((await opening.fired(36)).gone).toBe(true)
  await opening.press(page.locator('.strip-take-back'))
  expect((await opening.fired(36)).gone).toBe(false)
  await opening.says('JUDGE 35')
  await opening.hit()
  await opening.says('GOOD')
})

test('a pot without its number is told by what is seen of it, and is the next card', async ({ page }) => {
  const opening = await OpeningPage.open(page, 'up')
  await page.getByRole('button', { name: 'Pots' }).tap()
  await page.getByRole('button', { name: 'Which pot is this?' }).tap()
  const which = page.locator('.kiln [data-press="bar"]')
  await expect(which).toHaveText('COMPARE')
  await page.getByText('1', { exact: true }).first().tap()
  await opening.press(which)
  const found = page.locator('.which-pot', { hasText: '33' })
  await found.tap()
  await expect(opening.title).toContainText('Pot 33')
  await expect(opening.title).toContainText('% sure')
  await opening.says('GOOD')
  await opening.hit()
  expect((await opening.fired(33)).found?.run).toEqual({ is: 'none' })
  expect((await opening.fired(35)).found).toBeUndefined()
  await expect(opening.title).toContainText('Pot 35')
})

test('inches are sixteenths on ruler, keys and figures alike', async ({ page }) => {
  const inches = { kind: 'settings-set' as const, settings: { units: 'us' as const } }
  const bench = await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'shut'), [inches]])
  await page.goto('./#/opening')
  const opening = new OpeningPage(page, bench)
  await opening.says('SKIP')
  for (const told of ['1/16 in', '1/8 in']) {
    await page.getByRole('button', { name: '1/16 in more' }).tap()
    await expect(page.locator('.open-told')).toHaveText(told)
  }
  await expect(page.locator('.ruler')).toContainText('1/8')
  await opening.hit()
  expect((await opening.fired(35)).guess?.mm).toBe(3.18)
})

test('a day later each pot is looked at again, which adds to what was found', async ({ page }) => {
  const judged = ['demo.35', 'demo.36'].map((potId) => [
    { kind: 'taken-out' as const, potId, loadId: 'l.demo', place: '2.1' },
    { kind: 'judged' as const, potId, loadId: 'l.demo', run: { is: 'none' as const }, faults: [] },
  ])
  const bench = await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'up'), ...judged])
  await page.goto('./#/board')
  await page.clock.runFor(500)
  await page.clock.fastForward(25 * 3_600_000)
  await page.clock.runFor(1000)
  await page.getByRole('button', { name: 'Look again at 2 pots' }).tap()
  await page.clock.runFor(500)
  const opening = new OpeningPage(page, bench)
  await opening.says('AS IT WAS')
  await opening.key('CRAZED')
  await expect(page.locator('.caution')).toContainText('cannot tell whether a pot is safe for food')
  await opening.says('NEXT')
  await opening.hit()
  await opening.hit()
  await expect(page.locator('.kiln-main')).toContainText('Nothing to look at again')
  expect(await opening.fired(35)).toMatchObject({
    found: { run: { is: 'none' }, faults: [] },
    looks: [{ faults: ['crazed'] }],
  })
  expect((await opening.fired(36)).looks).toMatchObject([{ faults: [] }])
  await page.evaluate(() => location.replace('#/story/demo.36'))
  await expect(page.locator('.open-story').last()).toContainText('Looked again: nothing new')
})

test('fired pots are found by what held them, their glazes by name', async ({ page }) => {
  const judged = (potId: string, stuck?: 'ground') => [
    { kind: 'taken-out' as const, potId, loadId: 'l.demo', place: '2.1' },
    {
      kind: 'judged' as const,
      potId,
      loadId: 'l.demo',
      run: { is: 'none' as const },
      faults: [],
      ...(stuck ? { stuck } : {}),
    },
  ]
  await BenchPage.on(page, [
    ...firedLoad(EVENING.getTime(), 'up'),
    judged('demo.35', 'ground'),
    judged('demo.36'),
  ])
  await page.goto('./#/fired')
  await expect(page.locator('.open-by-glaze')).toContainText('Gatepost')
  await page.locator('.open-search input').fill('stuck')
  await page.clock.runFor(500)
  await expect(page.locator('.open-fired li')).toHaveCount(1)
})

test('a pot that was fired without a load here is judged all the same, while another load is shut', async ({
  page,
}) => {
  const spare = glazed(EVENING.getTime(), 2, 40)
    .flat()
    .filter((event) =>
      event.kind === 'pot-set'
        ? event.pot.potId === 'demo.33.1'
        : 'potId' in event && event.potId === 'demo.33.1',
    )
  const bench = await BenchPage.on(page, [...firedLoad(EVENING.getTime(), 'shut'), spare])
  await page.goto('./#/board')
  await page.getByRole('button', { name: 'Fired pots' }).tap()
  await page.getByRole('button', { name: 'Fired elsewhere' }).tap()
  await page.clock.runFor(300)
  await page.locator('.open-pot').first().tap()
  await page.clock.runFor(300)
  const opening = new OpeningPage(page, bench)
  await expect(opening.title).toContainText('Place not noted')
  await opening.says('GOOD')
  await opening.hit()
  await expect(opening.title).toContainText('Fired elsewhere')
  const fired = firedOf((await bench.table()).pots['demo.33.1'] ?? (await bench.pot(33)))
  expect(fired).toMatchObject({ found: { run: { is: 'none' } } })
  expect(fired).not.toHaveProperty('loadId')
})

test('a pot that is judged is looked at without judging it anew, and what is changed of it is saved or let go', async ({
  page,
}) => {
  const opening = await OpeningPage.open(page, 'up')
  const first = async () => {
    await page.getByRole('button', { name: 'Pots' }).tap()
    await page.clock.runFor(300)
    await page.locator('.open-pot').first().tap()
    await page.clock.runFor(300)
  }
  await opening.hit()
  const { found } = await opening.fired(35)
  await page.clock.fastForward(26 * 3_600_000)
  await first()
  await opening.says('DONE')
  await opening.key('CRAWLED')
  await opening.says('SAVE')
  await first()
  await opening.says('DONE')
  await opening.hit()
  await expect(opening.title).toContainText('Pot 36')
  expect((await opening.fired(35)).found).toEqual(found)
  await first()
  await opening.key('CRAWLED')
  await opening.hit()
  expect((await opening.fired(35)).found).toMatchObject({ at: found?.at, faults: ['crawled'] })
})

test('a guess that is taken back comes back, and what was skipped stays skipped when the page is killed', async ({
  page,
}) => {
  const opening = await OpeningPage.open(page, 'shut')
  await opening.wall(0.6)
  await opening.hit()
  await expect(opening.title).toContainText('Pot 36')
  await opening.press(page.locator('.strip-take-back'))
  await expect(opening.title).toContainText('Pot 35')
  await opening.says('SKIP')
  await opening.hit()
  await expect(opening.title).toContainText('Pot 36')
  await opening.again()
  await expect(opening.title).toContainText('Pot 36')
})

test('pots of an earlier load are judged, and put right, once the next kiln is on', async ({ page }) => {
  const bench = await BenchPage.on(page, [
    ...firedLoad(EVENING.getTime(), 'up'),
    ...nextLoad(EVENING.getTime()),
  ])
  await page.goto('./#/board')
  await page.getByRole('button', { name: 'Judge 8 pots' }).tap()
  await page.clock.runFor(500)
  const opening = new OpeningPage(page, bench)
  await expect(opening.title).toContainText('35')
  await opening.says('GOOD')
  await opening.hit()
  await page.goto('./#/board')
  await expect(page.getByRole('button', { name: 'Judge 7 pots' })).toBeVisible()
  const row = (number: number) => page.locator('.open-fired button', { hasText: `${number}` }).first()
  const toCard = async (number: number, key: string) => {
    await page.goto('./#/fired')
    await row(number).tap()
    await page.clock.runFor(500)
    await page.getByRole('button', { name: key }).tap()
    await page.clock.runFor(500)
  }
  await toCard(31, 'Judge it')
  await opening.says('GOOD')
  await opening.key('CRAWLED')
  await opening.hit()
  await toCard(35, 'Put right, add a photo')
  await opening.says('DONE')
  await opening.key('PINHOLED')
  await opening.says('SAVE')
  await opening.hit()
  expect(await opening.fired(31)).toMatchObject({ found: { faults: ['crawled'] } })
  expect(await opening.fired(35)).toMatchObject({ found: { faults: ['pinholed'] } })
})

test('taps on one spot take one limit, and do not take it off again', async ({ page }) => {
  const play = new Play().act({ do: 'lay-demo' })
  firing(
    play,
    'one',
    ['gatepost', 'brackwater', 'heather'].flatMap((glaze) => [
      { potId: `${glaze}-thin`, coats: [whole(glaze, 2)], run: { is: 'none' } },
      { potId: `${glaze}-thick`, coats: [whole(glaze, 5)], run: { is: 'none' }, faults: ['crawled'] },
    ]),
  )
  await tellTime(page, new Date(play.nowMs))
  await page.goto('./')
  await opened(page)
  await plantRecords(page, recordsOf(play.events), 'other')
  await page.goto('./#/taught')
  await page.reload()
  const use = page
    .locator('.open-lesson')
    .filter({ hasText: 'crawls' })
    .getByRole('button', { name: 'USE IT' })
  await expect(use).toHaveCount(3)
  await use.last().scrollIntoViewIfNeeded()
  const box = await use.last().boundingBox()
  for (let tap = 0; tap < 4; tap++) {
    await page.touchscreen.tap((box?.x ?? 0) + 40, (box?.y ?? 0) + (box?.height ?? 0) * 0.85)
    await page.clock.runFor(600)
  }
  const taken = (await new BenchPage(page).table()).taken ?? []
  expect(taken.map(({ event }) => event.kind)).toEqual(['limit-taken'])
  await expect(use).toHaveCount(2)
  await expect(page.locator('.open-lesson').filter({ hasText: 'You took it.' })).toHaveCount(1)
})
