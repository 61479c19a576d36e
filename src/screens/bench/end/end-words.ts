import { LATE_WORDS, type LateWords } from '../../../words/late.ts'
import { useApp } from '../../app.ts'

export type EndWords = LateWords['end']

/** Words of the end of a sitting. */
export const useEndWords = (): EndWords => LATE_WORDS[useApp().table.value.settings.language].end
