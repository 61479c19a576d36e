import type { Language } from './bench.ts'
import { kiln } from './en/kiln.ts'

/** By language: what is called of the kiln, which the bench doesn't wait for. */
export const KILN_WORDS = { en: kiln } satisfies Record<Language, typeof kiln>
