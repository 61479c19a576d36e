import { kilnForm } from './en/kiln-form.ts'
import { byLanguage } from './languages.ts'

/** Words of a kiln and its measures, by language: fetched with what asks for them. */
export const KILN_FORM_WORDS = byLanguage<typeof kilnForm>(kilnForm, (all) => all.kilnForm)
