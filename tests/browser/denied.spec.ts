import { expect, type Page, test } from '@playwright/test'
import { BenchPage, fetched } from './bench.ts'

/** A phone on which everything that can be refused is: screen, sound, microphone, motion, notices, vibration. */
const refuseAll = (page: Page) =>
  page.addInitScript(() => {
    const refuse = () => Promise.reject(new DOMException('no', 'NotAllowedError'))
    const set = (target: object, name: string, value: unknown) =>
      Object.defineProperty(target, name, { configurable: true, value })
    set(navigator, 'wakeLock', { request: refuse })
    set(navigator, 'mediaDevices', { getUserMedia: refuse })
    set(navigator, 'vibrate', undefined)
    set(Notification, 'permission', 'denied')
    set(DeviceMotionEvent, 'requestPermission', () => Promise.resolve('denied'))
    set(navigator.storage, 'persist', () => Promise.resolve(false))
    set(HTMLMediaElement.prototype, 'play', refuse)
    window.AudioContext = class {
      constructor() {
        throw new DOMException('no', 'NotSupportedError')
      }
    } as unknown as typeof AudioContext
  })

test('everything refused: the main path goes on, and what does not work is said', async ({ page }) => {
  await refuseAll(page)
  const errors: Error[] = []
  page.on('pageerror', (error) => errors.push(error))
  const bench = await BenchPage.only(page, 33)
  await fetched(page.locator('.strip', { hasText: 'screen may sleep' }))
  await bench.prepare(33)
  await page.clock.runFor(11_000)
  await expect(page.locator('.strip')).toContainText('Sound is off. ')
  await expect(page.locator('.strip')).toContainText('screen may sleep')
  await bench.arm(33)
  await bench.hit()
  await page.clock.runFor(9000)
  await bench.pass(20)
  expect((await bench.pot(33)).dips).toHaveLength(1)

  await page.evaluate(() => location.replace('#/room/count'))
  await fetched(page.getByText('Notices are blocked'))
  for (const by of ['felt', 'heard']) {
    await page.getByRole('radio', { name: by, exact: true }).click()
    await expect(page.getByText('Not allowed by the phone')).toBeVisible()
  }
  await page.locator('.switch', { hasText: 'Ring with the screen off' }).click()
  await expect(page.getByText('The phone refused to play the track.')).toBeVisible()

  await page.evaluate(() => location.replace('#/buckets/demo.gatepost'))
  await page.locator('summary', { hasText: 'Name, letter, pattern' }).click()
  const key = page.getByRole('button', { name: 'Hold and say it' })
  await key.dispatchEvent('pointerdown')
  await key.dispatchEvent('pointerup')
  await expect(page.getByText('The microphone is not allowed')).toBeVisible()
  expect(errors).toEqual([])
})
