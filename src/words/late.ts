import type { Language } from './bench.ts'
import { end } from './en/end.ts'
import { other } from './en/other.ts'
import { why } from './en/why.ts'

/** Words of the bench that its first cards do without. */
export type LateWords = typeof other & {
  readonly end: typeof end
  readonly why: typeof why
}

/** By language; fetched with what says them. */
export const LATE_WORDS = { en: { ...other, end, why } } satisfies Record<Language, LateWords>
