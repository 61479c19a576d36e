import type { Language } from './bench.ts'
import { kilnPages } from './en/kiln-pages.ts'

/** Words of the shelf ticket and of what is put right or said late, by language: fetched with what says them. */
export const KILN_PAGE_WORDS = { en: kilnPages } satisfies Record<Language, typeof kilnPages>
