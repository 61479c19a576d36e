/**
 * How many checks against the outside world each part of the engine has. A table counts for eight rows at most;
 * conversions of units, what a number was tuned on, and what rests on common practice alone, count for nothing.
 */

import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const read = (path: string): string => readFileSync(new URL(path, import.meta.url), 'utf8')

interface Check {
  readonly under: string
  readonly name: string
  readonly rows: number
}

const TABLE_MOST = 8
const NO_CHECK = /common practice|no source|within the trade range|conversion|tuned on it/

/** End of the bracket that opens at `from`. */
function closing(text: string, from: number): number {
  let depth = 0
  let quote = ''
  for (let i = from; i < text.length; i++) {
    const c = text[i]!
    if (quote !== '') quote = c === quote && text[i - 1] !== '\\' ? '' : quote
    else if (c === "'" || c === '`' || c === '"') quote = c
    else if (c === '[' || c === '(') depth++
    else if ((c === ']' || c === ')') && --depth === 0) return i
  }
  throw new Error('a bracket is not closed')
}

/** Rows of a table: its brackets one level in, or its bare items. */
function rowsOf(table: string): number {
  const inner = table.slice(1, -1)
  let [rows, at] = [0, 0]
  for (let open = inner.indexOf('['); open >= 0; open = inner.indexOf('[', at)) {
    at = closing(inner, open) + 1
    rows++
  }
  return rows > 0 ? rows : inner.split(',').filter((item) => item.trim() !== '').length
}

/** The cases of a test file, each under the last `describe` before it. */
function checksIn(path: string): Check[] {
  // Comments may hold quotes that close nowhere.
  const text = read(path)
    .replace(/^\s*\/\/.*$/gm, '')
    .replace(/\/\*[\s\S]*?\*\//g, '')
  const checks: Check[] = []
  let under = ''
  for (const found of text.matchAll(/\b(describe|it|test)(\.each)?\(/g)) {
    const open = found.index + found[0].length - 1
    const end = closing(text, open)
    const inside = text.slice(open + 1, end).trim()
    if (found[1] === 'describe') under = inside.split('\n')[0] ?? ''
    else if (found[2]) {
      const name = text.slice(end, closing(text, text.indexOf('(', end)))
      checks.push({ under, name, rows: Math.min(TABLE_MOST, rowsOf(inside.replace(/,$/, ''))) })
    } else checks.push({ under, name: inside, rows: 1 })
  }
  return checks.filter(({ name, under: of }) => !NO_CHECK.test(`${name} ${of}`))
}

const but = (checks: readonly Check[], word: string, inside: boolean): Check[] =>
  checks.filter(({ under }) => under.includes(word) === inside)

const bucket = checksIn('./bucket.test.ts')
const PARTS: Readonly<Record<string, readonly Check[]>> = {
  air: checksIn('./air.test.ts'),
  slurry: checksIn('./slurry.test.ts'),
  'geometry and zones': [...checksIn('./geometry.test.ts'), ...but(bucket, 'collar', false)],
  'pick-up and balance': checksIn('./casting.test.ts'),
  learn: checksIn('./learning.test.ts'),
  'dips, advice': [...checksIn('./advice.test.ts'), ...but(bucket, 'collar', true)],
  'melt and tiles': [...checksIn('./melt.test.ts'), ...checksIn('./melt-tile.test.ts')],
  'cones and firings': but(checksIn('./cones.test.ts'), 'degF list', false),
}

/** Sources that do not draw on each other, as they are named beside the values. */
const SOURCES = [
  'ASHRAE',
  'IAPWS',
  'FAO-56',
  'MetPy',
  'psychrolib',
  'Bergman',
  'Cengel',
  'Altmann',
  'Handbook for Australian Potters',
  'CRC',
  'Perry',
  'Pappus',
  'Lapeyrouse',
  'DELPHIN',
  'Landau',
  'Jeffreys',
  'Abramowitz & Stegun',
  'Johnson, Kotz',
  'Tiller & Tsai',
  'refsan',
  'Huppert',
  'NBS standard sample 710',
  'DGG I',
  'formsbank',
  'ccg.co.nz',
  'arteraku.it',
] as const

const count = (checks: readonly Check[]): number => checks.reduce((sum, { rows }) => sum + rows, 0)
const total = count(Object.values(PARTS).flat())

describe('checks against the outside world', () => {
  test.each(Object.keys(PARTS))('%s has at least six', (part) => {
    expect(count(PARTS[part]!)).toBeGreaterThanOrEqual(6)
  })

  test('there are at least sixty, from at least eight sources', () => {
    expect(total).toBeGreaterThanOrEqual(60)
    const texts = [
      'air',
      'slurry',
      'geometry',
      'bucket',
      'casting',
      'learning',
      'advice',
      'melt',
      'melt-tile',
      'cones',
    ]
      .map((name) => read(`./${name}.test.ts`))
      .join()
    for (const source of SOURCES) expect(texts, source).toContain(source)
    expect(SOURCES.length).toBeGreaterThanOrEqual(8)
  })

  test('the engine’s own account of them is true', () => {
    const readme = read('../../src/engine/README.md')
    for (const [part, checks] of Object.entries(PARTS))
      expect(readme).toMatch(new RegExp(`\\| ${part} +\\| ${count(checks)} +\\|`))
    expect(readme).toContain(`${total} checks from ${SOURCES.length} sources`)
  })
})

test('the count itself: tables are capped, conversions and practice left out', () => {
  expect(PARTS['pick-up and balance']!.some(({ name }) => /a conversion|tuned on it/.test(name))).toBe(false)
  expect(rowsOf('[[1, 2], [3, [4]], [5]]')).toBe(3)
  expect(rowsOf("['a', 'b']")).toBe(2)
  expect(PARTS.air!.some(({ name }) => name.includes('common practice'))).toBe(false)
  expect(Math.max(...Object.values(PARTS).flatMap((checks) => checks.map(({ rows }) => rows)))).toBe(
    TABLE_MOST,
  )
})
