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
