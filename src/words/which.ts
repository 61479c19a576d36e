import type { Language } from './bench.ts'
import { which } from './en/which.ts'

/** Words of telling pots apart after the fire, by language: fetched with the page that says them. */
export const WHICH_WORDS = { en: which } satisfies Record<Language, typeof which>
