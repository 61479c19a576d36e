import type { DeskWords } from './desk.ts'
import { meeting } from './en/meeting.ts'
import { byLanguage } from './languages.ts'

/** Words of what phones that met have in two ways, by language: no other screen waits for them. */
export const MEETING_WORDS = byLanguage<typeof meeting>(meeting, (all) => all.meeting)

/** Those of the screens for clean hands with them. */
export type MeetingWords = DeskWords & { readonly meeting: typeof meeting }
