import type { Language } from './bench.ts'
import { room } from './en/room.ts'

/** Words of the room and of what a phone keeps, by language: few other screens say any of them. */
export const ROOM_WORDS = { en: room } satisfies Record<Language, typeof room>
