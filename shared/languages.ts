/** Languages that texts are in, as the platform names them; each but English has its folder of words in `src/words`. */
export const LANGUAGES = ['en', 'es'] as const

/** Those that are spoken, by the clips in `public/voice`. */
export const VOICES = ['en', 'es'] as const

export type LanguageCode = (typeof LANGUAGES)[number]
export type VoiceLanguage = (typeof VOICES)[number]
