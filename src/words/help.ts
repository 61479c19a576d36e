import { help } from './en/help.ts'
import { byLanguage } from './languages.ts'

/** Words of the help, by language: its page alone waits for them. */
export const HELP_WORDS = byLanguage<typeof help>(help, (all) => all.help)
