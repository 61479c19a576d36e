import { expect, type Page } from '@playwright/test'

export interface Box {
  readonly name: string
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** What the screen on top shows, in CSS pixels. */
export interface Measured {
  readonly width: number
  readonly height: number
  /** How far the page could be scrolled. */
  readonly scrollX: number
  readonly scrollY: number
  /** The bar as painted; none in a count, at rest, or under another sheet. */
  readonly bar: Box | undefined
  readonly corners: readonly Box[]
  /** Bar, corners, answers and the strip as they can be hit. */
  readonly targets: readonly Box[]
  /** Tiles of a sheet, which stand in a grid. */
  readonly tiles: readonly Box[]
  /** Height of the digits, drawn. */
  readonly countPx: number | undefined
  readonly numberPx: number | undefined
  readonly placePx: number | undefined
  readonly glazePx: number | undefined
  readonly dosePx: number | undefined
  readonly inPx: number | undefined
  /** Rows of what waits, and the number in them. */
  readonly rows: readonly Box[]
  readonly rowPx: number | undefined
  /** The drawing of a pot beside whose words there is room. */
  readonly pot: Box | undefined
  /** Text outside the screen, cut off, under something else, or on other text. */
  readonly hidden: readonly string[]
}

export const widthOf = (box: Box) => box.right - box.left
export const heightOf = (box: Box) => box.bottom - box.top

/** Clear space between two boxes; negative where they overlap. */
export const gapOf = (a: Box, b: Box) =>
  Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom)

/** Every two of some boxes, with the space between them. */
export const pairs = (boxes: readonly Box[]) =>
  boxes.flatMap((a, i) =>
    boxes.slice(i + 1).map((b) => ({ between: `${a.name} | ${b.name}`, gap: gapOf(a, b) })),
  )

