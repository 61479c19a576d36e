import type { Language } from './bench.ts'
import { end } from './en/end.ts'
import { why } from './en/why.ts'

/** Words of the bench that its first cards do without. */
export interface LateWords {
  readonly end: typeof end
  readonly why: typeof why
}

/** By language; fetched with what says them. */
export const LATE_WORDS = { en: { end, why } } satisfies Record<Language, LateWords>
