/** A screen that fails: the clocks and a running count go on, what broke is said, and nothing is lost. */
import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import { BenchPage, fetched } from './bench.ts'

// What is served is changed on its way: no worker may hand out its own copy.
test.use({ serviceWorkers: 'block' })

/** What each screen draws that no other does: a text of its own, or a class; and where it is. */
const SCREENS = {
  first: { drawn: 'first-ways', hash: '#/first' },
  board: { drawn: 'desk board', hash: '#/board' },
  'pots to add': { says: 'Add pots', hash: '#/pot' },
  pot: { says: 'Take it to the bench', hash: '#/pot/demo.33' },
  buckets: { says: 'Buckets', hash: '#/buckets' },
  tile: { says: 'Flow tiles', hash: '#/tile/demo.gatepost' },
  stacks: { says: 'Stacks', hash: '#/stacks' },
  room: { says: 'Room', hash: '#/room' },
  shelf: { drawn: 'kiln-main', hash: '#/shelf' },
  firing: { drawn: 'firing', hash: '#/firing' },
  bench: { drawn: 'top-row', hash: '#/bench' },
  count: { drawn: 'count count-lead-in', hash: '#/bench' },
  card: { says: 'Wax the foot', hash: '#/bench' },
} as const
type Name = keyof typeof SCREENS

/** The app, each of these throwing while `globalThis.broken` names it. */
async function breakable(page: Page): Promise<void> {
  await page.route('**/assets/*.js', async (route) => {
    const response = await route.fetch()
    let code = await response.text()
    for (const [name, screen] of Object.entries(SCREENS)) {
      const fails = `if(globalThis.broken==="${name}")throw new Error("broken ${name}")`
      code =
        'says' in screen
          ? code.replace(
              new RegExp(`\\b(title|toBench):([\`"'])${screen.says}\\2`, 'g'),
              `get $1(){${fails};return"${screen.says}"}`,
            )
          : code.replace(
              new RegExp(`\\bclass:([\`"'])${screen.drawn}\\1`, 'g'),
              `class:(()=>{${fails};return"${screen.drawn}"})()`,
            )
    }
    await route.fulfill({ response, body: code })
  })
}

// What is fetched late may still be on its way.
test.afterEach(({ page }) => page.unrouteAll({ behavior: 'ignoreErrors' }))

const breaks = (page: Page, name: Name | undefined) =>
  page.evaluate((broken) => Object.assign(globalThis, { broken }), name)

async function to(page: Page, hash: string): Promise<void> {
  await page.evaluate((there) => {
    location.hash = there
  }, hash)
  await page.clock.runFor(300)
}

/** Pot 33 with its first coat counted: so many seconds of it gone. */
async function counting(page: Page): Promise<BenchPage> {
  await breakable(page)
  const bench = await BenchPage.only(page, 33)
  await bench.prepare(33)
  await bench.arm(33)
  return bench
}

const title = (page: Page) => page.getByRole('heading', { name: 'Something broke on this page' })

/** Of the screens `npm test` breaks these. */
const SLICE = ['pot', 'bench'] as const
const EVERY = [
  ...SLICE,
  'board',
  'first',
  'pots to add',
  'buckets',
  'tile',
  'stacks',
  'room',
  'shelf',
  'firing',
] as const

for (const name of process.env.PROVE ? EVERY : SLICE)
  test(`an error in ${name} leaves clocks, board and backup`, async ({ page }) => {
    const bench = await counting(page)
    await bench.hit()
    await bench.pass(20)
    await breaks(page, name)
    await to(page, SCREENS[name].hash)
    await fetched(title(page))
    const clock = page.getByText(/33 on .+: out of the bucket/)
    const before = await clock.textContent()
    await page.clock.runFor(5000)
    expect(await clock.textContent()).not.toBe(before)
    for (const key of ['To the bench', 'Back up', 'Try again'])
      await expect(page.getByRole('button', { name: key })).toBeVisible()

    const passed = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save what broke, to pass it on' }).tap()
    expect(await readFile(await (await passed).path(), 'utf8')).toContain(`broken ${name}`)
    const kept = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Back up' }).tap()
    expect(await readFile(await (await kept).path(), 'utf8')).toContain('"kind":"dipped"')

    await breaks(page, undefined)
    await page.getByRole('button', { name: 'To the board' }).tap()
    await page.clock.runFor(300)
    await expect(page.locator('.board')).toBeVisible()
    expect((await bench.table()).pots['demo.33']?.dips).toHaveLength(1)
  })

test('an error in the count leaves the seconds running, and STOP', async ({ page }) => {
  const bench = await counting(page)
  await breaks(page, 'count')
  await bench.hit()
  await fetched(page.locator('.broken-count'))
  const seconds = page.locator('.broken-count strong')
  await page.clock.runFor(6000)
  const before = Number(await seconds.textContent())
  await page.clock.runFor(1000)
  expect(Number(await seconds.textContent())).toBe(before + 1)
  await expect(title(page)).toBeVisible()
  await page.locator('.broken-count').tap()
  await page.clock.runFor(300)
  await expect(page.locator('.broken-count')).toBeHidden()
  await expect(page.getByText(/33 on .+: out of the bucket/)).toBeVisible()
  expect((await bench.table()).pots['demo.33']?.dips[0]?.how).toBe('measured')
})

test('an error in a card leaves its bar, which can be hit', async ({ page }) => {
  await breakable(page)
  const bench = await BenchPage.only(page, 33, 34)
  await expect(page.getByText('Wax the foot')).toBeVisible()
  await breaks(page, 'card')
  await bench.hit()
  await expect(page.getByRole('alert')).toContainText('This part broke. The rest goes on.')
  expect(await bench.label()).toBe('WAXED')
  await breaks(page, undefined)
  await page.clock.runFor(500)
  await page.getByRole('button', { name: 'Try again' }).tap()
  await page.clock.runFor(300)
  await expect(page.getByText('Wax the foot')).toBeVisible()
})
