/** Versions that a host may put out by mistake: none of them keeps the app from opening. */
import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import type { Server } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { serve } from '../tools/static.mjs'
import { opened } from './bench.ts'
import { deploy } from './deploy.ts'
import { APP_BASE, at, LONG } from './places.ts'

// Workers, files and loads of whole versions, on any machine.
test.describe.configure({ timeout: 90_000 })

let folder: string
let server: Server
let url: string
/** The part the page begins with. */
let main: string
/** The part with the bench in it. */
let bench: string

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bucketside-dist-'))
  await cp(at('dist'), folder, { recursive: true })
  const served = await serve({ root: folder, base: APP_BASE })
  server = served.server
  url = `http://localhost:${served.port}${APP_BASE}`
  const parts = await readdir(join(folder, 'assets'))
  const part = (name: RegExp) => `assets/${parts.find((file) => name.test(file))}`
  main = (await read('index.html')).match(/src="\.\/(assets\/[^"]+\.js)"/)?.[1] ?? ''
  bench = part(/^bench-.+\.js$/)
})
test.afterEach(async () => {
  server.closeAllConnections()
  server.close()
  await rm(folder, { recursive: true, force: true })
})

const read = (name: string) => readFile(join(folder, name), 'utf8')

async function visit(page: Page) {
  await page.goto(url)
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  await opened(page)
}

/** Looks for a new version; resolves when it is kept, or given up. */
const look = (page: Page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration()
    await registration?.update().catch(() => {})
    for (let i = 0; i < 100 && registration?.installing; i++)
      await new Promise((done) => setTimeout(done, 50))
    return registration?.waiting != null
  })

const ERROR_PAGE = '<!doctype html><title>502 Bad Gateway</title>'

test('broken versions are not taken, and the next good one is', async ({ page }) => {
  await visit(page)
  const good = { main: await read(main), bench: await read(bench), page: await read('index.html') }
  const worker = await read('sw.js')
  const next = `${good.page}<!-- next -->`
  const breaks: readonly (() => Promise<void>)[] = [
    () => deploy(folder, { 'index.html': ERROR_PAGE }, { 'index.html': next }),
    () => deploy(folder, { 'index.html': '' }, { 'index.html': next }),
    () => deploy(folder, { [main]: ERROR_PAGE }, { [main]: `${good.main}//` }),
    () => deploy(folder, { [main]: '' }, { [main]: `${good.main}//` }),
    () =>
      deploy(folder, { [bench]: good.bench.slice(0, good.bench.length / 2) }, { [bench]: `${good.bench}//` }),
    async () => {
      await deploy(folder, {}, { [bench]: `${good.bench}//` })
      await rm(join(folder, bench))
    },
    async () => {
      await deploy(folder, { 'index.html': next })
      await rm(join(folder, 'index.html'))
    },
    () => writeFile(join(folder, 'sw.js'), ERROR_PAGE),
    () => writeFile(join(folder, 'sw.js'), worker.slice(0, worker.length / 2)),
    () => rm(join(folder, 'sw.js')),
  ]
  for (const [index, breaking] of breaks.entries()) {
    // All of them in the long proof.
    if (!process.env.PROVE && index % 3 !== 0) continue
    await breaking()
    expect(await look(page), `version ${index}`).toBe(false)
    await page.reload()
    await opened(page)
    await writeFile(join(folder, main), good.main)
    await writeFile(join(folder, bench), good.bench)
    await writeFile(join(folder, 'index.html'), good.page)
    await writeFile(join(folder, 'sw.js'), worker)
  }
  await deploy(folder, { 'index.html': good.page.replace('<html', '<html data-version="good"') })
  // The page's own look may be under way, and has seen the version before: one look joins another.
  await expect.poll(() => look(page), { timeout: 20_000 }).toBe(true)
  await page.reload().catch(() => {})
  await expect
    .poll(() => page.evaluate(() => document.documentElement.dataset.version).catch(() => ''))
    .toBe('good')
})

test('a version that does not start twice gives way to the one before, and that is said', async ({
  page,
}) => {
  await visit(page)
  // The first start of this version: it works.
  await page.reload()
  await opened(page)
  const html = await read('index.html')
  const bad = 'assets/first-bad0bad0.js'
  await deploy(folder, {
    [bad]: `throw new Error('a version that never starts')`,
    'index.html': html.replace('<html', '<html data-version="bad"').replace(main, bad),
  })
  expect(await look(page)).toBe(true)
  // It may be cut off by the page's own, as the old page takes the new version on.
  await page.reload().catch(() => {})
  const version = () =>
    page.evaluate(() => document.documentElement.dataset.version ?? 'good').catch(() => '')
  await expect.poll(version).toBe('bad')
  for (let start = 0; start < 2; start++) {
    await page.waitForTimeout(1100)
    await page.reload()
  }
  await opened(page)
  expect(await version()).toBe('good')
  await expect(page.getByText('The new version did not start')).toBeVisible({ timeout: 15_000 })

  await deploy(folder, { 'index.html': html.replace('<html', '<html data-version="mended"') })
  expect(await look(page)).toBe(true)
  await page.reload().catch(() => {})
  await expect.poll(version).toBe('mended')
  await expect(page.getByText('The new version did not start')).toBeHidden()
})

test(
  'files that the browser let go of are fetched again, and until then it is not called ready',
  LONG,
  async ({ page, context }) => {
    await visit(page)
    await page.goto(`${url}#/room`)
    await expect(page.getByText('Ready without a network.')).toBeVisible({ timeout: 15_000 })
    const kept = () =>
      page.evaluate(async () => {
        const [name] = (await caches.keys()).filter((key) => key.includes('files'))
        return name ? (await (await caches.open(name)).keys()).length : 0
      })
    const all = await kept()
    await page.evaluate(async () => {
      for (const name of await caches.keys()) {
        const cache = await caches.open(name)
        for (const request of (await cache.keys()).slice(5)) await cache.delete(request)
      }
    })
    expect(await kept()).toBeLessThan(all)
    await page.reload()
    await expect.poll(kept, { timeout: 20_000 }).toBe(all)
    await expect(page.getByText('Ready without a network.')).toBeVisible()
    expect(context.serviceWorkers()).toHaveLength(1)
  },
)
