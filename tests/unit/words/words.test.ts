import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { DESK_WORDS } from '../../../src/words/desk.ts'
import { end } from '../../../src/words/en/end.ts'
import { FIRE_WORDS } from '../../../src/words/fire.ts'
import { KILN_FORM_WORDS } from '../../../src/words/kiln-form.ts'
import { LANGUAGES, languageOf, tagOf, voiceOf } from '../../../src/words/languages.ts'
import { PASSING_WORDS } from '../../../src/words/passing.ts'
import { openWords } from '../../fixtures/languages.ts'
import { everyText, texts } from '../../fixtures/texts.ts'

/** What is written alike in both: names. */
const ALIKE = ['.name', '.desk.melt.firing.makes.seger']

// Words are the phone's, and the phone is that of all tests.
afterAll(() => openWords('en', 'en'))

describe.each(LANGUAGES)('%s', (language) => {
  let all: [string, string][]
  let desk: (typeof DESK_WORDS)['en']['desk']
  beforeAll(async () => {
    await openWords(language, 'en')
    all = everyText(language)
    desk = DESK_WORDS[language].desk
  })

  test('no text has a hole in it', () => {
    expect(all.length).toBeGreaterThan(200)
    for (const [path, text] of all) {
      expect(text, path).not.toMatch(/undefined|null|NaN|\[object/)
    }
  })

  test('food safety is nowhere claimed', () => {
    for (const [path, text] of all) {
      if (!/\b(food|dinnerware|eat|alimentos|vajilla|comer)\b/i.test(text)) continue
      expect(text, path).toMatch(/cannot|never|not|\bno\b|nunca/i)
    }
  })

  test('what is said beside a field fits under it', () => {
    for (const [path, text] of texts(desk.wrong)) expect(text.length, path).toBeLessThanOrEqual(40)
  })

  test('every fact that English says is said', () => {
    const numbered = (n: number) => `fact-${n}-`
    const factsOf = (text = '') => [...new Set(text.match(/fact-\d+-/g))].sort()
    const said = new Map(everyText(language, numbered))
    for (const [path, en] of everyText('en', numbered))
      expect(factsOf(said.get(path)), path).toEqual(factsOf(en))
  })

  test('what a tile says fits on a tile', () => {
    for (const [path, text] of texts(desk.board.state)) expect(text.length, path).toBeLessThanOrEqual(6)
    for (const [path, text] of texts(desk.board.kiln)) expect(text.length, path).toBeLessThanOrEqual(11)
  })
})

describe('Spanish', () => {
  const numbered = (n: number) => `fact-${n}-`
  let pairs: { path: string; en: string; es: string }[]
  beforeAll(async () => {
    await openWords('es', 'es-MX')
    const spanish = new Map(everyText('es', numbered))
    pairs = everyText('en', numbered).map(([path, en]) => ({ path, en, es: spanish.get(path) ?? '' }))
  })

  test('leaves nothing in English', () => {
    const alike = pairs.filter(({ en, es }) => en === es && /[a-z]{4}/i.test(en.replaceAll(/fact-\d+-/g, '')))
    expect(alike.map(({ path }) => path)).toEqual(ALIKE)
  })

  test('is spoken where the phone is Spanish, and where it is chosen', async () => {
    await openWords('phone', 'es-MX')
    expect([languageOf('phone'), languageOf('en'), languageOf('es')]).toEqual(['es', 'en', 'es'])
    expect(tagOf('phone')).toBe('es-MX')
    await openWords('es', 'de')
    expect([languageOf('phone'), languageOf('es'), tagOf('es')]).toEqual(['en', 'es', 'es'])
  })

  test('gives way to English where a newer program chose a language that is not here', async () => {
    const unknown = 'qx' as 'es'
    await openWords(unknown, 'es-MX')
    expect([languageOf(unknown), tagOf(unknown)]).toEqual(['en', 'en'])
    expect(voiceOf({ language: unknown, spoken: unknown })).toBe('en')
    expect(DESK_WORDS[unknown].bench.hold).toBe('Pause')
  })
})

describe('Spanish of hours and lists', () => {
  beforeAll(() => openWords('es', 'es-MX'))

  test('gives an hour its article, and a day none', () => {
    const { down, glassFrom } = FIRE_WORDS.es
    expect(down('6', '18:20')).toBe('Cono 6 caído a las 18:20')
    expect(down('6', '1:05 p.m.')).toBe('Cono 6 caído a la 1:05 p.m.')
    expect(down('6', 'ayer 18:20')).toBe('Cono 6 caído ayer 18:20')
    expect(down('6', '3 de marzo 18:20')).toBe('Cono 6 caído 3 de marzo 18:20')
    expect(glassFrom('01:40')).toBe('Demasiado frío para dar vapor hasta la 01:40.')
    expect(glassFrom('11:40')).toBe('Demasiado frío para dar vapor hasta las 11:40.')
  })

  test('says of which moment a load is, and counts shelves', () => {
    const { loadOf } = DESK_WORDS.es.desk.shelf
    expect(['18:01', 'ayer 18:01', 'lunes 18:01'].map(loadOf)).toEqual([
      'Hornada de las 18:01',
      'Hornada de ayer 18:01',
      'Hornada del lunes 18:01',
    ])
    const { round, halfBox } = KILN_FORM_WORDS.es.shelves
    expect([round(5), round(1), halfBox(4)]).toEqual(['5 redondas', '1 redonda', '4 medias cuadradas'])
  })

  test('says e before the sound of i', () => {
    const { take } = PASSING_WORDS.es.handout
    expect(take(['Brezo', 'Musgo', 'Iris'])).toBe('¿Tomar Brezo, Musgo e Iris?')
    expect(take(['Brezo', 'Musgo'])).toBe('¿Tomar Brezo y Musgo?')
  })
})

describe('a range over midnight', () => {
  test('names the day that it begins on', () => {
    expect(end.days('', 'tomorrow')).toBe('today – tomorrow')
    expect(end.days('tomorrow', 'Thursday')).toBe('tomorrow – Thursday')
    expect(end.days('', '')).toBe('')
  })
})
