/**
 * npm run size: what the built app weighs, gzip, figure and budget a row. What comes before the first paint and
 * before the bench takes a tap is taken from the requests of a cold first visit; what a screen fetches of its own is
 * all that its part needs and the bench, with what it fetches after its first card, does not.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { gzipSync } from 'node:zlib'
import { chromium } from '@playwright/test'
import { CHROMIUM_ARGS, ensureChromium } from './chromium.mjs'
import { at, ensureModules, run } from './project.mjs'
import { serve } from './static.mjs'

const SOUND = /\.(mp3|m4a|ogg|opus|wav)$/
const CODE = /\.(html|css|js)$/
const KB = 1000

ensureModules()
if (!existsSync(at('dist/sw.js')) && (await run([process.execPath, at('tests/tools/build.mjs')])) !== 0) {
  process.exit(1)
}

const root = at('dist')
const files = readdirSync(root, { withFileTypes: true, recursive: true })
  .filter((entry) => entry.isFile())
  .map((entry) =>
    relative(root, join(entry.parentPath ?? entry.path, entry.name))
      .split(sep)
      .join('/'),
  )
const gzipBytes = (file) => gzipSync(readFileSync(join(root, file)), { level: 9 }).length
const total = (names) => [...names].reduce((sum, name) => sum + gzipBytes(name), 0)

/** Reports; does not fail the run. Files the page asks for until it has painted, and until the bench takes a tap. */
async function firstVisit() {
  const { server, port } = await serve({ root })
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: CHROMIUM_ARGS })
  try {
    // The worker fetches everything to keep it, which is not what the page needs.
    const context = await browser.newContext({
      viewport: { width: 360, height: 640 },
      serviceWorkers: 'block',
    })
    const page = await context.newPage()
    await page.addInitScript(() => {
      new MutationObserver((_, observer) => {
        if (!document.querySelector('.bench [data-press]')) return
        window.benchMs = performance.now()
        observer.disconnect()
      }).observe(document, { subtree: true, childList: true })
    })
    const askedUntil = (ms) =>
      page.evaluate(
        (until) =>
          performance
            .getEntriesByType('resource')
            .filter((entry) => entry.startTime < until)
            .map((entry) => new URL(entry.name).pathname.slice(1)),
        ms,
      )
    await page.goto(`http://localhost:${port}/`)
    const paintMs = await page.evaluate(
      () =>
        new Promise((resolve) => {
          new PerformanceObserver((list) => {
            const paint = list.getEntriesByName('first-contentful-paint')[0]
            if (paint) resolve(paint.startTime)
          }).observe({ type: 'paint', buffered: true })
        }),
    )
    const kept = (paths) => new Set(['index.html', ...paths].filter((path) => files.includes(path)))
    const paint = kept(await askedUntil(paintMs))
    // The demo is opened on a page of its own.
    await page.getByRole('button', { name: /demo/i }).click()
    await page.locator('.bench [data-press]').first().waitFor()
    return { paint, bench: kept(await askedUntil(await page.evaluate(() => window.benchMs))) }
  } finally {
    await browser.close()
    server.closeAllConnections()
    server.close()
  }
}

/** What the bench fetches by itself as soon as its first card is drawn: a group of `src/vite.config.ts`. */
const isWithBench = (part) => part.startsWith('_faces-')
/** Screens and what else is fetched when it is asked for, each with a limit of its own, kB. */
const OWN_KB = 46

/** Files a part needs to run, style sheets too; `part` is a key of the bundler's list. */
function neededBy(part, parts, found = new Set()) {
  const { file, imports = [], css = [] } = parts[part] ?? {}
  if (file === undefined || found.has(file)) return found
  for (const name of [file, ...css]) found.add(name)
  for (const next of imports) neededBy(next, parts, found)
  return found
}

/** What each part that is fetched late brings of its own: `[name, bytes]`, the heaviest first. */
function ownBytes(parts, withBench) {
  return Object.entries(parts)
    .filter(([, { isDynamicEntry }]) => isDynamicEntry)
    .map(([name]) => [name, total([...neededBy(name, parts)].filter((file) => !withBench.has(file)))])
    .sort(([, a], [, b]) => b - a)
}

const visit = await firstVisit()
const parts = JSON.parse(readFileSync(at('.cache/parts.json'), 'utf8'))
const withBench = new Set([
  ...visit.bench,
  ...Object.keys(parts)
    .filter(isWithBench)
    .flatMap((part) => [...neededBy(part, parts)]),
])
const js = (names) => [...names].filter((name) => name.endsWith('.js') && files.includes(name))
const kept = [
  ...readFileSync(join(root, 'sw.js'), 'utf8').matchAll(/["']?url["']?:\s*["']([^"']+)["']/g),
].map((match) => match[1])

const rows = [
  ['JS to first paint', total(js(visit.paint)), 24],
  ['HTML + CSS + JS until the bench takes a tap', total([...visit.bench].filter((n) => CODE.test(n))), 70],
  ...ownBytes(parts, withBench).map(([name, bytes]) => [`of its own: ${name}`, bytes, OWN_KB]),
  ['kept offline, without sound', total(kept.filter((name) => !SOUND.test(name))), 620],
  ['kept offline, sound alone', total(kept.filter((name) => SOUND.test(name))), null],
  ['service worker', gzipBytes('sw.js'), null],
]
if (process.argv.includes('--files')) {
  for (const file of visit.bench) console.log(`${(gzipBytes(file) / KB).toFixed(1).padStart(7)} kB ${file}`)
}
let over = 0
for (const [name, bytes, budget] of rows) {
  const tooLarge = budget !== null && bytes > budget * KB
  if (tooLarge) over++
  const of = budget === null ? '' : `of ${budget} kB`
  console.log(
    `${name.padEnd(46)} ${(bytes / KB).toFixed(1).padStart(7)} kB ${of.padEnd(10)} ${tooLarge ? 'OVER' : ''}`,
  )
}
console.log(over === 0 ? 'All within budget.' : `${over} over budget.`)
