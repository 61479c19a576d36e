import { expect, type Locator, type Page, test } from '@playwright/test'
import { twelve } from '../fixtures/twelve.ts'
import { BenchPage, fetched } from './bench.ts'
import { again, demo, key, misfits, more, open, option } from './desk-page.ts'
import { speakSpanish } from './tongue.ts'

/** Setting up from nothing, on the built app, as a stranger would: every tap and every keystroke is counted. */

const MOST_TAPS = 30
const MOST_STROKES = 30

class Hands {
  taps = 0
  strokes = 0
  private readonly page: Page
  constructor(page: Page) {
    this.page = page
  }
  async tap(target: Locator): Promise<void> {
    await target.tap()
    this.taps++
  }
  /** Into a field, after a tap on it: what stands there is typed over. A phone may give it no keyboard before. */
  async type(label: string, text: string): Promise<void> {
    const field = this.page.getByLabel(label, { exact: true })
    await this.tap(field)
    for (const _ of await field.inputValue()) await this.stroke('Backspace')
    for (const letter of text) await this.stroke(letter)
    await expect(field).toHaveValue(text)
  }
  private async stroke(of: string): Promise<void> {
    await this.page.keyboard.press(of)
    this.strokes++
  }
}

test('six own pots, two stacks and three buckets from the first visit', async ({ page }, info) => {
  const hands = new Hands(page)
  await page.goto('./')
  await hands.tap(key(page, 'My own pots'))
  await hands.tap(key(page, /Name your buckets/))
  await expect(page.getByLabel('Name of the glaze')).toBeFocused()
  for (const name of ['Ashlar', 'Fennel']) {
    await hands.type('Name of the glaze', name)
    await hands.tap(key(page, 'Save, one more'))
    await expect(page.getByText(`${name} is saved.`)).toBeVisible()
  }
  await hands.type('Name of the glaze', 'Quarry')
  await hands.tap(key(page, /^Save$/))
  await hands.tap(key(page, /Put pots on the board/))
  // What is missing is said, and nothing is stored.
  await key(page, /small/).tap()
  await expect(page.getByRole('alert')).toHaveText('Tap the bucket of the first coat.')

  await hands.type('Next number', '7')
  await hands.tap(key(page, 'Ashlar'))
  await expect(page.getByRole('alert')).toHaveCount(0)
  await hands.tap(key(page, 'Fennel'))
  for (const [form, size] of [
    ['cup', /small/],
    ['jar', /medium/],
    ['plate', /large/],
  ] as const) {
    await hands.tap(option(page, form))
    await hands.tap(key(page, size))
  }
  await hands.tap(key(page, 'Coats: Cup'))
  await hands.tap(key(page, 'Other coats'))
  await hands.tap(key(page, 'Quarry'))
  await hands.tap(option(page, 'bowl'))
  await hands.tap(key(page, 'more'))
  await hands.tap(key(page, /small/))
  await expect(page.getByText('10 – 11 on A 4 – B 1')).toBeVisible()
  await hands.tap(key(page, /large/))
  await hands.tap(key(page, 'Done'))
  await expect(key(page, 'Pot 12 at B 2: wax')).toBeVisible()
  info.annotations.push({
    type: 'first sitting',
    description: `${hands.taps} taps, ${hands.strokes} strokes`,
  })

  await again(page)
  await expect(page.locator('.tile')).toHaveCount(6)
  await expect(key(page, 'Pot 7 at A 1: wax')).toBeVisible()
  await open(page, 'stacks')
  await expect(key(page, /Cup.*2 coats, 3 pots/)).toBeVisible()
  await expect(key(page, /Bowl.*1 coat, 3 pots/)).toBeVisible()
  await open(page, 'buckets')
  await expect(page.locator('.row')).toHaveCount(3)
  expect(hands.taps).toBeLessThanOrEqual(MOST_TAPS)
  expect(hands.strokes).toBeLessThanOrEqual(MOST_STROKES)
})

test('saving leads to where one was going', async ({ page }) => {
  await open(page, 'pot')
  await key(page, 'Name a bucket').click()
  await page.getByLabel('Name of the glaze').fill('Ashlar')
  await key(page, /^Save$/).click()
  // The one bucket there is was taken for the first coat.
  await expect(key(page, 'Ashlar, coat 1')).toBeVisible()
  await key(page, /medium/).click()
  await expect(page.getByText('31 on A 1')).toBeVisible()
  // Numbers go on where what is taken back began.
  await page.getByLabel('Next number').fill('50')
  await key(page, /medium/).click()
  await expect(page.getByText('next: 51 at A 3')).toBeVisible()
  await key(page, 'Take back').click()
  await expect(page.getByText('next: 50 at A 2')).toBeVisible()
})

/** A phone with a voice of its own; what it is given to say is written down. */
const speaking = (page: Page) =>
  page.addInitScript(() => {
    const said: string[] = []
    const voices = ['en-GB', 'es-MX'].map((lang) => ({ lang, localService: true }))
    class Utterance {
      voice = null
      lang = ''
      readonly text: string
      constructor(text: string) {
        this.text = text
      }
    }
    const speak = ({ text, lang }: Utterance) => said.push(`${lang} ${text}`)
    Object.assign(window, { SpeechSynthesisUtterance: Utterance, said })
    Object.defineProperty(window, 'speechSynthesis', {
      value: { getVoices: () => voices, speak, cancel: () => {} },
    })
  })
