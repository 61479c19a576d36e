import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const root = new URL('../../../src/', import.meta.url)

/** Every screen and part of a screen. */
const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.tsx'))

/** Letters that stand in the markup itself: as text, or as what an attribute says. */
function textsIn(source: string): string[] {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '')
  const between = [
    ...code.matchAll(/(?<!=)>([^<>{}=;()]*)<\//g),
    ...code.matchAll(/\}([^<>{}=;():,.]*)<\/?[a-z]/g),
  ]
  const said = code.matchAll(/\b(?:label|title|alt|placeholder|aria-label|help|hint)="([^"]*)"/g)
  return [...between, ...said].map(([, text = '']) => text.trim()).filter((text) => /\p{L}/u.test(text))
}

test('the markup is looked through for letters', () => {
  expect(textsIn('<p>Stir it</p>')).toEqual(['Stir it'])
  expect(textsIn('<b>+{byS} s<small>x</small></b>')).toContain('s')
  expect(textsIn('<Field label="Density" />')).toEqual(['Density'])
  expect(files.length).toBeGreaterThan(50)
})

test.each(files)('%s says nothing that is not in src/words', (name) => {
  expect(textsIn(readFileSync(new URL(name, root), 'utf8'))).toEqual([])
})
