import { mostDecant } from '../advice/collar.ts'
import { warningsFor } from '../advice/warnings.ts'
import type { Judge } from './judged.ts'

/** Judges by the engine's word. */
export const judge: Judge = { warnings: warningsFor, decant: mostDecant }
