import { broken } from './en/broken.ts'
import { byLanguage } from './languages.ts'

/** Words of a screen that failed, by language: fetched with what stands in its place. */
export const BROKEN_WORDS = byLanguage<typeof broken>(broken, (all) => all.broken)
