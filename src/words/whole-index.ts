import { en } from './en.ts'
import type { Language, Words } from './index.ts'
import { other } from './other.ts'
import { waits } from './waits.ts'

/** All words of the bench: those of its first cards and those that are fetched after them. */
export type WholeWords = Words & typeof other & { readonly bench: typeof waits }

/** By language, as {@link WORDS}. */
export const WHOLE_WORDS = {
  en: { ...en, ...other, bench: { ...en.bench, ...waits } },
} satisfies Record<Language, WholeWords>
