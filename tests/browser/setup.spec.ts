import { expect, type Page, test } from '@playwright/test'
import axe from 'axe-core'

/** The screens for clean hands, on the built app: setting up from nothing, bad input, sizes. */

const open = async (page: Page, at: string) => {
  await page.goto(`./#/${at}`)
  await expect(page.locator('.desk, .first')).toBeVisible()
}
const demo = async (page: Page) => {
  await open(page, 'first')
  await page.getByRole('button', { name: 'Try the demo evening' }).click()
  await expect(page.locator('.bench')).toBeVisible()
}
const key = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
const option = (page: Page, name: string | RegExp) => page.getByRole('radio', { name })
const fieldOf = (page: Page, label: string) =>
  page.locator('.field').filter({ has: page.getByLabel(label, { exact: true }) })
/** Fills a field and leaves it. */
const type = async (page: Page, label: string, text: string) => {
  const input = page.getByLabel(label, { exact: true })
  await input.fill(text)
  await input.blur()
}
/** Waits until the journal has what was shown, then opens the page anew. */
const again = async (page: Page) => {
  await page.waitForTimeout(150)
  await page.reload()
  await expect(page.locator('.desk, .first, .bench')).toBeVisible()
}

test('an empty board leads from a bucket over a stack to a pot in two taps, and keeps all of it', async ({
  page,
}) => {
  await open(page, 'board')
  await key(page, /Name a bucket/).click()
  await type(page, 'Name of the glaze', 'Fenwater')
  await expect(page.getByLabel('Letter')).toHaveValue('F')
  await key(page, 'Save').click()
  await key(page, /Plan a stack/).click()
  await type(page, 'Name of the stack', 'One coat')
  await key(page, 'Save').click()
  await key(page, /Put pots on the board/).click()
  await option(page, 'jar').click()
  await key(page, /medium/).click()
  await expect(page.getByText('31 on A 1')).toBeVisible()
  await key(page, 'Done').click()
  await expect(key(page, 'Pot 31 at A 1: wax')).toBeVisible()
  await again(page)
  await expect(key(page, 'Pot 31 at A 1: wax')).toBeVisible()
  await open(page, 'stacks')
  await expect(key(page, /One coat.*1 coat, 1 pot/)).toBeVisible()
})

test('six beakers are one entry, and taken back as one', async ({ page }) => {
  await demo(page)
  await open(page, 'pot')
  await option(page, 'beaker').click()
  for (let i = 0; i < 5; i++) await key(page, 'more').click()
  await key(page, /small/).click()
  await expect(page.getByText('39 – 44 on C 1 – D 2')).toBeVisible()
  await key(page, 'Take back').click()
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(8)
})

test('forty unlike pots take at most 120 hits', async ({ page }, info) => {
  await demo(page)
  await open(page, 'pot')
  const forms = ['beaker', 'bowl', 'bottle', 'cup', 'jar', 'plate', 'cylinder']
  const sizes = [/small/, /medium/, /large/]
  let hits = 1
  for (let i = 0; i < 40; i++) {
    await option(page, forms[i % forms.length]!).click()
    await key(page, sizes[i % sizes.length]!).click()
    hits += 2
    await expect(page.getByText(`${39 + i} on `)).toBeVisible()
  }
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(48)
  info.annotations.push({ type: 'hits for 40 pots', description: `${hits}` })
  expect(hits).toBeLessThanOrEqual(120)
})

test('a number, a place and a letter belong to one thing only', async ({ page }) => {
  await demo(page)
  await open(page, 'pot/demo.33')
  await key(page, 'Measures and stack').click()
  await type(page, 'Number', '34')
  await key(page, 'Save').click()
  await expect(fieldOf(page, 'Number').getByRole('alert')).toHaveText('Number 34 is already on the table.')
  await type(page, 'Number', '33')
  await type(page, 'Place', 'b1')
  await key(page, 'Save').click()
  await expect(fieldOf(page, 'Place').getByRole('alert')).toHaveText('Pot 35 stands there.')
  await open(page, 'buckets/demo.heather')
  await type(page, 'Letter', 'g')
  await key(page, 'Save').click()
  await expect(fieldOf(page, 'Letter').getByRole('alert')).toHaveText('Letter G belongs to Gatepost.')
  await again(page)
  await expect(page.getByLabel('Letter')).toHaveValue('H')
})

test('145 for a density asks whether 1.45 was meant, and stores neither by itself', async ({ page }) => {
  await open(page, 'buckets/new')
  await type(page, 'Name of the glaze', 'Fenwater')
  await type(page, 'Target', '145')
  const target = fieldOf(page, 'Target')
  await expect(target.getByRole('alert')).toHaveText('Only 1.05 to 1.9 g/ml.')
  await key(page, 'Save').click()
  await expect(page.getByLabel('Target')).toHaveValue('145')
  await again(page)
  await open(page, 'buckets')
  await expect(page.getByText('No bucket yet.')).toBeVisible()
  await open(page, 'buckets/new')
  await type(page, 'Name of the glaze', 'Fenwater')
  await type(page, 'Target', '145')
  await target.getByRole('button', { name: '1.45?' }).click()
  await key(page, 'Save').click()
  await open(page, 'buckets')
  await expect(key(page, /Fenwater.*target 1.45/)).toBeVisible()
})

