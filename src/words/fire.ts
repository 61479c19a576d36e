import { fire } from './en/fire.ts'
import { byLanguage } from './languages.ts'

/** Words of a load in the fire, by language: fetched with the card that says them. */
export const FIRE_WORDS = byLanguage<typeof fire>(fire, (all) => all.fire)
