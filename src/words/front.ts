import { front } from './en/front.ts'
import { byLanguage } from './languages.ts'

export type FrontWords = typeof front

/** The first screen's words by language. */
export const FRONT_WORDS = byLanguage<FrontWords>(front, (all) => all.front)
