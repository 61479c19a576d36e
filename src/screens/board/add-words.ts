import { ADD_WORDS } from '../../words/add.ts'
import { useDesk } from '../desk/desk-app.ts'

/** Words of adding pots, which other screens do without. */
export const useAddWords = () => ADD_WORDS[useDesk().table.value.settings.language]
