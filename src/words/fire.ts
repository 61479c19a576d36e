import type { Language } from './bench.ts'
import { fire } from './en/fire.ts'

/** Words of a load in the fire, by language: fetched with the card that says them. */
export const FIRE_WORDS = { en: fire } satisfies Record<Language, typeof fire>
