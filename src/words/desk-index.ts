import { desk } from './desk.ts'
import type { Language } from './index.ts'
import { WHOLE_WORDS, type WholeWords } from './whole-index.ts'

/** The words of the bench and, under `desk`, those of the screens for clean hands. */
export type DeskWords = WholeWords & { readonly desk: typeof desk }

/** By language, as {@link WORDS}: kept apart so that the bench doesn't wait for them. */
export const DESK_WORDS = { en: { ...WHOLE_WORDS.en, desk } } satisfies Record<Language, DeskWords>
