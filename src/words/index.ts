import { en } from './en.ts'

export type Words = typeof en

/** Every text a person reads, by language. A new language is a new file of the same shape. */
export const WORDS = { en } satisfies Record<string, Words>

export type Language = keyof typeof WORDS
