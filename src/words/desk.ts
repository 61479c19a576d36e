import { BENCH_WORDS, type BenchWords } from './bench.ts'
import { desk } from './en/desk.ts'
import type { Language } from './first-cards.ts'

/** The words of the bench and, under `desk`, those of the screens for clean hands. */
export type DeskWords = BenchWords & { readonly desk: typeof desk }

/** By language, as {@link FIRST_CARD_WORDS}: kept apart so that the bench doesn't wait for them. */
export const DESK_WORDS = { en: { ...BENCH_WORDS.en, desk } } satisfies Record<Language, DeskWords>
