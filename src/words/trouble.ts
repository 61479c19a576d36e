import { trouble } from './en/trouble.ts'
import type { Language } from './first-cards.ts'

export type TroubleWords = typeof trouble

/** By language. */
export const TROUBLE_WORDS = { en: trouble } satisfies Record<Language, TroubleWords>
