import { which } from './en/which.ts'
import { byLanguage } from './languages.ts'

/** Words of telling pots apart after the fire, by language: fetched with the page that says them. */
export const WHICH_WORDS = byLanguage<typeof which>(which, (all) => all.which)
