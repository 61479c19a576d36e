import type { Language } from './bench.ts'
import type { DeskWords } from './desk.ts'
import { opening } from './en/opening.ts'

/** Words of the opening, by language: no other screen waits for them. */
export const OPENING_WORDS = { en: opening } satisfies Record<Language, typeof opening>

/** Those of the screens for clean hands with them. */
export type OpeningWords = DeskWords & { readonly opening: typeof opening }
