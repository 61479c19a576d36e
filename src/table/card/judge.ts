import { mostDecant } from '../advice/collar.ts'
import { adviceFor } from '../advice/warnings.ts'
import type { Judge } from './judged.ts'

/** Judges by the engine's word. */
export const judge: Judge = { advice: adviceFor, decant: mostDecant }
