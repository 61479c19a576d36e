import { kilnCare } from './en/kiln-care.ts'
import { byLanguage } from './languages.ts'

/** What to mind at the kiln, by language: fetched with the cards and pages that say it. */
export const KILN_CARE_WORDS = byLanguage<typeof kilnCare>(kilnCare, (all) => all.kilnCare)
