/** Numbers are written as the language writes them, wherever they are shown. */
import { readdirSync, readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { figure } from '../../../src/screens/opening/opening-app.ts'
import { amount, weight } from '../../../src/screens/text/amounts.ts'
import { WORDS } from '../../../src/words/bench.ts'
import { formats } from '../../../src/words/format.ts'
import { LATE_WORDS } from '../../../src/words/late.ts'
import { decimal, marked, plain } from '../../../src/words/number.ts'
import { openWords } from '../../fixtures/languages.ts'

const root = new URL('../../../src/', import.meta.url)
const shown = ['screens', 'words'].flatMap((room) =>
  readdirSync(new URL(`${room}/`, root), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => `${room}/${name}`),
)

/** Drawn, not read: points of a path, parts of a style. */
const DRAWN = ['screens/board/trace-view.tsx', 'screens/opening/film-drawing.tsx', 'screens/bench/count.tsx']

test.each(shown.filter((name) => !DRAWN.includes(name)))('%s writes no decimals by itself', (name) => {
  const source = readFileSync(new URL(name, root), 'utf8')
  expect(source.match(/\.toFixed\(|\.toPrecision\(/g) ?? []).toEqual([])
  // What a field would be typed with has a point: shown, it is marked.
  if (name.startsWith('screens/') && /\bshowEntry\(/.test(source))
    expect(source).toMatch(/\bmarked\(showEntry\(/)
})

/** What is said with a number in it, wherever it lies in the words. */
function said(words: unknown, number: number): string[] {
  if (typeof words === 'function') {
    const text: unknown = words.length === 1 ? words(number) : words('Heather', number)
    return typeof text === 'string' ? [text] : []
  }
  return []
}

describe('where decimals come after a comma', () => {
  beforeAll(() => openWords('es', 'es-ES'))
  afterAll(() => openWords('phone', 'en'))

  test('seconds, lengths, weights, litres, factors and densities have it', () => {
    const w = WORDS.es
    const late = LATE_WORDS.es
    const f = formats(w, 'metric', 'es-ES')
    const texts = [
      ...[w.bench.seconds, w.bench.of, w.bench.askBar].flatMap((one) => said(one, 2.5)),
      ...[late.other.makes, late.count.under, late.count.inside].flatMap((one) => said(one, 2.5)),
      f.mm(4.5),
      f.coat(0.62),
      f.density(1.45),
      amount('litres', 11.84, 'metric'),
      amount('gramsPerMl', 1.05, 'metric'),
      weight(1.2, 'metric'),
      weight(1.2, 'us'),
      figure(3.5),
      decimal(0.05, 2),
      plain(2.5),
      marked('1.05 2.5'),
    ]
    expect(texts).toHaveLength(17)
    for (const text of texts) {
      expect(text).toMatch(/\d,\d/)
      expect(text).not.toMatch(/\d\.\d/)
    }
  })

  test('a whole number has none, and a place in the kiln keeps its point', () => {
    expect([plain(4), plain(1200), decimal(4, 1), marked('Pieza 42')]).toEqual([
      '4',
      '1200',
      '4,0',
      'Pieza 42',
    ])
    expect(WORDS.es.bench.seconds(4)).toBe('4 s')
  })
})

test('a phone of a land with a point keeps it, in Spanish too', async () => {
  await openWords('es', 'es-MX')
  expect([figure(3.5), amount('litres', 11.84, 'metric')]).toEqual(['3.5', '11.84 L'])
  await openWords('phone', 'en')
  expect([figure(3.5), amount('litres', 11.84, 'metric')]).toEqual(['3.5', '11.84 L'])
})
