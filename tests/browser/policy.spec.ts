/** The content policy: in the page and by the host, and nothing of the app's breaks it. */
import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { CONTENT_POLICY, HEADERS } from '../tools/headers.mjs'
import { opened } from './bench.ts'
import { APP_URL, at } from './places.ts'

test('the page bears the policy that the host sends too, and README tells hosts all headers', async () => {
  const page = readFileSync(at('dist/index.html'), 'utf8')
  expect(page).toContain(CONTENT_POLICY.join('; '))
  expect(page).not.toMatch(/<script(?![^>]* src=)|<style|\son\w+=|style=/)
  const sent = (await fetch(APP_URL)).headers
  const told = readFileSync(at('README.md'), 'utf8')
  for (const [name, value] of Object.entries(HEADERS)) {
    expect(sent.get(name)).toBe(value)
    expect(told.toLowerCase()).toContain(`${name}: ${value}`.toLowerCase())
  }
})

test('no screen breaks the policy, and what it forbids is stopped', async ({ page, context }) => {
  test.setTimeout(60_000)
  const broken: string[] = []
  await page.exposeFunction('broke', (what: string) => broken.push(what))
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell = (window as unknown as { broke(what: string): void }).broke
      tell(`${event.effectiveDirective} ${event.blockedURI} ${event.sample}`)
    })
  })
  const asked = new Set<string>()
  context.on('request', (request) => asked.add(request.url()))
  await page.goto('./')
  await page.getByRole('button', { name: 'demo evening' }).tap()
  await expect(page.locator('.bench')).toBeVisible()
  await expect(page.locator('html')).toHaveAttribute('data-order', 'told', { timeout: 20_000 })
  const screens = [
    'board',
    'pot',
    'pot/demo.33',
    'buckets',
    'buckets/demo.heather',
    'tile/demo.heather',
    'stacks',
  ]
  for (const screen of [
    ...screens,
    'stacks/demo.tideline',
    'room',
    'room/air',
    'shelf',
    'firing',
    'first',
    'bench',
  ]) {
    await page.goto(`./#/${screen}`)
    await opened(page)
    await page.waitForTimeout(250)
  }
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  expect(broken).toEqual([])
  expect([...asked].filter((url) => !url.startsWith(APP_URL) && !/^(blob|data):/.test(url))).toEqual([])

  const stopped = await page.evaluate(async () => {
    const tried: Record<string, boolean> = {}
    const refused = async (name: string, attempt: () => unknown) => {
      try {
        await attempt()
        tried[name] = false
      } catch {
        tried[name] = true
      }
    }
    await refused('request elsewhere', () => fetch('https://example.com/'))
    await refused('markup from text', () => {
      document.createElement('div').innerHTML = '<b>text</b>'
    })
    await refused('foreign script', () => {
      document.createElement('script').src = 'https://example.com/a.js'
    })
    return tried
  })
  expect(stopped).toEqual({
    'request elsewhere': true,
    'markup from text': true,
    'foreign script': true,
  })
})

test('the licences of all that ships are shown in the app', async ({ page, context }) => {
  await page.goto('./#/room/phone')
  const shown = context.waitForEvent('page')
  await page.getByRole('link', { name: 'Licences' }).tap()
  await expect((await shown).locator('body')).toContainText('SIL OPEN FONT LICENSE')
})

test('an address that names nothing opens the app', async ({ page }) => {
  const errors: string[] = []
  page.on('pageerror', (error) => errors.push(error.message))
  for (const hash of [
    '#/pot/%E0%A4%A',
    '#/stacks/%',
    '#/nowhere',
    '#/pot/__proto__',
    '#/buckets/constructor',
    '#/tile/%/%',
  ]) {
    await page.goto('about:blank')
    await page.goto(`./${hash}`)
    await opened(page)
    await expect(page.locator('#app').getByRole('heading').first()).toBeVisible()
  }
  expect(errors).toEqual([])
})
