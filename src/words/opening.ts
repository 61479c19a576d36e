import type { DeskWords } from './desk.ts'
import { opening } from './en/opening.ts'
import { byLanguage } from './languages.ts'

/** Words of the opening, by language: no other screen waits for them. */
export const OPENING_WORDS = byLanguage<typeof opening>(opening, (all) => all.opening)

/** Those of the screens for clean hands with them. */
export type OpeningWords = DeskWords & { readonly opening: typeof opening }
