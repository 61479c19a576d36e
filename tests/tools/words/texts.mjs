/** The texts of a folder of words, given as a map from file names to sources, and the English each stands for. */
import { leavesOf } from './leaves.mjs'

/** Units and names, alike in every language. */
const ALIKE = ['s', 'min', 'h', 'g', 'mL', 'C', 'F', 'UTC', 'Bucketside', 'Seger']

/** On the way to what is said of one alone. */
export const SINGULAR = /^isOne\((.+)\)\+$/

/** What is filled into a text. */
export const IN_BRACES = /\{([^{}]*)\}/g

/**
 * @typedef {import('./leaves.mjs').Leaf & { file: string, key: string }} Text
 * @typedef {{ one: Text, more?: Text, english: Text, englishMore?: Text, context: string }} Entry
 */

/**
 * All texts of a folder. `key` names a text as long as it stays where it is.
 * @param {Map<string, string>} folder
 * @returns {Text[]}
 */
export function textsOf(folder) {
  return [...folder].flatMap(([file, source]) => {
    const seen = new Map()
    return leavesOf(source).map((leaf) => {
      const key = contextOf(file, leaf.path, leaf.way)
      const nth = (seen.get(key) ?? 0) + 1
      seen.set(key, nth)
      return { ...leaf, file, key: nth === 1 ? key : `${key} #${nth}` }
    })
  })
}

/** The name of what stands on one way inside a text of a file. */
export const contextOf = (file, path, way) =>
  `${file.replace(/\.ts$/, '')}/${path}${way.length > 0 ? ` [${way.join(', ')}]` : ''}`

/** Texts of a language beside the English they stand for, but for what says nothing; `alone`: those without any. */
export function paired(english, language) {
  const by = new Map(english.map((it) => [it.key, it]))
  const last = new Map(english.map((it) => [contextOf(it.file, it.path, []), it]))
  /** The English on the same way, else nearest to its root. */
  const englishOf = (text) => {
    if (by.has(text.key)) return by.get(text.key)
    for (let steps = text.way.length; steps >= 0; steps--) {
      const found = by.get(contextOf(text.file, text.path, text.way.slice(0, steps)))
      if (found) return found
    }
    return last.get(contextOf(text.file, text.path, []))
  }
  /** @type {Entry[]} */
  const entries = []
  const alone = []
  let skip
  for (const [i, text] of language.entries()) {
    if (text === skip) continue
    const english = englishOf(text)
    const next = language[i + 1]
    const way = text.way.slice(0, -1)
    const counted = SINGULAR.exec(text.way.at(-1) ?? '')?.[1]
    if (!english) alone.push(text)
    else if (english.text === '') continue
    else if (
      counted !== undefined &&
      next?.path === text.path &&
      next.way.join() === [...way, `isOne(${counted})-`].join()
    ) {
      skip = next
      const context = contextOf(text.file, text.path, way)
      entries.push({ one: text, more: next, english, englishMore: englishOf(next), context })
    } else entries.push({ one: text, english, context: text.key })
  }
  return { entries, alone }
}

/** In English still, or in words that are the same in both, of which only a translator can tell. */
const isUntranslated = (text, english) =>
  text.text === english.text &&
  (text.text.replace(IN_BRACES, '').match(/\p{L}+/gu) ?? []).some((word) => !ALIKE.includes(word))

/**
 * How much of a language there is.
 * @param {string} code
 * @param {Map<string, string>} englishFolder
 * @param {Map<string, string>} folder
 * @returns {{ texts: number, english: number, alone: string[] }} Entries, those still in English, and what is grammar in
 * code, which no PO file holds.
 */
export function tallyOf(code, englishFolder, folder) {
  const { entries, alone } = paired(textsOf(englishFolder), textsOf(folder))
  const english = entries.filter((it) => isBlank(it, code)).length
  return { texts: entries.length, english, alone: namesOf(alone) }
}

/** Texts by the names they have outside. */
export const namesOf = (texts) => [...new Set(texts.map((it) => contextOf(it.file, it.path, [])))]

/** Whether an entry is to be translated still. */
export const isBlank = ({ one, more, english, englishMore }, code) =>
  code !== 'en' && isUntranslated(one, english) && (!more || isUntranslated(more, englishMore))
