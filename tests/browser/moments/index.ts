import { desk, firstVisit, lone } from './desk.ts'
import { end } from './end.ts'
import { kiln } from './kiln.ts'
import { lidded } from './lid.ts'
import { calls, crowded, manyPots, marks, pouring, warned } from './many-pots.ts'
import { onePot } from './one-pot.ts'
import { opening } from './opening.ts'
import { free, late, order, touch, two } from './order.ts'
import { phone, slips } from './slips.ts'
import type { Story } from './story.ts'

export { speakSpanish } from '../tongue.ts'
export { keepSoundInTime, type See, type Story } from './story.ts'

/** Every card of the bench and every screen, each at a moment when it can be looked at. */
export const STORIES: readonly Story[] = [
  firstVisit,
  onePot,
  manyPots,
  calls,
  order,
  free,
  late,
  two,
  touch,
  warned,
  crowded,
  marks,
  pouring,
  slips,
  phone,
  lidded,
  end,
  kiln,
  opening,
  lone,
  desk,
]
