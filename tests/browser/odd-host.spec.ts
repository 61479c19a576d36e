/** Hosts that put out the right files and say odd things of them: the app opens all the same. */
import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises'
import type { RequestListener, Server, ServerResponse } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { serve } from '../tools/static.mjs'
import { opened } from './bench.ts'
import { deploy } from './deploy.ts'
import { APP_BASE, at } from './places.ts'

// Workers, files and loads of whole versions, on any machine.
test.describe.configure({ timeout: 90_000 })

let folder: string
let server: Server
let url: string
/** What the host does of its own with a file, by its name; true: it has answered. */
let oddly: (name: string, response: ServerResponse) => boolean

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bucketside-dist-'))
  await cp(at('dist'), folder, { recursive: true })
  const served = await serve({ root: folder, base: APP_BASE })
  server = served.server
  url = `http://localhost:${served.port}${APP_BASE}`
  oddly = () => false
  const [usual] = server.listeners('request') as [RequestListener]
  server.removeAllListeners('request')
  server.on('request', (request, response) => {
    if (!oddly((request.url ?? '').slice(APP_BASE.length), response)) usual(request, response)
  })
})
test.afterEach(async () => {
  server.closeAllConnections()
  server.close()
  await rm(folder, { recursive: true, force: true })
})

async function visit(page: Page) {
  await page.goto(url)
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  await opened(page)
}

/** The part with the board in it. */
async function boardPart(): Promise<string> {
  const parts = await readdir(join(folder, 'assets'))
  return `assets/${parts.find((file) => /^board-.+\.js$/.test(file))}`
}

/** The version that was put out is kept, and waits. */
async function taken(page: Page) {
  await page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update()
  })
  await expect
    .poll(
      () => page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting != null),
      { timeout: 20_000 },
    )
    .toBe(true)
}

test('one that sends index.html on to the folder: the app opens again, with and without a network', async ({
  page,
}) => {
  oddly = (name, response) => {
    if (name !== 'index.html') return false
    response.writeHead(308, { location: './' }).end()
    return true
  }
  await visit(page)
  await page.reload()
  await opened(page)
  server.closeAllConnections()
  server.close()
  await page.reload()
  await opened(page)
})

test('one that calls a part plain text for once: that part opens', async ({ page }) => {
  await visit(page)
  const board = await boardPart()
  await deploy(folder, { [board]: `${await readFile(join(folder, board), 'utf8')}//` })
  oddly = (name, response) => {
    if (name === board) response.setHeader('x-odd', 'yes')
    const { writeHead } = response
    response.writeHead = ((status: number, headers: Record<string, string>) =>
      writeHead.call(
        response,
        status,
        name === board ? { ...headers, 'content-type': 'text/plain' } : headers,
      )) as typeof writeHead
    return false
  }
  await taken(page)
  await page.reload().catch(() => {})
  const kept = () =>
    page
      .evaluate(async (file) => {
        const response = await fetch(file)
        return `${response.headers.get('x-odd')} ${response.headers.get('content-type')}`
      }, board)
      .catch(() => '')
  // The new one is in charge, and gives the part out.
  await expect.poll(kept, { timeout: 20_000 }).toBe('yes text/javascript; charset=utf-8')
  await page.goto(`${url}#/board`)
  await expect(page.locator('.board')).toBeVisible({ timeout: 20_000 })
})

test('a part that is broken is said to be, whatever the network does', async ({ page, context }) => {
  await visit(page)
  const board = await boardPart()
  await deploy(folder, { [board]: `throw new Error('a part that never opens')` })
  await taken(page)
  await page.reload().catch(() => {})
  await expect
    .poll(() => page.evaluate(async (file) => (await fetch(file)).text(), board).catch(() => ''), {
      timeout: 20_000,
    })
    .toContain('never opens')
  for (const offline of [false, true]) {
    await context.setOffline(offline)
    await page.goto(`${url}#/board`)
    await page.reload()
    await expect(page.getByText('This part is broken')).toBeVisible({ timeout: 20_000 })
    await expect(page.getByText('there is no network')).toBeHidden()
  }
})
