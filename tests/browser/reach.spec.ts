/** The main job without a finger or an eye: keys alone, a screen reader's live regions, the phone's own colours, no motion. */
import { expect, type Page, test } from '@playwright/test'
import { twelve } from '../fixtures/twelve.ts'
import { BenchPage } from './bench.ts'
import { demo, open } from './desk-page.ts'

/** What a screen reader would break in with while `during` goes on: texts of live regions that came or changed. */
async function announced(page: Page, during: () => Promise<void>): Promise<string[]> {
  await page.evaluate(() => {
    const live = '[aria-live], [role=status], [role=alert]'
    const heard: string[] = []
    const note = (node: Node | null) => {
      const region = (node instanceof Element ? node : node?.parentElement)?.closest(live)
      const inside = node instanceof Element ? [...node.querySelectorAll(live)] : []
      for (const one of region ? [region, ...inside] : inside)
        if (one.textContent?.trim()) heard.push(one.textContent.trim())
    }
    const observer = new MutationObserver((changes) => {
      for (const { target, addedNodes } of changes) for (const node of [target, ...addedNodes]) note(node)
    })
    observer.observe(document.body, { subtree: true, childList: true, characterData: true })
    Object.assign(window, { heard })
  })
  await during()
  return page.evaluate(() => (window as unknown as { heard: string[] }).heard)
}

test('a pot is waxed, wiped, dipped and set down by keys alone; a count is not spoken into', async ({
  page,
}) => {
  const bench = await BenchPage.only(page, 33)
  /** The bar has a name, the card a heading; the bar is reached by Tab and hit by Enter. */
  const hit = async () => {
    await expect(page.locator('[data-press="bar"]')).toHaveAccessibleName(/\S/)
    await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1)
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
    const isOn = () => page.evaluate(() => document.activeElement?.matches('[data-press="bar"]') ?? false)
    for (let i = 0; i < 12 && !(await isOn()); i++) await page.keyboard.press('Tab')
    expect(await isOn()).toBe(true)
    const ring = await page.evaluate(() => {
      const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement ?? document.body)
      return outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth)
    })
    expect(ring).toBeGreaterThanOrEqual(3)
    await page.clock.runFor(1200)
    await page.keyboard.press('Enter')
    await page.clock.runFor(400)
  }
  const done: string[] = []
  for (let i = 0; i < 30 && (await bench.label()) !== 'START'; i++) {
    done.push(await bench.label())
    if (done.at(-1) === '') await bench.pass(60)
    else if (await page.locator('.rest-list').count()) await bench.pass(120)
    else await hit()
  }
  expect(done).toEqual(expect.arrayContaining(['WAXED', 'WIPED']))
  const heard = await announced(page, async () => {
    await hit()
    await expect(page.locator('.count')).toBeVisible()
    // To the middle of the dose, and through OUT.
    for (let i = 0; i < 40 && (await page.locator('.count').count()) > 0; i++) {
      const live = page.locator('.count :is([aria-live], [role=status], [role=alert])')
      expect(await live.count()).toBe(0)
      await page.clock.runFor(250)
    }
  })
  expect(heard).toEqual([])
  await bench.pass(15)
  await hit()
  const pot = (await bench.table()).pots['demo.33']
  expect(pot?.dips).toHaveLength(1)
  expect(pot?.dips[0]?.spongedAt).toBeDefined()
})

test('in the phone’s own colours the bar has an edge, and drawings are seen', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' })
  const bench = await BenchPage.only(page, 33)
  const look = () =>
    page.evaluate(() => {
      const text = document.createElement('i')
      text.style.color = 'CanvasText'
      document.body.append(text)
      const ink = getComputedStyle(text).color
      text.remove()
      const bar = document.querySelector('.bar-answer-big, .bar:not(.bar-rest)')
      const lines = [...document.querySelectorAll('.outline > path')].map(
        (one) => getComputedStyle(one).stroke,
      )
      return { edge: bar ? Number.parseFloat(getComputedStyle(bar).borderTopWidth) : 0, ink, lines }
    })
  await expect.poll(async () => (await look()).edge).toBeGreaterThanOrEqual(3)
  const { ink, lines } = await look()
  expect(lines.length).toBeGreaterThan(0)
  for (const line of lines) expect(line).toBe(ink)
  await expect(bench.bar).toBeVisible()
})

for (const reducedMotion of ['reduce', 'no-preference'] as const)
  test(`the coat to come slides on where motion is wanted: ${reducedMotion}`, async ({ page }) => {
    await page.emulateMedia({ reducedMotion })
    const bench = await BenchPage.on(page, twelve(['GB'], 2))
    await bench.pass(400)
    await bench.arm(1)
    await expect(page.locator('.coming').first()).toBeVisible()
    const moves = await page.evaluate(
      () =>
        document.getAnimations().filter((one) => (one as CSSAnimation).animationName === 'slide-on').length,
    )
    expect(moves > 0).toBe(reducedMotion !== 'reduce')
  })

/** Dead space round what erases, px. */
const ERASE_GAP = 72

test('nothing else to hit is nearer than 72 px to what erases', async ({ page }) => {
  await demo(page)
  const near: string[] = []
  let seen = 0
  for (const screen of ['pot/demo.35', 'stacks/demo.tideline', 'buckets/demo.heather', 'room/keep']) {
    await open(page, screen)
    await page.waitForTimeout(200)
    await page.locator('details').evaluateAll((all) => {
      for (const one of all) if (one instanceof HTMLDetailsElement) one.open = true
    })
    await page.waitForTimeout(200)
    const found = await page.evaluate((gap) => {
      const controls = [...document.querySelectorAll('button, input, summary, a, select')].filter((one) =>
        one.checkVisibility(),
      )
      const flat = (one: Element) => one.getBoundingClientRect()
      const pinned = (one: Element) => one.closest('.save-bar, .desk-foot, .desk-head') !== null
      const keys = [...document.querySelectorAll('.hold-key')].filter((one) => one.checkVisibility())
      const bad = keys.flatMap((key) => {
        const a = flat(key)
        return controls.flatMap((one) => {
          if (one === key || key.contains(one) || pinned(one)) return []
          const b = flat(one)
          const far = Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom)
          return far < gap - 0.5
            ? [`${key.textContent} | ${one.textContent || one.id}: ${Math.round(far)} px`]
            : []
        })
      })
      return { bad, keys: keys.length }
    }, ERASE_GAP)
    seen += found.keys
    near.push(...found.bad.map((line) => `${screen}: ${line}`))
  }
  expect(seen).toBeGreaterThan(2)
  expect(near).toEqual([])
})
