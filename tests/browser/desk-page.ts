import { expect, type Page } from '@playwright/test'

/** Hands of a person at the screens for clean hands. */

export const open = async (page: Page, at: string) => {
  await page.goto(`./#/${at}`)
  await expect(page.locator('.desk, .first')).toBeVisible()
}
export const demo = async (page: Page) => {
  await open(page, 'first')
  await page.getByRole('button', { name: 'Try the demo evening' }).click()
  await expect(page.locator('.bench')).toBeVisible()
}
export const key = (page: Page, name: string | RegExp) => page.getByRole('button', { name })
export const option = (page: Page, name: string | RegExp) => page.getByRole('radio', { name })
export const fieldOf = (page: Page, label: string) =>
  page.locator('.field').filter({ has: page.getByLabel(label, { exact: true }) })
/** Fills a field and leaves it. */
export const type = async (page: Page, label: string, text: string) => {
  const input = page.getByLabel(label, { exact: true }).first()
  await input.fill(text)
  await input.blur()
}
/** Waits until the journal has what was shown, then opens the page anew. */
export const again = async (page: Page) => {
  await page.waitForTimeout(150)
  await page.reload()
  await expect(page.locator('.desk, .first, .bench')).toBeVisible()
}

/** Controls under 48 px, and anything past the edges of the screen. */
export const misfits = () => {
  const found: string[] = []
  const say = (what: string, element: Element) =>
    found.push(
      `${what}: ${element.tagName}.${element.getAttribute('class')} ${element.textContent?.slice(0, 24)}`,
    )
  for (const element of document.querySelectorAll('.desk *')) {
    if (element.closest('.visually-hidden') || element.closest('svg')) continue
    const { width, height, left, right } = element.getBoundingClientRect()
    if (width === 0) continue
    if (left < -0.5 || right > innerWidth + 0.5) say('off the screen', element)
    const control = element.matches('button, .field-box, label.switch')
    if (control && (width < 47.5 || height < 47.5)) say('small', element)
    if (
      element.children.length === 0 &&
      element.scrollWidth > element.clientWidth + 1 &&
      element.clientWidth > 0
    )
      if (!element.matches('input')) say('cut', element)
  }
  return found
}
