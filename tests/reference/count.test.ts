/** The table of this room against its tests, and the engine's own account of both: neither can go stale. */

import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { type Kind, SORTED } from './sorted.ts'

const HERE = new URL('.', import.meta.url)
const SRC = fileURLToPath(new URL('../../src/', HERE))
const OWN = 'count.test.ts'
const COUNTED: readonly Kind[] = ['printed', 'code', 'closed']

const read = (path: string): string => readFileSync(new URL(path, HERE), 'utf8')
const files = readdirSync(HERE).filter((name) => name.endsWith('.test.ts') && name !== OWN)

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

/** The table that `test.each` was given: as it stands, or by its name. */
function tableIn(text: string, given: string): string {
  if (given.startsWith('[')) return given.replace(/,$/, '')
  const from = text.search(new RegExp(`const ${given}\\b`))
  const open = text.indexOf('[', text.indexOf('= ', from))
  return text.slice(open, closing(text, open) + 1)
}

/** Titles and rows of a test file, in order. */
function testsIn(name: string): (readonly [title: string, rows: number])[] {
  // Comments may hold quotes that close nowhere.
  const text = read(name)
    .replace(/^\s*\/\/.*$/gm, '')
    .replace(/\/\*[\s\S]*?\*\//g, '')
  return [...text.matchAll(/\b(?:it|test)(\.each)?\(/g)].map((found) => {
    const open = found.index + found[0].length - 1
    const end = closing(text, open)
    const inside = text.slice(open + 1, end).trim()
    const rows = found[1] ? rowsOf(tableIn(text, inside)) : 1
    const titled = found[1] ? text.slice(text.indexOf('(', end) + 1).trim() : inside
    const title = /^(['"`])((?:\\.|(?!\1).)*)\1/.exec(titled)?.[2]
    return [title?.replaceAll("\\'", "'") ?? titled.slice(0, 40), rows]
  })
}

const all = Object.values(SORTED).flat()
const rowsOfKind = (kind: Kind): number =>
  all.filter((one) => one[2] === kind).reduce((sum, [, rows]) => sum + rows, 0)

test.each(files)('every test of %s stands once in the table, with its rows, and none other', (name) => {
  const sorted = SORTED[name.replace('.test.ts', '')] ?? []
  expect(sorted.map(([title, rows]) => [title, rows])).toEqual(testsIn(name))
})

test('the table is of files that are there', () => {
  expect(Object.keys(SORTED).sort()).toEqual(files.map((name) => name.replace('.test.ts', '')).sort())
})

test('printed values name work and tolerance, code names whose it is', () => {
  for (const [title, , kind, source] of all) {
    if (kind === 'printed') expect(source, title).toMatch(/.{10,}: \S/)
    // As wide as that is a range, and not counted.
    if (COUNTED.includes(kind))
      for (const [, percent] of (source ?? '').matchAll(/(\d+(?:\.\d+)?) %/g))
        expect(Number(percent), title).toBeLessThan(15)
    if (kind === 'code') expect(source, title).toBeTruthy()
  }
})

test('nothing is checked that the app never calls', () => {
  const sources = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter(
    (path) => /\.tsx?$/.test(path) && !path.endsWith('engine/index.ts'),
  )
  const text = sources.map((path) => readFileSync(`${SRC}${path}`, 'utf8')).join('\n')
  for (const name of files)
    for (const [, names] of read(name).matchAll(/import \{([^}]*)\} from '\.\.\/\.\.\/src\/engine/g))
      for (const one of names!.split(',').map((item) => item.trim())) {
        if (one === '' || one.startsWith('type ')) continue
        const uses = text.match(new RegExp(`\\b${one}\\b`, 'g'))?.length ?? 0
        expect(uses, `${one} of ${name}`).toBeGreaterThanOrEqual(2)
      }
})

describe('the engine’s own account', () => {
  const readme = read('../../src/engine/README.md')

  test.each<[Kind, string]>([
    ['printed', 'printed value'],
    ['code', 'independent code'],
    ['closed', 'closed form'],
    ['memory', 'from memory'],
    ['itself', 'table against itself'],
    ['wide', 'wide range, or not met'],
  ])('%s', (kind, told) => {
    expect(readme).toMatch(new RegExp(`\\| ${told} +\\| ${rowsOfKind(kind)} +\\|`))
  })

  test('counts the first three', () => {
    const counted = COUNTED.reduce((sum, kind) => sum + rowsOfKind(kind), 0)
    expect(counted).toBeGreaterThanOrEqual(150)
    expect(readme).toContain(`${counted} checks`)
  })
})

test('the count itself: brackets one level in, or bare items', () => {
  expect(rowsOf('[[1, 2], [3, [4]], [5]]')).toBe(3)
  expect(rowsOf("['a', 'b']")).toBe(2)
  expect(tableIn('const A: readonly X[] = [\n  [1],\n  [2],\n]\n', 'A')).toContain('[2]')
})
