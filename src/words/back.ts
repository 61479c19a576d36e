import type { Language } from './bench.ts'
import { back } from './en/back.ts'

/** Words of looking back, by language: fetched with its pages alone. */
export const BACK_WORDS = { en: back } satisfies Record<Language, typeof back>
