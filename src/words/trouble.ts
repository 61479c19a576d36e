import type { Language } from './bench.ts'
import { trouble } from './en/trouble.ts'

export type TroubleWords = typeof trouble

/** By language. */
export const TROUBLE_WORDS = { en: trouble } satisfies Record<Language, TroubleWords>