const WRONG: readonly (readonly [string, string, string])[] = [
  ['Height', '', 'Fill this in: 10 to 600 mm.'],
  ['Height', 'tall', 'Not a number. 10 to 600 mm.'],
  ['Height', '1.2.3', 'Not a number. 10 to 600 mm.'],
  ['Height', '-95', 'Only 10 to 600 mm.'],
  ['Height', '601', 'Only 10 to 600 mm.'],
  ['Height', '95 kg', 'Not a number. 10 to 600 mm.'],
  ['Wall', '55', 'Only 1 to 30 mm.'],
  ['Number', '33.5', 'A whole number, 1 to 9999.'],
  ['Place', '33', 'A letter and a number, as B 3.'],
  ['Its own absorption', '120', 'Only 0 to 40 %.'],
]

test('each wrong input is refused beside its field, kept as typed, and stores nothing', async ({ page }) => {
  await demo(page)
  await open(page, 'pot/demo.33')
  await key(page, 'Measures and stack').click()
  for (const [label, text, said] of WRONG) {
    const input = page.getByLabel(label, { exact: true })
    const before = await input.inputValue()
    await type(page, label, text)
    await key(page, 'Save').click()
    await expect(fieldOf(page, label).getByRole('alert'), `${label} ${text}`).toHaveText(said)
    await expect(input).toHaveValue(text)
    await expect(input).toHaveAttribute('aria-invalid', 'true')
    await type(page, label, before)
  }
  await again(page)
  await expect(page.getByText('bowl 70 mm high, 150 mm wide')).toBeVisible()
})

test('measures that contradict each other are refused at the one that is wrong', async ({ page }) => {
  await demo(page)
  await open(page, 'pot/demo.31')
  await key(page, 'Measures and stack').click()
  await type(page, 'Foot line up', '59')
  await key(page, 'Save').click()
  await expect(fieldOf(page, 'Foot line up').getByRole('alert')).toHaveText('Only 0 to 47.5 mm.')
})

test('the outline follows the measures while they are typed', async ({ page }) => {
  await demo(page)
  await open(page, 'pot')
  await option(page, 'own measures').click()
  const outline = () => page.locator('.pot-picture path').last().getAttribute('d')
  const pot = () => page.locator('.pot-picture svg > path').first().getAttribute('d')
  const [line, before] = [await outline(), await pot()]
  await page.getByLabel('Height', { exact: true }).fill('60')
  await expect.poll(pot).not.toBe(before)
  await page.getByLabel('Foot line up', { exact: true }).fill('20')
  await expect.poll(outline).not.toBe(line)
  await page.getByLabel('Height', { exact: true }).fill('2,5"')
  await key(page, 'Put it on the board').click()
  await page.getByRole('button', { name: 'Done' }).click()
  await key(page, /Pot 39/).click()
  await expect(page.getByText(/64 mm high/)).toBeVisible()
})

test('a stack shows its build while seconds change, and marks what is over', async ({ page }) => {
  await demo(page)
  await open(page, 'stacks/demo.doorstep')
  const collar = page.locator('.zone').first()
  await expect(collar).toContainText('collar')
  const before = await collar.textContent()
  await key(page, /Heather/)
    .first()
    .click()
  const seconds = page.locator('.coat.is-open').getByLabel('Seconds under')
  await seconds.fill('60')
  await expect(collar).not.toHaveText(before ?? '')
  await expect(page.locator('.zone.alarm').first()).toBeVisible()
  await seconds.fill('61')
  await seconds.blur()
  await expect(page.locator('.coat.is-open').getByText('Only 0 to 60 s.')).toBeVisible()
  await key(page, 'Save').click()
  await expect(page.getByRole('heading', { name: 'Doorstep' })).toBeVisible()
  await again(page)
  await open(page, 'pot/demo.34')
  await expect(page.getByText('collar 30 mm')).toBeVisible()
  await expect(page.locator('.coat-line').nth(1)).toContainText('3 s')
})

test('a thick bucket is told two thirds of its water first', async ({ page }) => {
  await demo(page)
  await open(page, 'buckets/demo.heather')
  await type(page, 'Reading now', '1,53')
  // 13.25 L from 1.53 to 1.48: 13.25 · 0.05 / 0.48 = 1.38 L, two thirds 0.92 L.
  await expect(page.getByText('Add 920 ml of water first, stir, weigh again.')).toBeVisible()
  await key(page, 'Keep reading').click()
  await open(page, 'buckets')
  await expect(key(page, /Heather.*1.53, target 1.48.*too thick/)).toBeVisible()
})

