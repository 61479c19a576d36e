import { ROOM_WORDS } from '../../words/room.ts'
import { useApp } from '../app.ts'

/** Words of the room, which other screens do without. */
export const useRoomWords = () => ROOM_WORDS[useApp().table.value.settings.language]
