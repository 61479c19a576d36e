import { type LanguageCode, VOICES, type VoiceLanguage } from '../../shared/languages.ts'
import type { AllWords } from './en/all.ts'
import { writeNumbersIn } from './number.ts'

export { LANGUAGES, VOICES } from '../../shared/languages.ts'

/** What a phone may be set to; `phone`: as it speaks itself. */
export type Language = 'phone' | LanguageCode

let phone = 'en'
const opened: { [code: string]: AllWords | undefined } = {}

/**
 * Says what the phone speaks, as its browser tells it, and fetches the words that `language` needs beside English, which
 * is there for what could not be fetched. Called before anything is drawn, as words don't change under a face.
 * `folder`: fetches the words of a language that has some.
 */
export async function openLanguage(
  language: Language,
  phonesOwn: string,
  folder: (code: string) => Promise<{ readonly words: AllWords }> | undefined,
): Promise<void> {
  phone = phonesOwn
  const code = wanted(language)
  opened[code] ??= (await folder(code)?.catch(() => undefined))?.words
  writeNumbersIn(tagOf(language))
}

const wanted = (language: Language): string => (language === 'phone' ? phone.replace(/-.*/, '') : language)

/** The language that is spoken and written where this is set: English for one that isn't here. */
export const languageOf = (language: Language): LanguageCode =>
  opened[wanted(language)] ? (wanted(language) as LanguageCode) : 'en'

/** What the voice speaks: as is written, where nothing else was chosen and there are clips of it. */
export function voiceOf(set: {
  readonly language: Language
  readonly spoken: 'phone' | VoiceLanguage
}): VoiceLanguage {
  const code = set.spoken === 'phone' ? languageOf(set.language) : set.spoken
  return VOICES.find((it) => it === code) ?? 'en'
}

/** By which numbers and dates are written: English of no land, others of the phone's own. */
export function tagOf(language: Language): string {
  const code = languageOf(language)
  return code !== 'en' && phone.startsWith(code) ? phone : code
}

/** Some words by language: `of` finds them in what is fetched for one besides English. */
export const byLanguage = <W>(en: W, of: (words: AllWords) => W): Readonly<Record<Language, W>> =>
  new Proxy({} as Record<Language, W>, {
    get(_, language) {
      const words = opened[wanted(language as Language)]
      return words ? of(words) : en
    },
  })
