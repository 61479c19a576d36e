import { cool } from './en/cool.ts'
import { byLanguage } from './languages.ts'

/** Words of a load while it cools, by language: fetched with the lines that say them. */
export const COOL_WORDS = byLanguage<typeof cool>(cool, (all) => all.cool)
