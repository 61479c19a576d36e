import type { Language } from './bench.ts'
import { passing } from './en/passing.ts'

/** By language: words of passing to another phone, which few ever fetch. */
export const PASSING_WORDS = { en: passing } satisfies Record<Language, typeof passing>
