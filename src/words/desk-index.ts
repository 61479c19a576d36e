import { desk } from './desk.ts'
import type { Language, Words } from './index.ts'

/** The words of the bench and, under `desk`, those of the screens for clean hands, which load later. */
export type DeskWords = Words & { readonly desk: typeof desk }

/** By language, as {@link WORDS}: kept apart so that the bench doesn't wait for them. */
export const DESK_WORDS = { en: desk } satisfies Record<Language, typeof desk>
