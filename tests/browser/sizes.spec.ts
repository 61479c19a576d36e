import { expect, type Page, test } from '@playwright/test'
import axe from 'axe-core'
import { misfits } from './desk-page.ts'
import { heightOf, type Measured, measure, pairs, widthOf } from './measure.ts'
import { CAUTIONS, missingCautions } from './moments/cautions.ts'
import { keepSoundInTime, STORIES, type Story, speakSpanish } from './moments/index.ts'

/** Sizes for a wet knuckle and for eyes a metre away, on every card of the bench; barriers on every screen. */

/** Part of the screen's height that the bar takes. */
const BAR_PART = 0.4
/** 45 mm on a phone 360 px wide (0.18 mm a pixel). */
const BAR_PX = 250
/** 19 mm on such a phone: a key for a mitten (MIL-STD-1472E). */
const CORNER = { width: 112, height: 108 }
/** Dead space between what a wet hand hits. */
const GAP_PX = 24
/** Tiles of a grid, each large enough to be hit by itself. */
const TILE_GAP_PX = 8
/** 25 mm, read at a metre and a half. */
const COUNT_PX = 150
/** 10 minutes of arc at a metre and a half, and a row that a knuckle hits. */
const ROW = { number: 25, high: 56 }
/** More than 20 minutes of arc at a metre; that much where the two corners leave less room. */
const NAME_PX = { wide: 36, small: 34 }
/** What fills the left half. */
const POT_PX = 160

/** What is too small, too near or cut off at a moment, in words. */
function faults(seen: Measured): string[] {
  const found = [...seen.hidden]
  const want = (right: boolean, what: string) => right || found.push(what)
  want(seen.scrollX <= 0, `scrolls ${seen.scrollX} px sideways`)
  if (seen.bar) {
    const high = heightOf(seen.bar)
    want(high >= seen.height * BAR_PART - 0.5, `the bar takes ${high} of ${seen.height} px`)
    want(seen.width < 360 || high >= BAR_PX, `the bar is ${high} px high`)
    want(seen.bar.bottom === seen.height, `the bar ends at ${seen.bar.bottom} px`)
  }
  for (const corner of seen.corners) {
    const [width, height] = [widthOf(corner), heightOf(corner)]
    want(width >= CORNER.width && height >= CORNER.height, `${corner.name} is ${width} by ${height} px`)
  }
  for (const { between, gap } of pairs(seen.targets)) want(gap >= GAP_PX, `${between}: ${gap} px apart`)
  for (const { between, gap } of pairs(seen.tiles))
    want(gap >= TILE_GAP_PX - 0.1, `${between}: ${gap} px apart`)
  if (seen.countPx !== undefined) want(seen.countPx >= COUNT_PX, `the seconds are ${seen.countPx} px high`)
  const { numberPx, placePx, glazePx, dosePx, inPx, pot } = seen
  if (numberPx !== undefined && placePx !== undefined) {
    const least = seen.width < 360 ? NAME_PX.small : NAME_PX.wide
    want(numberPx >= least && placePx === numberPx, `number and place are ${numberPx} and ${placePx} px high`)
  }
  if (glazePx !== undefined && dosePx !== undefined)
    want(glazePx >= dosePx, `the glaze is ${glazePx} px high, its seconds ${dosePx}`)
  if (inPx !== undefined) want(inPx >= COUNT_PX, `IN is ${inPx} px high`)
  for (const row of seen.rows)
    want(heightOf(row) >= ROW.high, `a row of what waits is ${heightOf(row)} px high`)
  if (seen.rowPx !== undefined) want(seen.rowPx >= ROW.number, `its number is ${seen.rowPx} px high`)
  if (pot) {
    want(widthOf(pot) >= Math.min(POT_PX, seen.width * 0.4), `the pot is drawn ${widthOf(pot)} px wide`)
    want(!seen.bar || Math.abs(seen.bar.top - pot.bottom) <= 8, `the pot ends at ${pot.bottom} px`)
  }
  return found
}

