import { add } from './en/add.ts'
import { byLanguage } from './languages.ts'

/** Words of adding pots, by language: other screens do without. */
export const ADD_WORDS = byLanguage<typeof add>(add, (all) => all.add)
