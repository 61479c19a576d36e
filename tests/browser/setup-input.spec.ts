import { expect, test } from '@playwright/test'
import { again, demo, fieldOf, key, more, open, type } from './desk-page.ts'

/** Bad input on the screens for clean hands: refused beside its field, kept as typed, nothing stored. */

test('a number, a place and a letter belong to one thing only', async ({ page }) => {
  await demo(page)
  await open(page, 'pot/demo.33')
  await key(page, 'Measures and stack').click()
  await type(page, 'Number', '34')
  await key(page, /^Save$/).click()
  await expect(fieldOf(page, 'Number').getByRole('alert')).toHaveText('Number 34 is already on the table.')
  await type(page, 'Number', '33')
  await type(page, 'Place', 'b1')
  await key(page, /^Save$/).click()
  await expect(fieldOf(page, 'Place').getByRole('alert')).toHaveText('Pot 35 stands there.')
  await open(page, 'buckets/demo.heather')
  await more(page, 'Name, letter, pattern')
  await type(page, 'Letter', 'g')
  await key(page, /^Save$/).click()
  await expect(fieldOf(page, 'Letter').getByRole('alert')).toHaveText('Letter G belongs to Gatepost.')
  await again(page)
  await expect(page.getByLabel('Letter')).toHaveValue('H')
})

test('145 for a density asks whether 1.45 was meant, and stores neither by itself', async ({ page }) => {
  await open(page, 'buckets/new')
  await type(page, 'Name of the glaze', 'Fenwater')
  await more(page, 'Target and solids')
  await type(page, 'Target', '145')
  // Behind its name again: what is wrong there opens it.
  await more(page, 'Target and solids')
  await expect(page.getByLabel('Target')).toBeHidden()
  await key(page, /^Save$/).click()
  const target = fieldOf(page, 'Target')
  await expect(target.getByRole('alert')).toHaveText('Only 1.05 to 1.9 g/ml.')
  await expect(target).toBeInViewport()
  await expect(page.getByLabel('Target')).toHaveValue('145')
  await again(page)
  await open(page, 'buckets')
  await expect(page.getByText('No bucket yet.')).toBeVisible()
  await open(page, 'buckets/new')
  await type(page, 'Name of the glaze', 'Fenwater')
  await more(page, 'Target and solids')
  await type(page, 'Target', '145')
  await target.getByRole('button', { name: '1.45?' }).click()
  await key(page, /^Save$/).click()
  await open(page, 'buckets')
  await expect(key(page, /Fenwater.*target 1.45/)).toBeVisible()
})

const WRONG: readonly (readonly [string, string, string])[] = [
  ['Height', '', 'Fill this in: 10 to 600 mm.'],
  ['Height', 'tall', 'Not a number. 10 to 600 mm.'],
  ['Height', '1.2.3', 'Not a number. 10 to 600 mm.'],
  ['Height', '-95', 'Only 10 to 600 mm.'],
  ['Height', '601', 'Only 10 to 600 mm.'],
  ['Height', '95 kg', 'Not a number. 10 to 600 mm.'],
  ['Wall', '55', 'Only 1 to 30 mm.'],
  ['Number', '33.5', 'A whole number, 1 to 9999.'],
  ['Place', '33', 'A letter and a number, as B 3.'],
  ['Its own absorption', '120', 'Only 0 to 40 %.'],
]

test('each wrong input is refused beside its field, kept as typed, and stores nothing', async ({ page }) => {
  await demo(page)
  await open(page, 'pot/demo.33')
  await key(page, 'Measures and stack').click()
  for (const [label, text, said] of WRONG) {
    const input = page.getByLabel(label, { exact: true })
    const before = await input.inputValue()
    await type(page, label, text)
    await key(page, /^Save$/).click()
    await expect(fieldOf(page, label).getByRole('alert'), `${label} ${text}`).toHaveText(said)
    await expect(input).toHaveValue(text)
    await expect(input).toHaveAttribute('aria-invalid', 'true')
    await type(page, label, before)
  }
  await again(page)
  await expect(page.getByText('bowl 70 mm high, 150 mm wide')).toBeVisible()
})

test('measures that contradict each other are refused at the one that is wrong', async ({ page }) => {
  await demo(page)
  await open(page, 'pot/demo.31')
  await key(page, 'Measures and stack').click()
  await type(page, 'Foot line up', '59')
  await key(page, /^Save$/).click()
  await expect(fieldOf(page, 'Foot line up').getByRole('alert')).toHaveText('Only 0 to 47.5 mm.')
})

/** Screens with numbers to type, the keys that lead to them, and how many fields they have at least. */
const TYPED: readonly (readonly [string, readonly (string | RegExp)[], number])[] = [
  ['pot/demo.37', ['Measures and stack'], 8],
  ['buckets/demo.gatepost', [], 12],
  ['buckets/new', [], 10],
  ['stacks/demo.tideline', [], 3],
  ['room/air', [], 6],
  ['room/kiln', [], 1],
  ['room/clay', [], 8],
  ['room/count', [], 5],
  ['firing', [], 3],
  ['shelf', ['Change its measures'], 13],
]

test('every field of every screen refuses eight wrong inputs, each with its range', async ({ page }) => {
  test.setTimeout(90_000)
  await demo(page)
  for (const [screen, keys, least] of TYPED) {
    await open(page, screen)
    for (const name of keys) await key(page, name).click()
    const lid = page.getByLabel('With a lid')
    if ((await lid.count()) > 0) await lid.check()
    await page.locator('.field').first().waitFor({ state: 'attached' })
    const { fields, slips } = await page.evaluate(async () => {
      const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!
      const drawn = () => new Promise((resolve) => setTimeout(resolve, 4))
      const slips: string[] = []
      let fields = 0
      for (const field of document.querySelectorAll('.field:has(input[inputmode="decimal"])')) {
        const input = field.querySelector('input')!
        const label = field.querySelector('label')!.textContent
        const unit = field.querySelector('.field-unit')?.textContent ?? ''
        const said = () => field.querySelector('.field-said')!
        const hint = said().textContent ?? ''
        const range = /^(-?\d+(?:\.\d+)?) to (-?\d+(?:\.\d+)?)/.exec(hint)
        if (!range) {
          slips.push(`${label}: no range in "${hint}"`)
          continue
        }
        fields++
        const type = async (text: string) => {
          setValue.call(input, text)
          input.dispatchEvent(new Event('input', { bubbles: true }))
          await drawn()
          input.dispatchEvent(new FocusEvent('blur'))
          await drawn()
        }
        const before = input.value
        const most = Number(range[2])
        const wrong = [
          'tall',
          '1.2.3',
          '--4',
          '5 bananas',
          `${most * 1000 + 1}`,
          `${Number(range[1]) - 1000}`,
          'Infinity',
          '0x10',
        ]
        if (!hint.includes('or empty') && before !== '') wrong.push('')
        for (const text of wrong) {
          await type(text)
          const alert = said().getAttribute('role') === 'alert' ? said().textContent! : ''
          const expected = [range[0], unit].filter(Boolean).join(' ')
          if (!alert.includes(expected) || input.getAttribute('aria-invalid') !== 'true')
            slips.push(`${label} took "${text}": "${alert}" instead of ${expected}`)
          if (input.value !== text) slips.push(`${label} changed "${text}" to "${input.value}"`)
        }
        await type(before)
      }
      return { fields, slips }
    })
    expect(slips, screen).toEqual([])
    expect(fields, screen).toBeGreaterThanOrEqual(least)
  }
})