/** Tells a story and gathers what `look` finds at its moments, the moment named before it. */
async function gather(page: Page, story: Story, look: (moment: string) => Promise<readonly string[]>) {
  const found: string[] = []
  const seen: string[] = []
  await keepSoundInTime(page)
  await story.tell(page, async (moment) => {
    seen.push(moment)
    for (const fault of await look(moment)) found.push(`${moment}: ${fault}`)
  })
  expect(seen.length).toBeGreaterThan(0)
  return found
}

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** Time that axe-core is given a step: its own pauses run on the clock that stands still. */
const AXE_STEP_MS = 10

/** What axe-core finds, text below 7:1 included, with the first place of each. */
async function barriers(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source)
  await page.evaluate((tags) => {
    const running = (globalThis as unknown as { axe: typeof axe }).axe.run({
      runOnly: { type: 'tag', values: tags },
      rules: { 'color-contrast': { enabled: false }, 'color-contrast-enhanced': { enabled: true } },
    })
    running.then(({ violations }) => {
      window.barriers = violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)
    })
  }, TAGS)
  for (;;) {
    await page.clock.runFor(AXE_STEP_MS)
    const found = await page.evaluate(() => {
      const { barriers } = window
      if (barriers) window.barriers = undefined
      return barriers
    })
    if (found) return found
  }
}

declare global {
  interface Window {
    barriers?: string[] | undefined
  }
}

const sizes = async (page: Page) => faults(await measure(page))

/** Cautions that are not to be read at a moment that wants them. */
const withoutCaution = async (page: Page, { name }: Story, moment: string) =>
  missingCautions(name, moment, (await page.locator('body').allInnerTexts()).join())

/** The screens for clean hands have tests of their own: of those `npm test` looks at the first visit, the kiln and the opening here. */
const inSlice = ({ hands, name }: Story) =>
  process.env.PROVE ||
  (hands === 'bench' && !SHOWN_ELSEWHERE.includes(name)) ||
  name === 'first visit' ||
  name === 'the kiln' ||
  name === 'the opening'
/** Much of what these show the others show too. */
const SHOWN_ELSEWHERE = ['many pots', 'order of work', 'hands free', 'touch first', 'slips']

/** Of these `npm test` looks for barriers; the dim theme has its own. */
const isFree = ({ name }: Story) => process.env.PROVE || ['first visit', 'one pot'].includes(name)

for (const story of STORIES.filter(inSlice))
  test(`360 by 640, no barriers, cautions: ${story.name}`, async ({ page }) => {
    test.setTimeout(120_000)
    const told: string[] = []
    const look = async (moment: string) => {
      told.push(moment)
      return [
        ...(story.hands === 'bench' ? await sizes(page) : await page.evaluate(misfits)),
        ...(await withoutCaution(page, story, moment)),
        ...(isFree(story) ? await barriers(page) : []),
      ]
    }
    expect(await gather(page, story, look)).toEqual([])
    expect(told).toEqual(expect.arrayContaining(Object.keys(CAUTIONS[story.name] ?? {})))
  })

/** Screens on which everything is looked for once more, and what is wrong there; on tall phones letters are larger. */
interface Shape {
  readonly width: number
  readonly height: number
  /** The phone's own setting asks for letters twice as large: pages grow, the bench does as far as it has room. */
  readonly large?: true
  readonly look: (page: Page, hands: Story['hands']) => Promise<readonly string[]>
}

const usual: Shape['look'] = (page, hands) => (hands === 'bench' ? sizes(page) : page.evaluate(misfits))

/** The innermost that reach past the phone's edge. */
const widest = (page: Page) =>
  page.evaluate((width) => {
    const wide = (of: Element) => of.getBoundingClientRect().right > width + 0.5
    const all = [...document.querySelectorAll('#app *')].filter(
      (of) => wide(of) && ![...of.children].some(wide),
    )
    return all
      .map((of) => `${of.tagName}.${of.getAttribute('class')} ${of.textContent?.slice(0, 20)}`)
      .join(', ')
  }, page.viewportSize()?.width ?? 0)

