/** A further language, one that tells four counts apart, made in a copy of the project as a contributor makes one. */
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { runnerImport } from 'vite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { edited, messagesIn, wordsFolder } from '../../fixtures/translated.ts'

const root = new URL('../../../', import.meta.url)
const copy = mkdtempSync(join(tmpdir(), 'language-'))
const inCopy = (path: string) => join(copy, path)

function run(...command: readonly string[]): { readonly status: number | null; readonly said: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: copy, encoding: 'utf8' })
  return { status, said: stdout + stderr }
}
const words = (...task: readonly string[]) => run('tests/tools/words.mjs', ...task)

/** What the copy says, set to the new language. */
async function said() {
  interface Probe {
    readonly LANGUAGES: readonly string[]
    readonly languageOf: (code: string) => string
    readonly WORDS: Record<string, { bench: { hold: string; stirWaiting: (n: number) => string } }>
  }
  const { module } = await runnerImport<Probe>(inCopy('src/probe.ts'), {
    root: copy,
    configFile: false,
    logLevel: 'silent',
  })
  return module
}

beforeAll(() => {
  const parts = [
    'shared',
    'src',
    'tests/tools',
    'package.json',
    'package-lock.json',
    '.biome.json',
    '.gitignore',
  ]
  for (const part of parts)
    cpSync(new URL(part, root), inCopy(part), { recursive: true, preserveTimestamps: true })
  symlinkSync(new URL('node_modules', root), inCopy('node_modules'))
  writeFileSync(
    inCopy('src/probe.ts'),
    `import { openLanguage } from './words/languages.ts'
export { LANGUAGES, languageOf } from './words/languages.ts'
export { WORDS } from './words/bench.ts'
await openLanguage('dsb', 'en', () => import('./words/dsb/index.ts'))
`,
  )
})
afterAll(() => rmSync(copy, { recursive: true }))

describe('a further language', () => {
  it('is a folder and a word in one list, in English until it is translated, and types hold', async () => {
    expect(words('new', 'dsb')).toMatchObject({ status: 0 })
    expect([...wordsFolder('dsb', pathToFileURL(`${copy}/`)).keys()]).toEqual(
      [...wordsFolder('es').keys()].filter((file) => file !== 'clocks.ts'),
    )
    expect(run('node_modules/.bin/tsc', '-b', 'src')).toEqual({ status: 0, said: '' })
    const { LANGUAGES, languageOf, WORDS } = await said()
    expect(LANGUAGES).toContain('dsb')
    expect(languageOf('dsb')).toBe('dsb')
    expect(WORDS.dsb?.bench.hold).toBe('Pause')
    expect(WORDS.dsb?.bench.stirWaiting(3)).toBe('3 pots wait for it')
    expect(words('new', 'dsb').status).toBe(1)
  }, 180_000)

  it('says what a translator writes, each of its counts in its own way', async () => {
    expect(words('write', 'dsb', 'dsb.po')).toMatchObject({ status: 0 })
    const fresh = readFileSync(inCopy('dsb.po'), 'utf8')
    const counted = [...messagesIn(fresh)].filter(([context]) => context.includes('bench.stirWaiting'))
    expect(counted.map(([, { msgstr }]) => msgstr)).toEqual([[''], [''], [''], ['']])
    const say: Record<string, string> = { 'cards/cards.bench.hold': 'Pawza' }
    for (const [i, text] of ['nic', '{n} (2)', '{n} (3, 4)', '{n} (5)'].entries())
      say[counted[i]?.[0] ?? ''] = text
    const text = edited(fresh, (message, context) => {
      if (context in say) message.msgstr = [say[context] ?? '']
    })
    writeFileSync(inCopy('dsb.po'), text)
    expect(words('read', 'dsb', 'dsb.po').said).toBe('5 texts changed in 1 files.\n')
    const { WORDS } = await said()
    expect(WORDS.dsb?.bench.hold).toBe('Pawza')
    const counts = [1, 101, 2, 3, 4, 5, 102]
    expect(counts.map((n) => WORDS.dsb?.bench.stirWaiting(n))).toEqual([
      'nic',
      'nic',
      '2 (2)',
      '3 (3, 4)',
      '4 (3, 4)',
      '5 (5)',
      '102 (2)',
    ])
  })

  it('keeps nothing of a file in which anything is wrong', () => {
    const before = wordsFolder('dsb', pathToFileURL(`${copy}/`))
    const text = edited(readFileSync(inCopy('dsb.po'), 'utf8'), (message, context) => {
      if (context === 'cards/cards.bench.hold') message.msgstr = ['Pawza!']
      if (context === 'cards/cards.bench.stirTitle') message.msgstr = ['Mich']
    })
    writeFileSync(inCopy('dsb.po'), text)
    const { status, said: why } = words('read', 'dsb', 'dsb.po')
    expect(status).toBe(1)
    expect(why).toContain('cards/cards.bench.stirTitle')
    expect(wordsFolder('dsb', pathToFileURL(`${copy}/`))).toEqual(before)
  })
})
