import type { Language } from './bench.ts'
import type { DeskWords } from './desk.ts'
import { meeting } from './en/meeting.ts'

/** Words of what phones that met have in two ways, by language: no other screen waits for them. */
export const MEETING_WORDS = { en: meeting } satisfies Record<Language, typeof meeting>

/** Those of the screens for clean hands with them. */
export type MeetingWords = DeskWords & { readonly meeting: typeof meeting }
