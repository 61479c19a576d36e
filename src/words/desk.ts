import { WORDS, type Words } from './bench.ts'
import { desk } from './en/desk.ts'
import { deskRefusal } from './en/desk-refusals.ts'
import { byLanguage } from './languages.ts'
import { LATE_WORDS, type LateWords } from './late.ts'

/** The words of the bench and, under `desk`, those of the screens for clean hands. */
export type DeskWords = Words &
  LateWords & { readonly desk: typeof desk; readonly refusal: typeof deskRefusal }

/** By language, as {@link WORDS}: kept apart so that the bench doesn't wait for them. */
export const DESK_WORDS = byLanguage<DeskWords>(
  { ...WORDS.en, ...LATE_WORDS.en, desk, refusal: { ...WORDS.en.refusal, ...deskRefusal } },
  (all) => all.desk,
)
