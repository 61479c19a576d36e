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
/** Opens or closes what is kept behind its name. */
export const more = (page: Page, name: string) => page.locator('summary', { hasText: name }).click()
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

/** Controls under 48 px, anything past the edges of the screen, and text that lies over or under something else. */
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

  /** What stays in its place while a page scrolls below it. */
  const isPinned = (element: Element | null): boolean => {
    for (let at = element; at; at = at.parentElement)
      if (/fixed|sticky/.test(getComputedStyle(at).position)) return true
    return false
  }
  /** On a kiln's page that can be drawn up from under the strip that takes back. */
  const canBeDrawnUp = (element: Element, over: Element): boolean => {
    const page = over.closest('.kiln-back') && element.closest('.kiln-main')
    return !!page && page.scrollHeight - page.clientHeight - page.scrollTop >= 54
  }
  interface Line {
    readonly text: string
    readonly of: Node
    readonly left: number
    readonly right: number
    readonly top: number
    readonly bottom: number
  }
  /** Each line of text as far as it is in sight, from the feet of its capitals to their tops. */
  const lines: Line[] = []
  const covered = new Set<Node>()
  const walker = document.createTreeWalker(document.querySelector('.desk') ?? document, NodeFilter.SHOW_TEXT)
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const text = node.textContent?.trim().slice(0, 30)
    const parent = node.parentElement
    if (!text || !parent?.checkVisibility() || parent.closest('.visually-hidden, svg, option')) continue
    if (isPinned(parent)) continue
    const letters = Number.parseFloat(getComputedStyle(parent).fontSize) / 3
    const range = document.createRange()
    range.selectNodeContents(node)
    for (const rect of range.getClientRects()) {
      const middle = (rect.top + rect.bottom) / 2
      let [left, right, top, bottom] = [rect.left, rect.right, middle - letters, middle + letters]
      for (let at: Element | null = parent; at; at = at.parentElement) {
        if (getComputedStyle(at).overflowY === 'visible') continue
        const box = at.getBoundingClientRect()
        left = Math.max(left, box.left)
        right = Math.min(right, box.right)
        top = Math.max(top, box.top)
        bottom = Math.min(bottom, box.bottom)
      }
      if (right - left < 4 || bottom - top < 4) continue
      lines.push({ text, of: node, left, right, top, bottom })
      for (const [x, y] of [
        [left + 2, top + 1],
        [right - 2, bottom - 1],
      ] as const) {
        const over = document.elementFromPoint(x, y)
        if (!over || over.contains(parent) || parent.contains(over) || isPinned(over)) continue
        // A switch takes its taps by a clear box over all of it.
        if (over.closest('label.switch')?.contains(parent)) continue
        if (canBeDrawnUp(parent, over)) {
          covered.add(node)
          continue
        }
        found.push(`under ${over.getAttribute('class') || over.tagName}: ${text}`)
      }
    }
  }
  const inSight = lines.filter(({ of }) => !covered.has(of))
  for (const [i, a] of inSight.entries())
    for (const b of inSight.slice(i + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left)
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
      if (a.of !== b.of && across > 1 && down > 1) found.push(`"${a.text}" over "${b.text}"`)
    }
  return [...new Set(found)]
}
