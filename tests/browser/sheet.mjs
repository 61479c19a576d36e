/** npm run sheet: every screen and state of the built app at 360x640, in both languages, as files and on a page each, to be looked at. */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { chromium } from '@playwright/test'
import { runnerImport } from 'vite'
import { CHROMIUM_ARGS, ensureChromium } from '../tools/chromium.mjs'
import { at, ensureModules, run } from '../tools/project.mjs'
import { serve } from '../tools/static.mjs'

const { values } = parseArgs({
  options: {
    only: { type: 'string' },
    theme: { type: 'string' },
    language: { type: 'string' },
    width: { type: 'string', default: '360' },
    height: { type: 'string', default: '640' },
    large: { type: 'boolean', default: false },
    'as-built': { type: 'boolean', default: false },
  },
})
const size = { width: Number(values.width), height: Number(values.height) }
const themes = [
  { name: 'paper', colorScheme: 'light' },
  { name: 'dim', colorScheme: 'dark' },
].filter(({ name }) => values.theme === undefined || name === values.theme)
const languages = ['en', 'es'].filter((it) => values.language === undefined || it === values.language)

ensureModules()
if (!values['as-built'] && (await run([process.execPath, at('tests/tools/build.mjs')])) !== 0) process.exit(1)
const { module } = await runnerImport(at('tests/browser/moments/index.ts'), { logLevel: 'warn' })
const stories = module.STORIES.filter(({ name }) => values.only === undefined || name === values.only)

const folder = at('.cache/sheet/')
rmSync(folder, { recursive: true, force: true })
mkdirSync(folder, { recursive: true })
const { server, port } = await serve({ root: at('dist') })
const browser = await chromium.launch({ executablePath: ensureChromium(), args: CHROMIUM_ARGS })
const phone = {
  baseURL: `http://localhost:${port}/`,
  viewport: size,
  deviceScaleFactor: 2,
  hasTouch: true,
  isMobile: true,
  timezoneId: 'Europe/London',
}

/** `{ moment, file, tall }` of every moment of every story in one theme and language. */
async function take(theme, colorScheme, language) {
  const shots = []
  for (const story of stories) {
    const context = await browser.newContext({
      ...phone,
      colorScheme,
      locale: language === 'es' ? 'es-MX' : 'en-GB',
    })
    context.setDefaultTimeout(5000)
    const page = await context.newPage()
    // The phone's own setting asks for letters twice as large.
    const settings = await context.newCDPSession(page)
    const enlarge = () =>
      values.large ? settings.send('Page.setFontSizes', { fontSizes: { standard: 32 } }) : undefined
    await enlarge()
    await module.keepSoundInTime(page)
    if (language === 'es') module.speakSpanish(page)
    page.on('pageerror', (error) => console.error(`${story.name}: ${error.message}`))
    const see = async (moment) => {
      const name = `${theme} ${story.name} ${moment}`.replace(/[^\w]+/g, '-')
      const file = `${name}.png`
      await page.screenshot({ path: folder + file })
      shots.push({ moment, file })
      const tall = await page.evaluate(() => document.documentElement.scrollHeight)
      if (tall > size.height + 1) {
        const long = `${name}-all.png`
        await page.screenshot({ path: folder + long, fullPage: true })
        // A picture of a whole page throws that setting away.
        await enlarge()
      }
    }
    try {
      await story.tell(page, see)
    } catch (error) {
      process.exitCode = 1
      console.error(`${story.name}, after "${shots.at(-1)?.moment}": ${error.message}`)
      await see('where it broke').catch(() => {})
    }
    await context.close()
  }
  return shots
}

/** One page of pictures side by side, and the picture of that page. */
async function sheetOf(theme, shots) {
  const pictures = shots.map(({ moment, file }) => {
    const data = readFileSync(folder + file).toString('base64')
    return `<figure><img src="data:image/png;base64,${data}"><figcaption>${moment}</figcaption></figure>`
  })
  const html = `<!doctype html><title>${theme}</title><style>
    body { margin: 16px; background: #bbb; font: 15px sans-serif;
      display: grid; grid-template-columns: repeat(8, 216px); gap: 16px }
    figure { margin: 0 } img { width: 216px; display: block } figcaption { padding-top: 4px }
  </style>${pictures.join('')}`
  writeFileSync(`${folder}${theme}.html`, html)
  const page = await browser.newPage({ viewport: { width: 8 * 232 + 16, height: 800 } })
  await page.setContent(html)
  await page.screenshot({ path: `${folder}${theme}.png`, fullPage: true })
  await page.close()
}

for (const language of languages)
  for (const theme of themes) {
    const name = `${theme.name}-${language}`
    const shots = await take(name, theme.colorScheme, language)
    await sheetOf(name, shots)
    console.log(`${shots.length} moments: .cache/sheet/${name}.png`)
  }
await browser.close()
server.close()
