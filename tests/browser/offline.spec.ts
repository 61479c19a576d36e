import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, expect, test } from '@playwright/test'
import { BenchPage, opened } from './bench.ts'
import { type OwnServer, ownServer } from './own-server.ts'
import { at } from './places.ts'

/** Anywhere below a host, as a static host may give it. */
const BASE = '/clay/room/tools/'

let folder: string
let server: OwnServer
let context: BrowserContext | undefined

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bucketside-offline-'))
  server = await ownServer(BASE)
})
test.afterEach(async () => {
  await context?.close()
  await server.stop()
  await rm(folder, { recursive: true, force: true, maxRetries: 5 })
})

/** The phone with what it keeps in `folder`; every address that anything on it asks for goes into `asked`. */
async function phone(asked: Set<string>): Promise<BrowserContext> {
  const { launchOptions, ...use } = test.info().project.use
  const opened = await chromium.launchPersistentContext(folder, {
    ...launchOptions,
    viewport: use.viewport ?? null,
    hasTouch: true,
    isMobile: true,
    locale: use.locale ?? 'en-GB',
    timezoneId: use.timezoneId ?? 'UTC',
    baseURL: server.url,
  })
  opened.on('request', (request) => asked.add(request.url()))
  return opened
}

test('main path with the network cut and the server stopped before the page is opened', async () => {
  test.setTimeout(90_000)
  const asked = new Set<string>()
  context = await phone(asked)
  const visit = await context.newPage()
  await visit.goto('./')
  await opened(visit)
  await visit.goto('./#/room/phone')
  await expect(visit.getByText('Ready without a network.')).toBeVisible({ timeout: 20_000 })
  await context.close()

  await server.stop()
  await expect(fetch(server.url)).rejects.toThrow()
  context = await phone(asked)
  await context.setOffline(true)
  const page = await context.newPage()
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.message))
  const bench = await BenchPage.demo(page)
  await bench.prepare(33)
  await bench.arm(33)
  await bench.hit()
  await expect(page.locator('.count-lead-in')).toContainText('33 Gatepost')
  await page.clock.runFor(4300)
  await expect(page.locator('.count-hold')).toContainText('IN')
  await page.clock.runFor(4500)
  await expect(page.locator('.count-out')).toContainText('OUT')
  await page.clock.runFor(13_500)
  await expect(bench.face).toContainText('Sponge the foot')
  expect((await bench.pot(33)).dips).toEqual([
    expect.objectContaining({ coat: 0, holdS: 4, how: 'planned', unstirred: false }),
  ])
  for (const screen of [
    'board',
    'pot',
    'pot/demo.33',
    'buckets',
    'stacks',
    'stacks/demo.tideline',
    'room',
    'room/keep',
    'shelf',
  ]) {
    await page.goto(`./#/${screen}`)
    await page.clock.runFor(300)
    await expect(page.getByRole('heading').first()).toBeVisible()
  }
  await page.reload()
  await page.goto('./#/bench')
  await page.clock.runFor(300)
  await expect(bench.bar).toBeVisible()
  expect(errors).toEqual([])

  const { origin } = new URL(server.url)
  const elsewhere = [...asked].filter((url) => !url.startsWith(origin) && !/^(blob|data):/.test(url))
  expect(elsewhere).toEqual([])
  // Below its own path, too: a host may hold other things beside it.
  expect([...asked].filter((url) => url.startsWith('http') && !url.startsWith(server.url))).toEqual([])
  // What asks elsewhere is heard, though nothing comes of it.
  const other = await context.newPage()
  await other.evaluate(() => fetch('http://elsewhere.invalid/').catch(() => undefined))
  expect([...asked].filter((url) => !url.startsWith(origin))).toContain('http://elsewhere.invalid/')
})

interface Manifest {
  readonly name: string
  readonly short_name: string
  readonly start_url: string
  readonly scope: string
  readonly display: string
  readonly icons: readonly {
    readonly src: string
    readonly sizes: string
    readonly type: string
    readonly purpose?: string
  }[]
}

/** Width and height of a PNG (W3C Portable Network Graphics, the IHDR chunk). */
const pngSize = (bytes: Buffer) => ({ width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) })
const PNG_SIGNATURE = '89504e470d0a1a0a'

test('installable from a sub-path: the browser finds nothing missing, icons are what the manifest says', async () => {
  context = await phone(new Set())
  const page = await context.newPage()
  await page.goto('./')
  await page.evaluate(() => navigator.serviceWorker.ready)
  const protocol = await context.newCDPSession(page)
  const { url, errors, data } = await protocol.send('Page.getAppManifest')
  expect(errors).toEqual([])
  expect(url).toBe(`${server.url}manifest.webmanifest`)
  const { installabilityErrors } = await protocol.send('Page.getInstallabilityErrors')
  // A profile of a test is taken for a private window.
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([])

  const manifest = JSON.parse(data ?? '') as Manifest
  expect(manifest.display).toBe('standalone')
  expect(manifest.short_name.length).toBeLessThanOrEqual(12)
  expect(new URL(manifest.start_url, url).href).toBe(server.url)
  expect(new URL(manifest.scope, url).href).toBe(server.url)
  for (const { src, sizes, type } of manifest.icons) {
    const answer = await fetch(new URL(src, url))
    expect(answer.ok, src).toBe(true)
    expect(answer.headers.get('content-type')).toBe(type)
    if (type !== 'image/png') continue
    const bytes = Buffer.from(await answer.arrayBuffer())
    expect(bytes.subarray(0, 8).toString('hex')).toBe(PNG_SIGNATURE)
    const { width, height } = pngSize(bytes)
    expect(`${width}x${height}`).toBe(sizes)
  }
  const plain = manifest.icons.filter(({ purpose }) => purpose === undefined).map(({ sizes }) => sizes)
  expect(plain).toEqual(expect.arrayContaining(['192x192', '512x512']))
  expect(manifest.icons.some(({ purpose }) => purpose === 'maskable')).toBe(true)
  const touchIcon = await readFile(at('dist/icon-180.png'))
  expect(pngSize(touchIcon)).toEqual({ width: 180, height: 180 })
})
