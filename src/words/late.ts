import { between } from './en/between.ts'
import { end } from './en/end.ts'
import { other } from './en/other.ts'
import { warned } from './en/warned.ts'
import { why } from './en/why.ts'
import { byLanguage } from './languages.ts'

/** Words of the bench that its first cards do without. */
export type LateWords = typeof other &
  typeof warned & {
    readonly between: typeof between
    readonly end: typeof end
    readonly why: typeof why
  }

/** By language; fetched with what says them. */
export const LATE_WORDS = byLanguage<LateWords>({ ...other, ...warned, between, end, why }, (all) => all.late)
