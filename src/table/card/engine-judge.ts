/** The judge that {@link judged} asks, on the engine: fetched after the first card. */

import { mostDecant } from '../advice/collar.ts'
import { levelNow } from '../advice/fill.ts'
import { adviceFor } from '../advice/warnings.ts'
import type { Judge } from './judged.ts'

export const judge: Judge = { advice: adviceFor, decant: mostDecant, level: levelNow }
