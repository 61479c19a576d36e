import type { Language } from './bench.ts'
import { meet } from './en/meet.ts'

/** By language: words of passing to another phone, which few ever fetch. */
export const MEET_WORDS = { en: meet } satisfies Record<Language, typeof meet>
