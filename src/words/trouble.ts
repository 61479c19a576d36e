import { trouble } from './en/trouble.ts'
import { byLanguage } from './languages.ts'

export type TroubleWords = typeof trouble

/** By language. */
export const TROUBLE_WORDS = byLanguage<typeof trouble>(trouble, (all) => all.trouble)
