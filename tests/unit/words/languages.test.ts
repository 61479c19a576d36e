import { afterEach, describe, expect, test } from 'vitest'
import { WORDS } from '../../../src/words/bench.ts'
import { byLanguage, languageOf, tagOf, voiceOf } from '../../../src/words/languages.ts'
import { openWords } from '../../fixtures/languages.ts'

/** Other tests take the phone for one that speaks English. */
afterEach(() => openWords('en', 'en'))

describe('words as the phone itself speaks', () => {
  test.each([
    ['es', 'es', 'es'],
    ['es-MX', 'es', 'es-MX'],
    ['en-GB', 'en', 'en'],
    ['fr-FR', 'en', 'en'],
  ] as const)('on one that speaks %s they are %s, its numbers %s', async (phonesOwn, spoken, tag) => {
    // Spanish may have been fetched for somebody else: it is the phone that decides.
    await openWords('es', phonesOwn)
    await openWords('phone', phonesOwn)
    expect(byLanguage('knock', () => 'golpe').phone).toBe({ en: 'knock', es: 'golpe' }[spoken])
    expect(WORDS.phone).toBe(WORDS[spoken])
    expect(languageOf('phone')).toBe(spoken)
    expect(voiceOf({ language: 'phone', spoken: 'phone' })).toBe(spoken)
    expect(tagOf('phone')).toBe(tag)
  })

  test('a language that was chosen is spoken on any phone', async () => {
    await openWords('es', 'en-GB')
    expect(WORDS.es).not.toBe(WORDS.en)
    expect(languageOf('es')).toBe('es')
    expect(tagOf('es')).toBe('es')
    await openWords('en', 'es-MX')
    expect(languageOf('en')).toBe('en')
    expect(voiceOf({ language: 'en', spoken: 'es' })).toBe('es')
  })
})
