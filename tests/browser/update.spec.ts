import { cp, mkdtemp, readFile, rm } from 'node:fs/promises'
import type { Server } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { armed, recordsOf } from '../fixtures/season.ts'
import { serve } from '../tools/static.mjs'
import { plantRecords } from './bench.ts'
import { deploy } from './deploy.ts'
import { APP_BASE, at, LONG } from './places.ts'

/** The built app in a folder of its own, of which a newer version can be put out. */
let folder: string
let server: Server
let url: string

test.beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bucketside-dist-'))
  await cp(at('dist'), folder, { recursive: true })
  const served = await serve({ root: folder, base: APP_BASE })
  server = served.server
  url = `http://localhost:${served.port}${APP_BASE}`
})

test.afterEach(async () => {
  server.closeAllConnections()
  server.close()
  await rm(folder, { recursive: true, force: true })
})

/** Puts out another version: another page, and a worker that lists it. */
const putOut = async (version: string) => {
  const page = await readFile(join(folder, 'index.html'), 'utf8')
  const tag = /<html[^>]*/
  await deploy(folder, { 'index.html': page.replace(tag, `<html lang="en" data-version="${version}"`) })
}

const version = (page: Page) => page.evaluate(() => document.documentElement.dataset.version ?? 'first')

/** The first visit, until all is kept. */
async function visit(page: Page) {
  await page.goto(url)
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
}

const waiting = (page: Page) =>
  page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting != null)

const look = (page: Page) =>
  page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update()
  })

test('after the first visit the app opens with the network cut and the server stopped', async ({
  page,
  context,
}) => {
  await visit(page)
  server.closeAllConnections()
  await new Promise((resolve) => server.close(resolve))
  await context.setOffline(true)
  await page.reload()
  await expect(page.locator('#app')).not.toBeEmpty()
  await page.goto(`${url}some/old/bookmark`)
  await expect(page.getByRole('heading', { name: 'Bucketside' })).toBeVisible()
  expect(page.url().split('#')[0]).toBe(url)
})

test('a file that is not kept is not answered with the app', async ({ page }) => {
  await visit(page)
  const answer = await page.evaluate(async () => (await fetch('./nothing.txt')).status)
  expect(answer).toBe(404)
})

// A reload is a start at which the old worker still serves: once every window is closed, a browser lets the new
// one take over by itself, before the next start.
test('a new version waits while the app is open, and comes with the next quiet start', async ({ page }) => {
  await visit(page)
  await putOut('second')
  await look(page)
  await expect.poll(() => waiting(page)).toBe(true)
  await page.waitForTimeout(1000)
  expect(await version(page)).toBe('first')
  await page.reload()
  await expect.poll(() => version(page).catch(() => '')).toBe('second')
  await expect(page.locator('#app')).not.toBeEmpty()
  expect(await waiting(page)).toBe(false)
})

test('a new version does not take over while another window is open', LONG, async ({ page, context }) => {
  await visit(page)
  await putOut('second')
  await look(page)
  await expect.poll(() => waiting(page)).toBe(true)
  const other = await context.newPage()
  await other.goto(url)
  await other.waitForTimeout(1500)
  expect(await version(other)).toBe('first')
  expect(await waiting(page)).toBe(true)
})

test('a new version does not take over at a start in mid-work', LONG, async ({ page }) => {
  await visit(page)
  // A bucket has just been stirred for the dip that comes next.
  await plantRecords(page, recordsOf(armed(Date.now())))
  await putOut('second')
  await look(page)
  await expect.poll(() => waiting(page)).toBe(true)
  await page.reload()
  await page.waitForTimeout(2000)
  expect(await version(page)).toBe('first')
  expect(await waiting(page)).toBe(true)
})

test('a tapped notification is left in the database for the page', async ({ page, context }) => {
  await context.grantPermissions(['notifications'])
  await visit(page)
  // The app itself would take the knock as soon as it is there.
  await page.goto(`${url}icon.svg`)
  const [worker] = context.serviceWorkers()
  await worker!.evaluate(async () => {
    const scope = self as unknown as ServiceWorkerGlobalScopeLike
    await scope.registration.showNotification('35 ready', { tag: 'pot-35' })
    const [notification] = await scope.registration.getNotifications()
    scope.dispatchEvent(new scope.NotificationEvent('notificationclick', { notification }))
  })
  const knocks = () =>
    page.evaluate(
      () =>
        new Promise<string[]>((resolve) => {
          const opening = indexedDB.open('bucketside')
          opening.onsuccess = () => {
            const reading = opening.result.transaction('knocks').objectStore('knocks').getAll()
            reading.onsuccess = () => {
              opening.result.close()
              resolve(reading.result.map((knock: { tag: string }) => knock.tag))
            }
          }
        }),
    )
  await expect.poll(knocks).toEqual(['pot-35'])
})

/** What the test uses of the worker's realm, which this one does not know. */
interface ServiceWorkerGlobalScopeLike extends EventTarget {
  readonly registration: ServiceWorkerRegistration
  readonly NotificationEvent: new (type: string, init: { notification: unknown }) => Event
}