test('a reading that was typed but not kept goes with Save', async ({ page }) => {
  await demo(page)
  await open(page, 'buckets/demo.heather')
  await type(page, 'Reading now', '15')
  await key(page, 'Save').click()
  await expect(fieldOf(page, 'Reading now').getByRole('alert')).toHaveText('Only 1.05 to 1.9 g/ml.')
  await type(page, 'Reading now', '1.50')
  await key(page, 'Save').click()
  await expect(key(page, /Heather.*1.50, target 1.48/)).toBeVisible()
})

test('the room keeps its air and units; what is out of range is refused', async ({ page }) => {
  await open(page, 'room')
  await type(page, 'Temperature', '21')
  await type(page, 'Humidity', '3')
  await expect(fieldOf(page, 'Humidity').getByRole('alert')).toHaveText('Only 5 to 100 %.')
  await type(page, 'Lead-in', '9')
  await expect(fieldOf(page, 'Lead-in').getByRole('alert')).toHaveText('Only 3 to 8 s.')
  await option(page, 'inches, °F, gallons').click()
  await again(page)
  await expect(page.getByLabel('Temperature', { exact: true })).toHaveValue('69.8')
  await expect(page.getByLabel('Humidity', { exact: true })).toHaveValue('50')
  await expect(page.getByLabel('Lead-in', { exact: true })).toHaveValue('4')
})

test('what is no backup is refused and changes nothing', async ({ page }) => {
  await demo(page)
  await open(page, 'room')
  await page
    .getByLabel('Take in a backup')
    .last()
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"pots":[]}') })
  await expect(page.getByRole('alert')).toHaveText('Not a backup of ours. Nothing was changed.')
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(8)
})

test('clearing needs the key held; a short touch says so', async ({ page }) => {
  await demo(page)
  await open(page, 'room')
  await key(page, 'Clear the table: hold').click()
  await expect(key(page, 'Hold it down')).toBeVisible()
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(8)
  await open(page, 'room')
  await key(page, 'Clear the table: hold').click({ delay: 900 })
  await expect(page.getByText('The table is empty.')).toBeVisible()
  await open(page, 'board')
  await expect(page.locator('.tile')).toHaveCount(0)
})

const SCREENS = [
  'board',
  'pot',
  'pot/demo.35',
  'stacks',
  'stacks/demo.tideline',
  'stacks/new',
  'buckets',
  'buckets/demo.heather',
  'room',
]

/** Controls under 48 px, and anything past the edges of the screen. */
const misfits = () => {
  const found: string[] = []
  const say = (what: string, element: Element) =>
    found.push(
      `${what}: ${element.tagName}.${element.getAttribute('class')} ${element.textContent?.slice(0, 24)}`,
    )
  for (const element of document.querySelectorAll('.desk *')) {
    if (element.closest('.visually-hidden') || element.closest('svg')) continue
    const { width, height, left, right } = element.getBoundingClientRect()
    if (width === 0) continue
    if (left < -0.5 || right > innerWidth + 0.5) say('off the screen', element)
    const control = element.matches('button, .field-box, label.switch')
    if (control && (width < 47.5 || height < 47.5)) say('small', element)
    if (
      element.children.length === 0 &&
      element.scrollWidth > element.clientWidth + 1 &&
      element.clientWidth > 0
    )
      if (!element.matches('input')) say('cut', element)
  }
  return found
}

for (const [width, height] of [
  [320, 568],
  [360, 640],
  [390, 844],
] as const)
  test(`nothing is small or cut off at ${width} x ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await demo(page)
    for (const screen of SCREENS) {
      await open(page, screen)
      await page.waitForTimeout(150)
      expect(await page.evaluate(misfits), screen).toEqual([])
    }
  })

test('twelve tiles are seen at once at 360 x 640', async ({ page }) => {
  await demo(page)
  await open(page, 'pot')
  for (let i = 0; i < 4; i++) await key(page, /small/).click()
  await open(page, 'board')
  const tiles = page.locator('.tile')
  await expect(tiles).toHaveCount(12)
  for (const tile of await tiles.all()) {
    const box = await tile.boundingBox()
    expect(box!.width).toBeGreaterThanOrEqual(104)
    expect(box!.height).toBeGreaterThanOrEqual(112)
  }
  const last = await tiles.last().boundingBox()
  const nav = await page.locator('.board-nav').boundingBox()
  expect(last!.y + last!.height).toBeLessThanOrEqual(nav!.y)
})

/** What axe-core finds, with the first place of each. */
async function barriers(page: Page): Promise<string[]> {
  await page.evaluate(axe.source)
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run()
    return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)
  })
}

for (const theme of ['paper', 'dim'])
  test(`no barrier that a machine can find, theme ${theme}`, async ({ page }) => {
    test.setTimeout(120_000)
    await demo(page)
    await open(page, 'room')
    await option(page, theme).click()
    for (const screen of SCREENS) {
      await open(page, screen)
      expect(await barriers(page), screen).toEqual([])
    }
  })
