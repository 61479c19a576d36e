import { expect, type Page, test } from '@playwright/test'
import { BenchPage } from './bench.ts'
import { listen, taken } from './heard.ts'
import { LONG } from './places.ts'

/** What the screen names: pot, place, glaze and seconds, each empty where it names none. */
const shown = (page: Page) =>
  page.evaluate(() => {
    const text = (selector: string) => document.querySelector(selector)?.textContent?.trim() ?? ''
    return {
      bar: text('.bar-label'),
      number: text('.name-number'),
      place: text('.name-place'),
      title: text('.bench-main h1'),
      dose: text('.dose'),
      strip: text('.strip'),
    }
  })

test(
  'the demo evening: each line handed to the loudspeaker names what the screen shows',
  LONG,
  async ({ page }) => {
    test.setTimeout(240_000)
    await listen(page)
    const voice = page.waitForResponse(/voice\/en\.mp3$/)
    const bench = await BenchPage.demo(page)
    await page.clock.runFor(4000)
    await voice
    await bench.told()
    await page.waitForTimeout(1500)
    const kinds = new Map<string, number>()
    for (let i = 0; i < 160 && (kinds.get('armed') ?? 0) < 3; i++) {
      const label = await bench.label()
      if (label === '') await bench.pass(12)
      else if (i % 3 === 2) await bench.pass(25)
      else await bench.hit()
      await page.waitForTimeout(150)
      for (const words of await taken(page)) {
        const on = await shown(page)
        const line = words.join(' ')
        const seen = JSON.stringify({ line, ...on })
        // On a machine that stood still in the count its seconds were asked: then that is the last hit.
        if (line.startsWith('set down') && !on.strip.includes('dose'))
          expect(on.strip + on.title, seen).toContain(words.slice(2, 4).join(' '))
        if (/wax|wipe/.test(line)) {
          expect(line, seen).toContain(`${on.number} ${on.place.replace('board ', '')}`)
          kinds.set('prep', (kinds.get('prep') ?? 0) + 1)
        }
        if (/stir/.test(line)) {
          expect(on.bar, seen).toMatch(/^STIRRED/)
          expect(on.title, seen).toContain(
            { G: 'Gatepost', B: 'Brackwater', H: 'Heather' }[words[words.indexOf('stir') + 1] ?? ''] ??
              'no glaze',
          )
          kinds.set('stir', (kinds.get('stir') ?? 0) + 1)
        }
        // Whose seconds nobody saw, on such a machine.
        if (line.includes('was it'))
          expect(line, seen).toContain(`${on.number} ${on.place.replace('board ', '')}`)
        else if (/seconds?$/.test(line)) {
          expect(line, seen).toContain(`${on.number} ${on.place.replace('board ', '')}`)
          expect(line, seen).toContain(` ${on.title.slice(0, 1)} `)
          expect(line, seen).toContain(`${Number.parseFloat(on.dose)} second`)
          kinds.set('armed', (kinds.get('armed') ?? 0) + 1)
        }
      }
    }
    expect([...kinds.keys()].sort()).toEqual(['armed', 'prep', 'stir'])
    expect(kinds.get('armed')).toBeGreaterThanOrEqual(3)
  },
)
