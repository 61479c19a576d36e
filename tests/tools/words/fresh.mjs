/** A new language: the folder of English under its name, to be translated text by text. */
import { parseSync } from 'vite'

/** Counts that a language may tell apart, in the order in which texts ask for them; the last is said of all others. */
const FORMS = ['zero', 'two', 'few', 'many', 'other']

const helperOf = (form) => `is${form[0].toUpperCase()}${form.slice(1)}`

/** Forms besides the singular that whole numbers of pots and days come in; the last needs no question. */
function formsOf(code) {
  const rules = new Intl.PluralRules(code)
  const used = new Set(Array.from({ length: 200 }, (_, n) => rules.select(n)))
  return FORMS.filter((form) => used.has(form)).slice(0, -1)
}

/**
 * Sources of a new language's folder, in English until they are translated; where it tells more counts apart than
 * English, each has a text of its own.
 * @param {string} code As the platform names it: `de`.
 * @param {Map<string, string>} english
 * @returns {Map<string, string>}
 * @throws {Error} where no language is named so.
 */
export function freshFolder(code, english) {
  const name = /^[a-z]{2,3}$/.test(code) && new Intl.DisplayNames('en', { type: 'language' }).of(code)
  if (!name || name === code) throw new Error(`${code}: two or three small letters that name a language`)
  const forms = formsOf(code)
  return new Map(
    [...english].map(([file, source]) => {
      const named = source.replace(/^(\s*(?:\/\*\*|\*).*)\bEnglish\b/gm, `$1${name}`)
      if (file === 'all.ts') return ['index.ts', indexOf(source, name)]
      if (file === 'counts.ts') return [file, countsIn(named, code, name, forms)]
      return [file, withForms(named, forms.map(helperOf))]
    }),
  )
}

const indexOf = (all, name) =>
  all
    .replace(/^export type AllWords.*\n/m, '')
    .replace(
      /^\/\*\*.*\*\/\n(?=export const words)/m,
      `/** All of ${name}, fetched at once before the first face is drawn. */\n`,
    )
    .replace('export const words =', 'export const words: AllWords =')
    .replace(/^/, "import type { AllWords } from '../en/all.ts'\n")

const countsIn = (source, code, name, forms) =>
  [
    source.replaceAll("PluralRules('en')", `PluralRules('${code}')`),
    ...forms.map((form) =>
      [
        `/** Whether ${name} says a count as one of the form "${form}". */`,
        `export function ${helperOf(form)}(n: number): boolean {`,
        `  rules ??= new Intl.PluralRules('${code}')`,
        `  return rules.select(n) === '${form}'`,
        '}\n',
      ].join('\n'),
    ),
  ].join('\n')

/** Asks for further forms wherever the singular is asked for; all of them say at first what others do. */
function withForms(source, helpers) {
  if (helpers.length === 0) return source
  let text = source
  for (let found = singularIn(text, helpers[0]); found; found = singularIn(text, helpers[0])) {
    const { test, alternate } = found
    const count = text.slice(test.arguments[0].start, test.arguments[0].end)
    const other = text.slice(alternate.start, alternate.end)
    const asked = helpers.map((helper) => `${helper}(${count}) ? (${other}) : `).join('')
    text = text.slice(0, alternate.start) + asked + text.slice(alternate.start)
  }
  return text.replace(/import \{ ([^}]*\bisOne\b[^}]*) \} from '\.\/counts\.ts'/, (_, names) => {
    const all = [...names.split(', '), ...helpers.filter((helper) => text.includes(`${helper}(`))]
    return `import { ${all.join(', ')} } from './counts.ts'`
  })
}

/** The first choice by the singular that does not ask for `helper` next. */
function singularIn(source, helper) {
  let found
  const calls = (node, name) => node?.type === 'CallExpression' && node.callee.name === name
  const walk = (node) => {
    if (found || node === null || typeof node !== 'object') return
    if (
      node.type === 'ConditionalExpression' &&
      calls(node.test, 'isOne') &&
      !(node.alternate.type === 'ConditionalExpression' && calls(node.alternate.test, helper))
    )
      found = node
    for (const it of Object.values(node)) walk(it)
  }
  walk(parseSync('words.ts', source, { lang: 'ts' }).program)
  return found
}

/**
 * The list of languages with one more.
 * @param {string} source `shared/languages.ts`.
 * @param {string} code
 * @returns {string}
 * @throws {Error} where it is there already.
 */
export function withLanguage(source, code) {
  if (new RegExp(`LANGUAGES = \\[.*'${code}'.*\\]`).test(source)) throw new Error(`${code} is there already`)
  return source.replace(/(LANGUAGES = \[.*)\]/, `$1, '${code}']`)
}
