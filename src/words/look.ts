import { look } from './en/look.ts'
import { byLanguage } from './languages.ts'

/** Words of the melt look-ahead, by language: fetched with it. */
export const LOOK_WORDS = byLanguage<typeof look>(look, (all) => all.look)
