import { type Language, WORDS, type Words } from './bench.ts'
import { desk } from './en/desk.ts'
import { LATE_WORDS, type LateWords } from './late.ts'

/** The words of the bench and, under `desk`, those of the screens for clean hands. */
export type DeskWords = Words & LateWords & { readonly desk: typeof desk }

/** By language, as {@link WORDS}: kept apart so that the bench doesn't wait for them. */
export const DESK_WORDS = { en: { ...WORDS.en, ...LATE_WORDS.en, desk } } satisfies Record<
  Language,
  DeskWords
>
