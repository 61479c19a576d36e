import { expect, type Page, test } from '@playwright/test'
import { radiusAtMm } from '../../src/engine/shape/geometry.ts'
import { shotOf, wholePhoto } from '../fixtures/photo/shots.ts'
import { fetched } from './bench.ts'
import { again, demo, fieldOf, key, open, option, type } from './desk-page.ts'

/** A low bowl whose outline is known, as a phone would have it. */
const shot = shotOf(4, 60)
const photo = wholePhoto(shot, 1500)
const { heightMm } = shot.profile.shape

async function jpegOf(page: Page): Promise<Buffer> {
  const text = await page.evaluate(
    async ([rgba, width, height]) => {
      const bytes = Uint8ClampedArray.from(atob(rgba), (c) => c.charCodeAt(0))
      const canvas = document.createElement('canvas')
      canvas.width = width
      canvas.height = height
      canvas.getContext('2d')?.putImageData(new ImageData(bytes, width, height), 0, 0)
      return canvas.toDataURL('image/jpeg', 0.92).split(',')[1] ?? ''
    },
    [Buffer.from(photo.data).toString('base64'), photo.width, photo.height] as const,
  )
  return Buffer.from(text, 'base64')
}

/** The right end of the ring at a height, in parts of the photo; `to` -1 is the left one. */
const end = (zMm: number, to = 1) => photo.at(0, -to * radiusAtMm(shot.profile, 'outside', zMm), zMm)

async function toPhoto(page: Page): Promise<void> {
  await demo(page)
  await open(page, 'pot/demo.33')
  await key(page, 'Measures and stack').click()
  await key(page, 'Outline from a photo').click()
  await fetched(page.getByText('Hold the phone upright'))
}

async function choose(page: Page): Promise<void> {
  const file = { name: 'pot.jpg', mimeType: 'image/jpeg', buffer: await jpegOf(page) }
  await page.locator('input[type=file]').last().setInputFiles(file)
  await fetched(page.getByText('Draw a box close round the pot'))
}

/** Draws the box, and answers where a place of the photo is on the screen from then on. */
async function box(page: Page) {
  const trace = page.locator('.trace')
  const view = async () => (await trace.boundingBox()) ?? { x: 0, y: 0, width: 1, height: 1 }
  const [left, right, foot, rim] = [end(heightMm / 2, -1), end(heightMm / 2), end(0), end(heightMm)]
  const [x0, x1, y0, y1] = [left.x - 0.01, right.x + 0.01, rim.y - 0.015, foot.y + 0.015]
  const whole = await view()
  await page.mouse.move(whole.x + x0 * whole.width, whole.y + y0 * whole.height)
  await page.mouse.down()
  await page.mouse.move(whole.x + x1 * whole.width, whole.y + y1 * whole.height, { steps: 4 })
  await page.mouse.up()
  await fetched(page.getByText('Trace the right side'))
  const room = 0.1 * Math.max((x1 - x0) * photo.width, (y1 - y0) * photo.height)
  const part = {
    x: x0 - room / photo.width,
    y: y0 - room / photo.height,
    wide: x1 - x0 + (2 * room) / photo.width,
    high: y1 - y0 + (2 * room) / photo.height,
  }
  return async ({ x, y }: { x: number; y: number }) => {
    const now = await view()
    await page.mouse.click(
      now.x + ((x - part.x) / part.wide) * now.width,
      now.y + ((y - part.y) / part.high) * now.height,
    )
  }
}

async function traced(page: Page): Promise<void> {
  const tap = await box(page)
  for (const part of [0, 0.1, 0.3, 0.55, 0.75, 0.9, 1]) await tap(end(part * heightMm))
  await key(page, 'Up to the rim: next').click()
  await tap(end(0, -1))
  await tap(end(heightMm, -1))
  await option(
    page,
    shot.trace.looksIn === undefined ? 'Rim is a line' : shot.trace.looksIn ? /^Yes$/ : /^No$/,
  ).click()
}

test('a photo, a trace and a length or two give a pot its outline, and nothing is stored before it is saved', async ({
  page,
}) => {
  test.setTimeout(90_000)
  await toPhoto(page)
  await choose(page)
  await traced(page)
  await type(page, 'Its length', `${heightMm.toFixed(1)} mm`)
  await key(page, 'Find the outline').click()
  // So low, its height tells too little of the rest.
  await expect(page.getByRole('alert')).toContainText('measure the other too', { timeout: 20_000 })
  const known = 2 * Math.max(...shot.profile.outer.map(({ rMm }) => rMm))
  await type(page, 'Widest, often the rim', `${known.toFixed(1)} mm`)
  await key(page, 'Find the outline').click()
  await expect(page.getByText('Does the line lie on the pot?')).toBeVisible({ timeout: 20_000 })
  const said = (await page.locator('.trace-measures').textContent()) ?? ''
  const high = Number(/high\s+([\d.]+)/.exec(said)?.[1])
  const widest = Number(/widest\s+([\d.]+)/.exec(said)?.[1])
  const foot = Number(/foot\s+([\d.]+)/.exec(said)?.[1])
  expect(Math.abs(high - heightMm)).toBeLessThan(0.6)
  expect(Math.abs(widest - known)).toBeLessThan(0.6)
  expect(Math.abs(foot / (2 * radiusAtMm(shot.profile, 'outside', 0)) - 1)).toBeLessThan(0.05)
  await key(page, 'Keep it').click()
  await expect(page.getByText('Outline from a photo:')).toBeVisible()
  // Left without saving it is as it was.
  await again(page)
  await key(page, 'Measures and stack').click()
  await expect(fieldOf(page, 'Height')).toBeVisible()
})

test('a trace that makes no pot is refused with field, value and range', async ({ page }) => {
  test.setTimeout(90_000)
  await toPhoto(page)
  await choose(page)
  const tap = await box(page)
  for (const part of [0.5, 0.52]) await tap(end(part * heightMm))
  await key(page, 'Up to the rim: next').click()
  await tap(end(0.5 * heightMm, -1))
  await tap(end(0.52 * heightMm, -1))
  await option(page, /^No$/).click()
  await type(page, 'Its length', '150')
  await key(page, 'Find the outline').click()
  await expect(page.getByRole('alert')).toContainText(
    /From foot to rim it is \d+ % .* allowed are 8 % to 100 %/,
  )
})