const saidBy = (page: Page) => page.evaluate(() => (window as unknown as { said: string[] }).said)

/** Passes until the line on the bar was said, by a voice of this language. */
async function saysHint(page: Page, lang: string): Promise<string> {
  const line = `${lang} ${await page.locator('.bar-hint').textContent()}`
  for (let i = 0; i < 40 && !(await saidBy(page)).includes(line); i++) {
    await page.clock.runFor(500)
    await page.waitForTimeout(100)
  }
  expect(await saidBy(page)).toContain(line)
  return line
}

test('how a new card is answered is said once, in the words on the bar, and not into a count', async ({
  page,
}) => {
  await speaking(page)
  const bench = await BenchPage.on(page, twelve(['GB'], 2))
  await bench.pass(400)
  await bench.arm(1)
  const line = await saysHint(page, 'en-GB')
  expect(line).toContain('follow the beats')
  const before = await saidBy(page)
  await bench.hit()
  await page.clock.runFor(7000)
  expect(await saidBy(page)).toEqual(before)
  await page.clock.runFor(20_000)
  await page.waitForTimeout(300)
  expect((await saidBy(page)).filter((one) => one === line)).toHaveLength(1)
})

test.describe('Spanish', () => {
  test.use({ locale: 'es-MX' })
  test('it is said in Spanish by a Spanish voice', async ({ page }) => {
    await speaking(page)
    speakSpanish(page)
    await BenchPage.demo(page)
    await fetched(page.locator('.bar-hint'))
    expect(await saysHint(page, 'es-MX')).toContain('¿Pie encerado?')
  })
})

test('each kind of card says how it is answered until it was, on this phone', async ({ page }) => {
  const bench = await BenchPage.on(page, twelve(['GB'], 2))
  const hint = page.locator('.bar-hint')
  await bench.pass(400)
  await bench.arm(1)
  await expect(hint).toHaveText('Pot in your hand? Hit here, follow the beats.')
  // A pause is no answer.
  await page.clock.runFor(450)
  await page.locator('.corner-hold').tap()
  await page.clock.runFor(500)
  await expect(hint).toHaveText('Back at the table? Hit here.')
  await bench.hit()
  await expect(hint).toHaveText('Pot in your hand? Hit here, follow the beats.')
  await bench.hit()
  await page.clock.runFor(9000)
  await bench.pass(24)
  await expect(bench.bar).toContainText('START')
  await expect(hint).toHaveCount(0)
  await page.reload()
  await page.clock.runFor(3000)
  await expect(bench.bar).toContainText('START')
  await page.clock.runFor(3000)
  await expect(hint).toHaveCount(0)
})

test('the help has a page a stage with its caution, reached from the room and from the bench', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 568 })
  await open(page, 'room')
  await key(page, 'Help').click()
  const stages = page.locator('.help-page > .key')
  await expect(stages).toHaveCount(8)
  for (let i = 0; i < 8; i++) {
    await stages.nth(i).click()
    await expect(page.locator('.help-page .caution')).toBeVisible()
    expect(await page.evaluate(misfits)).toEqual([])
    await key(page, 'Back').click()
  }
  await demo(page)
  for (const on of ['Put right', 'More', 'Help']) {
    // Longer than a hit on a fresh screen is taken for a slip.
    await page.waitForTimeout(600)
    await key(page, on).tap()
  }
  await expect(page.getByRole('heading', { name: 'Waxing and wiping' })).toBeVisible()
  await key(page, 'Bench').click()
  await expect(page.locator('.bench')).toBeVisible()
})

test('every sound can be heard with its meaning: the tones of a dip, and the call of each bucket', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const lasts: number[] = []
    Object.assign(window, { lasts })
    const start = AudioBufferSourceNode.prototype.start
    AudioBufferSourceNode.prototype.start = function (...when) {
      if (this.buffer && this.buffer.duration > 0.01) lasts.push(this.buffer.duration)
      return start.apply(this, when)
    }
  })
  await demo(page)
  await open(page, 'room/count')
  await more(page, 'Hear every sound')
  const keys = page.locator('.sounds > button')
  await expect(keys).toHaveCount(9 + 3)
  const heard = (): Promise<number[]> => page.evaluate('lasts.splice(0)')
  await keys.first().click()
  await expect.poll(async () => (await heard()).length).toBeGreaterThan(0)
  for (let i = 0; i < 12; i++) {
    await keys.nth(i).click()
    const sounds: number[] = []
    await expect.poll(async () => sounds.push(...(await heard()))).toBeGreaterThan(0)
    // OUT lasts three seconds; a call is two notes, twice.
    if (i === 5) expect(Math.max(...sounds)).toBeCloseTo(3, 1)
    if (i > 8) expect(sounds.length).toBe(4)
  }
  expect(await page.evaluate(misfits)).toEqual([])
})
