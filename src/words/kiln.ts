import { kiln } from './en/kiln.ts'
import { byLanguage } from './languages.ts'

/** By language: what is called of the kiln, which the bench doesn't wait for. */
export const KILN_WORDS = byLanguage<typeof kiln>(kiln, (all) => all.kiln)
