import type { spanish as all } from './es/index.ts'

/** What a phone may be set to; `phone`: as it speaks itself. */
export type Language = 'phone' | 'en' | 'es'

let phone = 'en'
let spanish: typeof all | undefined

/**
 * Says what the phone speaks, as its browser tells it, and fetches the words that `language` needs beside English, which
 * is there for what could not be fetched. Called before anything is drawn, as words don't change under a face.
 */
export async function openLanguage(language: Language, phonesOwn: string): Promise<void> {
  phone = phonesOwn
  if (wanted(language) === 'es') spanish = (await import('./es/index.ts').catch(() => undefined))?.spanish
}

const wanted = (language: Language): 'en' | 'es' =>
  language === 'phone' ? (phone.startsWith('es') ? 'es' : 'en') : language

/** The language that is spoken and written where this is set. */
export const languageOf = (language: Language): 'en' | 'es' => (spanish ? wanted(language) : 'en')

/** What the voice speaks: as is written, where nothing else was chosen. */
export const voiceOf = (set: { readonly language: Language; readonly spoken: Language }): 'en' | 'es' =>
  set.spoken === 'phone' ? languageOf(set.language) : set.spoken

/** By which numbers and dates are written: English of no land, Spanish of the phone's own. */
export const tagOf = (language: Language): string =>
  languageOf(language) === 'en' ? 'en' : phone.startsWith('es') ? phone : 'es'

/** Some words by language: `of` finds them in what is fetched for Spanish. */
export const byLanguage = <W>(en: W, of: (words: typeof all) => W): Readonly<Record<Language, W>> => ({
  en,
  get es() {
    return spanish ? of(spanish) : en
  },
  get phone() {
    return this[wanted('phone')]
  },
})
