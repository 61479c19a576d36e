/** The app on a phone that speaks Spanish, and on one that is set to another language than its own. */
import { expect, test } from '@playwright/test'
import { opened } from './bench.ts'

test.use({ locale: 'es-MX' })

test('speaks Spanish from the first screen on, and English for good where that is chosen', async ({
  page,
}) => {
  await page.goto('./')
  await expect(page.getByRole('button', { name: 'Ver la tarde de ejemplo' })).toBeVisible()
  await page.getByRole('button', { name: 'Mis propias piezas' }).tap()
  await expect(page.getByRole('heading', { name: 'Tabla vacía' })).toBeVisible()
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  await page.goto('./#/buckets')
  await page.getByRole('button', { name: 'Pon nombre al primer cubo' }).tap()
  await expect(page.getByLabel('Nombre del esmalte')).toBeVisible()

  await page.goto('./#/room')
  await page.getByRole('button', { name: /Este teléfono/ }).tap()
  await expect(
    page.getByRole('radiogroup', { name: 'Idioma' }).getByRole('radio', { name: 'como' }),
  ).toBeChecked()
  await page.getByText('English', { exact: true }).tap()
  await expect(page.getByRole('radiogroup', { name: 'Language' })).toBeVisible()
  await expect(page.locator('html')).toHaveAttribute('lang', 'en')
  await page.goto('./#/first')
  await page.reload()
  await opened(page)
  await expect(page.getByRole('button', { name: 'Try the demo evening' })).toBeVisible()
})
