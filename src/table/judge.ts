import { mostDecant } from './collar.ts'
import type { Judge } from './judged.ts'
import { warningsFor } from './warnings.ts'

/** Judges by the engine's word. */
export const judge: Judge = { warnings: warningsFor, decant: mostDecant }
