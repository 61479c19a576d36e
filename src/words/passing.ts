import { passing } from './en/passing.ts'
import { byLanguage } from './languages.ts'

/** By language: words of passing to another phone, which few ever fetch. */
export const PASSING_WORDS = byLanguage<typeof passing>(passing, (all) => all.passing)
