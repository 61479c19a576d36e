import { expect, test } from '@playwright/test'
import { KilnPage } from './kiln-page.ts'

test('with letters twice as large the kiln says its title in words and its bar whole', async ({ page }) => {
  test.setTimeout(120_000)
  const session = await page.context().newCDPSession(page)
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32 } })
  const kiln = await KilnPage.open(page)
  const whole = async () => {
    const out = await page.evaluate(() => {
      const of = (selector: string) => document.querySelector(selector)?.getBoundingClientRect()
      const [bar, label, title] = [of('.kiln .bar'), of('.kiln .bar-label'), of('.desk-title h1')]
      if (!bar || !label || !title) return ['nothing is there']
      return [
        ...(label.top < bar.top || label.bottom > bar.bottom ? ['the bar is cut'] : []),
        ...(title.height > 120 ? ['the title stands upright'] : []),
      ]
    })
    expect(out).toEqual([])
  }
  await kiln.hit()
  await kiln.says('PROPOSE')
  await whole()
  await kiln.hit()
  await kiln.says('SHELF 1 AS DRAWN')
  await whole()
  for (let i = 0; i < 8 && (await kiln.bar.textContent()) !== 'READING'; i++) await kiln.hit()
  await kiln.says('READING')
  await expect(page.getByRole('button', { name: 'Next firing' })).toBeVisible()
  await whole()
  await kiln.hit()
  const cut = page.locator('.kiln-ago .key')
  await expect(cut).toHaveCount(5)
  expect(
    await cut.evaluateAll((keys) => keys.filter((key) => key.scrollWidth > key.clientWidth).length),
  ).toBe(0)
})
