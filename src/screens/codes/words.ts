import { PASSING_WORDS } from '../../words/passing.ts'
import { useApp } from '../app.ts'

export const usePassingWords = () => PASSING_WORDS[useApp().table.value.settings.language]
