import { kilnPages } from './en/kiln-pages.ts'
import { byLanguage } from './languages.ts'

/** Words of the shelf ticket and of what is put right or said late, by language: fetched with what says them. */
export const KILN_PAGE_WORDS = byLanguage<typeof kilnPages>(kilnPages, (all) => all.kilnPages)