/** All of it can be read, and no page is too wide for the phone: such a one is laid out on a wider one. */
const legible: Shape['look'] = async (page) => {
  const { hidden, scrollX, width } = await measure(page)
  const over = scrollX + width - (page.viewportSize()?.width ?? width)
  return over > 0 ? [...hidden, `is ${over} px too wide by ${await widest(page)}`] : hidden
}

/** A phone on its side: nothing lies on anything else, and the bar stands beside the words. */
const sideways: Shape['look'] = async (page, hands) => {
  if (hands !== 'bench') return page.evaluate(misfits)
  const { hidden, bar, height } = await measure(page)
  return bar && heightOf(bar) < height ? [...hidden, `the bar is ${heightOf(bar)} px high`] : hidden
}

const SHAPES = {
  '360 by 640': { width: 360, height: 640, look: usual },
  '320 by 568': { width: 320, height: 568, look: usual },
  '390 by 844': { width: 390, height: 844, look: usual },
  '360 by 780': { width: 360, height: 780, look: usual },
  'on its side': { width: 640, height: 360, look: sideways },
  'letters twice as large': { width: 360, height: 640, large: true, look: legible },
} satisfies Record<string, Shape>

/** Every story is told on every shape in both languages by `npm run prove`; by `npm test` these. Spanish has more letters. */
const SHAPE_SLICES: Readonly<Record<'en' | 'es', Partial<Record<keyof typeof SHAPES, readonly string[]>>>> = {
  en: {
    '320 by 568': ['many pots', 'two potters', 'calls'],
    'on its side': ['one pot'],
    'letters twice as large': ['first visit'],
  },
  es: {
    '320 by 568': ['one pot', 'two potters'],
    'on its side': ['late'],
    'letters twice as large': ['many pots'],
  },
}

for (const language of ['en', 'es'] as const)
  test.describe(language, () => {
    test.use({ locale: language === 'es' ? 'es-MX' : 'en-GB' })
    for (const [name, shape] of Object.entries(SHAPES) as [keyof typeof SHAPES, Shape][])
      for (const story of STORIES) {
        const isFirst = language === 'en' && name === '360 by 640'
        const inSlice = SHAPE_SLICES[language][name]?.includes(story.name)
        if (isFirst || !(process.env.PROVE || inSlice)) continue
        test(`${name}: ${story.name}`, async ({ page }) => {
          test.setTimeout(120_000)
          if (language === 'es') speakSpanish(page)
          await page.setViewportSize({ width: shape.width, height: shape.height })
          if (shape.large) {
            const session = await page.context().newCDPSession(page)
            await session.send('Page.setFontSizes', { fontSizes: { standard: 32 } })
          }
          const look = async (moment: string) => [
            ...(await shape.look(page, story.hands)),
            ...(language === 'en' ? await withoutCaution(page, story, moment) : []),
          ]
          expect(await gather(page, story, look)).toEqual([])
        })
      }
  })

/** Of the Spanish and of the dim theme `npm test` looks at these, `npm run prove` at all. */
const BARRIER_SLICES = [
  { locale: 'en-GB', colorScheme: 'dark', stories: ['first visit'] },
  { locale: 'es-MX', colorScheme: 'light', stories: ['first visit'] },
  { locale: 'es-MX', colorScheme: 'dark', stories: ['late'] },
] as const

for (const { locale, colorScheme, stories } of BARRIER_SLICES)
  test.describe(`${locale}, ${colorScheme}`, () => {
    test.use({ locale, colorScheme })
    const inSlice = ({ name }: Story) => process.env.PROVE || stories.some((it) => it === name)
    for (const story of STORIES.filter(inSlice))
      test(`no barriers: ${story.name}`, async ({ page }) => {
        test.setTimeout(120_000)
        if (locale === 'es-MX') speakSpanish(page)
        expect(await gather(page, story, () => barriers(page))).toEqual([])
      })
  })
