import { firstCards } from './en/first-cards.ts'
import { other } from './en/other.ts'
import { waits } from './en/waits.ts'
import type { Language, Words } from './first-cards.ts'

/** All words of the bench: those of its first cards and those that are fetched after them. */
export type BenchWords = Words & typeof other & { readonly bench: typeof waits }

/** By language, as {@link FIRST_CARD_WORDS}. */
export const BENCH_WORDS = {
  en: { ...firstCards, ...other, bench: { ...firstCards.bench, ...waits } },
} satisfies Record<Language, BenchWords>
