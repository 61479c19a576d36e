import { back } from './en/back.ts'
import { byLanguage } from './languages.ts'

/** Words of looking back, by language: fetched with its pages alone. */
export const BACK_WORDS = byLanguage<typeof back>(back, (all) => all.back)
