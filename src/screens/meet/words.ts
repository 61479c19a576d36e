import { MEET_WORDS } from '../../words/meet.ts'
import { useApp } from '../app.ts'

export const useMeetWords = () => MEET_WORDS[useApp().table.value.settings.language]
