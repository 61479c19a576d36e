/**
 * The texts of a language as a PO file of GNU gettext, which translators have many editors for, and back. A folder of
 * words is given as a map from file names to sources; nothing here touches the disk.
 */
import { po } from 'gettext-parser'
import { nameOf } from './leaves.mjs'
import { IN_BRACES, isBlank, namesOf, paired, SINGULAR, textsOf } from './texts.mjs'

/** On the way to what is said of a form that a language's counts come in. */
const FORM = /^is(Zero|One|Two|Few|Many)\(.+\)\+$/

/** Counts that one of two or more texts is said of, as a translator is told where it is not just one alone. */
function countsOf(way, code) {
  const form = FORM.exec(way.at(-1) ?? '')?.[1].toLowerCase()
  if (!form) return []
  const rules = new Intl.PluralRules(code)
  const such = Array.from({ length: 120 }, (_, n) => n).filter((n) => rules.select(n) === form)
  return such.join() === '1' ? [] : [`Counts such as ${such.slice(0, 5).join(', ')}.`]
}

/**
 * The PO file of a language: English as `msgid`, the language as `msgstr`, empty where it is still English.
 * @param {string} code As the platform names it: `es`.
 * @param {Map<string, string>} englishFolder
 * @param {Map<string, string>} folder
 * @returns {string}
 */
export function writePo(code, englishFolder, folder) {
  const { entries, alone } = paired(textsOf(englishFolder), textsOf(folder))
  const translations = {}
  for (const entry of entries) {
    const { one, more, english, englishMore, context } = entry
    const texts = more ? [one, more] : [one]
    translations[context] = {
      [english.text]: {
        msgctxt: context,
        msgid: english.text,
        ...(more ? { msgid_plural: englishMore.text } : {}),
        msgstr: texts.map((it) => (isBlank(entry, code) ? '' : it.text)),
        comments: {
          reference: texts.map((it) => `src/words/${code}/${it.file}:${it.line}`).join(' '),
          extracted: [english.comment || one.comment, ...countsOf(one.way, code)].filter(Boolean).join('\n'),
        },
      },
    }
  }
  const rules = new Intl.PluralRules(code)
  const headers = {
    Language: code,
    'MIME-Version': '1.0',
    'Content-Type': 'text/plain; charset=utf-8',
    'Content-Transfer-Encoding': '8bit',
    'Plural-Forms': `nplurals=2; plural=${rules.select(0) === 'one' ? '(n > 1)' : '(n != 1)'};`,
    'X-Note': `What is in braces is filled in; a number in braces is a text of its own, [{1}] after its place.${
      alone.length > 0 ? ` Grammar in code, not here: ${namesOf(alone).join(', ')}.` : ''
    }`,
  }
  const file = { charset: 'utf-8', headers, translations: { '': {}, ...translations } }
  return `${po.compile(file, { foldLength: 110 }).toString()}\n`
}

/**
 * Takes an edited PO file back.
 * @param {string} text The PO file.
 * @param {string} code Of the language it has to be in.
 * @param {Map<string, string>} englishFolder
 * @param {Map<string, string>} folder
 * @returns {{ changed: Map<string, string>, texts: number, left: string[], wrong: string[] }} Sources that changed and
 * how many texts in them; entries left out as doubtful or of another English than today's; what is wrong, for which
 * nothing of the file should be kept.
 * @throws {Error} where it is no PO file.
 */
