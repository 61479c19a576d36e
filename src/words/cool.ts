import type { Language } from './bench.ts'
import { cool } from './en/cool.ts'

/** Words of a load while it cools, by language: fetched with the lines that say them. */
export const COOL_WORDS = { en: cool } satisfies Record<Language, typeof cool>
