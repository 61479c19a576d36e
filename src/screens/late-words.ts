import { LATE_WORDS, type LateWords } from '../words/late.ts'
import { useApp } from './app.ts'

/** Words that the first cards do without. */
export const useLateWords = (): LateWords => LATE_WORDS[useApp().table.value.settings.language]