export function readPo(text, code, englishFolder, folder) {
  const file = po.parse(text)
  const texts = textsOf(folder)
  const byContext = new Map(paired(textsOf(englishFolder), texts).entries.map((it) => [it.context, it]))
  const edits = []
  const left = []
  const wrong =
    file.headers.Language === code ? [] : [`it is in ${file.headers.Language || 'no language'}, not ${code}`]
  for (const message of Object.values(file.translations).flatMap((it) => Object.values(it))) {
    const { msgctxt: context = '', msgid, msgid_plural: plural = '', msgstr, comments } = message
    if (msgid === '' || msgstr.every((it) => it === '')) continue
    const entry = byContext.get(context)
    if (!entry) wrong.push(`${context}: there is no such text`)
    else if (/\bfuzzy\b/.test(comments?.flag ?? '')) left.push(`${context}: marked as fuzzy`)
    else if (msgid !== entry.english.text || plural !== (entry.englishMore?.text ?? ''))
      left.push(`${context}: the English is another now`)
    else if (msgstr.length !== (entry.more ? 2 : 1) || msgstr.includes(''))
      wrong.push(`${context}: not all of its forms are there`)
    else {
      const said = [
        [entry.one, entry.english],
        [entry.more, entry.englishMore],
      ]
      for (const [i, to] of msgstr.entries()) {
        const [here, english] = said[i]
        if (to === here.text) continue
        const sources = sourcesBeside(here, texts)
        const why = whyNot(to, here, english, sources)
        if (why) wrong.push(`${context}: ${why}`)
        else edits.push({ here, to, sources })
      }
    }
  }
  const changed = new Map()
  for (const file of new Set(edits.map(({ here }) => here.file))) {
    const source = folder.get(file)
    changed.set(
      file,
      patched(
        source,
        { start: 0, end: source.length },
        edits.filter((it) => it.here.file === file),
      ),
    )
  }
  const after = new Map(textsOf(changed).map((it) => [it.key, it.text]))
  for (const { here, to } of edits)
    if (after.get(here.key) !== to) wrong.push(`${here.key}: cannot be written as: ${to}`)
  return { changed, texts: edits.length, left, wrong }
}

const holesIn = (text) => [...text.matchAll(IN_BRACES)].map(([, name]) => name)

/** Why a text cannot stand where `here` does, undefined where it can. */
function whyNot(text, here, english, sources) {
  if (/[{}]/.test(text.replace(IN_BRACES, ''))) return 'a brace without its other one'
  if (/[\n\r\t]/.test(text)) return 'it breaks a line'
  // Of one alone, its number need not be said.
  const free = nameOf(SINGULAR.exec(here.way.at(-1) ?? '')?.[1] ?? '')
  const filled = (said) =>
    holesIn(said)
      .filter((it) => it !== free)
      .sort()
      .join(', ')
  const known = english.holes.every(
    ({ name, source }) => sources.has(name) || (name === source && /^\w+$/.test(name)),
  )
  const said = holesIn(text)
  const allowed = [here.text, ...(known ? [english.text] : [])].map(filled)
  if (allowed.includes(filled(text)) && said.filter((it) => it === free).length <= 1) return
  const list = (names) => names.map((it) => `{${it}}`).join(' ') || 'nothing'
  return `it is filled with ${list(said)}, and has to be with ${list(holesIn(here.text))}`
}

/** What may stand in braces there, by name: what its text has now, else what other texts of that function have. */
const sourcesBeside = (here, texts) =>
  new Map(
    [...texts.filter((it) => it.file === here.file && it.path === here.path), here].flatMap((it) =>
      it.holes.map(({ name, source }) => [name, source]),
    ),
  )

/** A stretch of a source with its edits made, those in what fills a text as well. */
function patched(source, { start, end }, edits) {
  const inside = edits.filter(({ here }) => here.start >= start && here.end <= end)
  const outer = inside.filter(
    ({ here }) => !inside.some((it) => it.here.start < here.start && here.end < it.here.end),
  )
  let text = ''
  let done = start
  for (const { here, to, sources } of outer.toSorted((a, b) => a.here.start - b.here.start)) {
    const own = here.holes.map((hole) => [
      hole.name,
      patched(
        source,
        hole,
        inside.filter((it) => it.here !== here),
      ),
    ])
    text += source.slice(done, here.start) + sourceOf(to, new Map([...sources, ...own]))
    done = here.end
  }
  return text + source.slice(done, end)
}

/** A text as it stands in a source. */
function sourceOf(text, sources) {
  const unseen = (it) => `\\u${it.charCodeAt(0).toString(16).padStart(4, '0')}`
  const escaped = (it, quote) =>
    it
      .replaceAll('\\', '\\\\')
      .replaceAll(quote, `\\${quote}`)
      .replace(/[\u00a0\u00ad\u2000-\u200f\u2011\u2028-\u202f\u2060\ufeff]/g, unseen)
  if (holesIn(text).length > 0) {
    const raw = escaped(text, '`').replaceAll('${', '\\${')
    return `\`${raw.replace(IN_BRACES, (_, name) => `\${${sources.get(name) ?? name}}`)}\``
  }
  const quote = text.includes("'") && !text.includes('"') ? '"' : "'"
  return `${quote}${escaped(text, quote)}${quote}`
}