export const measure = (page: Page): Promise<Measured> =>
  page.evaluate(() => {
    const root = document.querySelector('.other') ?? document.querySelector('#app > *') ?? document.body
    const sheet = root.matches('.other')
    const boxOf = (element: Element) => {
      const { left, top, right, bottom } = element.getBoundingClientRect()
      return { name: element.className || (element.textContent ?? '').trim(), left, top, right, bottom }
    }
    const all = (selector: string) => [...root.querySelectorAll(selector)]
    const said = (selector: string) => root.querySelector(selector)?.textContent ?? ''
    const drawnHeight = (selector: string) => {
      const element = root.querySelector(selector)
      const context = document.createElement('canvas').getContext('2d')
      if (!element || !context) return undefined
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(element)
      context.font = `${fontWeight} ${fontSize} ${fontFamily}`
      return context.measureText('0').actualBoundingBoxAscent
    }

    /** Text may be cut by its own scrolling list; it may not by anything else. */
    const scrolls = (element: Element) => {
      for (let at: Element | null = element; at && at !== root.parentElement; at = at.parentElement)
        if (/auto|scroll/.test(getComputedStyle(at).overflowY)) return true
      return document.documentElement.scrollHeight > innerHeight + 1
    }
    /** Whether a box around it cuts a line of letters; one that is left out whole, by the number of lines, is meant. */
    const isCut = (element: Element, top: number, bottom: number) => {
      // Letters of a drawing are measured in its own units.
      if (element.closest('svg')) return false
      for (let at: Element | null = element; at && at !== root; at = at.parentElement) {
        const { overflowY, webkitLineClamp } = getComputedStyle(at)
        if (!/hidden|clip/.test(overflowY)) continue
        const edge = at.getBoundingClientRect().top + at.clientTop
        if (webkitLineClamp !== 'none' && top > edge + at.clientHeight - 0.5) return false
        if (top < edge - 0.5 || bottom > edge + at.clientHeight + 0.5) return true
      }
      return false
    }
    const hidden: string[] = []
    const lines: { text: string; left: number; right: number; top: number; bottom: number }[] = []
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const text = node.textContent?.trim()
      const parent = node.parentElement
      if (!text || !parent || parent.closest('.visually-hidden, .not-saved')) continue
      if (getComputedStyle(parent).visibility === 'hidden') continue
      // Capitals reach about a third of the letters' size to either side of the middle of their line.
      const letters = Number.parseFloat(getComputedStyle(parent).fontSize) / 3
      const range = document.createRange()
      range.selectNodeContents(node)
      const rects = [...range.getClientRects()]
      const [first, last] = [rects[0], rects.at(-1)]
      if (first && last && !/[\s/-]/.test(text) && last.top > (first.top + first.bottom) / 2)
        hidden.push(`"${text}" breaks inside the word`)
      for (const rect of rects) {
        if (rect.width < 1 || rect.height < 1) continue
        const found = (why: string) => hidden.push(`"${text}" ${why}`)
        if (rect.left < -0.5 || rect.right > innerWidth + 0.5) found('runs out at the side')
        const middle = (rect.top + rect.bottom) / 2
        if (middle - letters < 0 || middle + letters > innerHeight) {
          if (!scrolls(parent)) found('runs out above or below')
          continue
        }
        if (isCut(parent, middle - letters, middle + letters)) found('is cut above or below')
        if (!scrolls(parent))
          lines.push({
            text,
            left: rect.left,
            right: rect.right,
            top: middle - letters,
            bottom: middle + letters,
          })
        for (const y of [middle - letters, middle + letters])
          for (const x of [rect.left + 2, rect.right - 2]) {
            const top = document.elementFromPoint(x, y)
            if (top?.closest('.not-saved') || !top || top.contains(parent) || parent.contains(top)) continue
            if (!scrolls(parent)) found(`lies under ${top.className || top.tagName}`)
          }
      }
      if (parent.scrollWidth > parent.clientWidth + 1 && getComputedStyle(parent).overflowX === 'hidden')
        hidden.push(`"${text}" is cut short`)
    }
    lines.forEach((a, i) => {
      for (const b of lines.slice(i + 1))
        if (
          Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 &&
          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1
        )
          hidden.push(`"${a.text}" and "${b.text}" lie on each other`)
    })
    const pot = all('.face-pot:not(.face-much, :has(.caution)) > .outline').find(
      // On the smallest phones it gives way to a warning.
      (drawn) => innerHeight > 600 || !drawn.parentElement?.querySelector('.warning-key'),
    )
    const bar = sheet ? undefined : all('.bar:not(.bar-rest)')[0]
    return {
      width: innerWidth,
      height: innerHeight,
      scrollX: document.documentElement.scrollWidth - innerWidth,
      scrollY: document.documentElement.scrollHeight - innerHeight,
      bar: bar && boxOf(bar),
      corners: all('.corner').map(boxOf),
      targets: all('.corner, .bar-live, .bar-answer, .back-strip').map(boxOf),
      tiles: all('.other [data-press], .ready-tile').map(boxOf),
      countPx: drawnHeight('.count-numeral'),
      numberPx: drawnHeight('.name-number'),
      // Of a lid it says so as well.
      placePx: said('.name-place').length > 4 ? undefined : drawnHeight('.name-place'),
      glazePx: drawnHeight('.glaze'),
      dosePx: drawnHeight('.glaze ~ .face-text > .dose'),
      inPx: said('.count-word') === 'IN' ? drawnHeight('.count-word') : undefined,
      rows: all('.due')
        .filter((row) => row.checkVisibility())
        .map(boxOf),
      rowPx: drawnHeight('button.due > strong'),
      pot: pot && boxOf(pot),
      hidden: [...new Set(hidden)],
    }
  })

/** A small phone, two tall ones, the smallest, and one on its side. */
const SIZES = [
  [360, 640],
  [360, 780],
  [390, 844],
  [320, 568],
  [640, 360],
] as const

/** At each size of phone every text of this moment can be read; the small phone is left. */
export async function readable(page: Page, moment = ''): Promise<void> {
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height })
    // Rows that have no room any more are left out with the next frame.
    await page.waitForTimeout(60)
    await page.clock.runFor(100)
    expect((await measure(page)).hidden, `${moment} ${width} by ${height}`).toEqual([])
  }
  await page.setViewportSize({ width: SIZES[0][0], height: SIZES[0][1] })
}
