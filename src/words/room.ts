import { room } from './en/room.ts'
import { byLanguage } from './languages.ts'

/** Words of the room and of what a phone keeps, by language: few other screens say any of them. */
export const ROOM_WORDS = byLanguage<typeof room>(room, (all) => all.room)
