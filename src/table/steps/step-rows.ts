/**
 * One row a step: what the board, the list after a hold, the wait list, the bar, the voice and a knock make of it is
 * read off here. How a pot comes to a step, and leaves it, stands in `steps.ts`.
 */

import type { Step } from './steps.ts'

/** What the board's tile says of a pot at a step. */
export type PotTileName =
  | 'wait'
  | 'ready'
  | 'next'
  | 'later'
  | 'wax'
  | 'wipe'
  | 'dip'
  | 'count'
  | 'foot'
  | 'check'
  | 'kiln'
  | 'stuck'

/** What is said of a pot when the hands come back after a hold: what the hands were at first, what goes on by itself last. */
export const HELD_RANK = [
  'drips',
  'foot-not-sponged',
  'ready',
  'dip-next',
  'wax',
  'wipe',
  'foot-check',
  'wait',
] as const

export type HeldAt = (typeof HELD_RANK)[number]

interface StepRow {
  readonly tile: PotTileName
  /** Not said after a hold where it is left out. */
  readonly held?: HeldAt
  /** What comes due by itself, on the wait card. */
  readonly due?: StepDue
}

/** What a clock brings to the hands. */
export type StepDue = 'wax-sets' | 'wipe-dries' | 'damp-dries' | 'touch'

export const STEP_ROWS: Readonly<Record<Step['is'], StepRow>> = {
  wax: { tile: 'wax', held: 'wax' },
  'wax-sets': { tile: 'wait', due: 'wax-sets' },
  wipe: { tile: 'wipe', held: 'wipe' },
  'wipe-dries': { tile: 'wait', due: 'wipe-dries' },
  'damp-dries': { tile: 'wait', due: 'damp-dries' },
  dip: { tile: 'dip', held: 'dip-next' },
  count: { tile: 'count' },
  drip: { tile: 'foot', held: 'drips' },
  foot: { tile: 'foot', held: 'foot-not-sponged' },
  wait: { tile: 'wait', held: 'wait', due: 'touch' },
  touch: { tile: 'ready', held: 'ready' },
  'foot-check': { tile: 'check', held: 'foot-check' },
  kiln: { tile: 'kiln' },
  stuck: { tile: 'stuck' },
}

/** A step that the hands do on one pot with one hit of the bar. Its card, its bar and its words go by its name. */
interface HandStep {
  /** The action of its bar, and the event that is kept. */
  readonly done: 'waxed' | 'wiped' | 'foot-signed'
  /** Where the pot keeps when it was done. */
  readonly at: 'waxedAt' | 'wipedAt' | 'footSignedAt'
  /** What the voice says before the pot's place: a word that has a clip. */
  readonly spoken: string
  /** In the simple order of a day: before the first dip of a bucket, or when no dip is left. */
  readonly when: 'before-dips' | 'after-dips'
  /** The planner has it in its order; any other step before the dips is done as soon as the hands are free. */
  readonly planned?: true
}

export const HAND_STEPS = {
  wax: { done: 'waxed', at: 'waxedAt', spoken: 'wax', when: 'before-dips', planned: true },
  wipe: { done: 'wiped', at: 'wipedAt', spoken: 'wipe', when: 'before-dips', planned: true },
  'foot-check': { done: 'foot-signed', at: 'footSignedAt', spoken: 'check the foot', when: 'after-dips' },
} as const satisfies Readonly<Partial<Record<Step['is'], HandStep>>>

export type HandStepName = keyof typeof HAND_STEPS

/** Whether a step, a card or a piece of work is one that hands do with one hit. */
export const isHandStep = (name: string): name is HandStepName => Object.hasOwn(HAND_STEPS, name)

const NAMES = Object.keys(HAND_STEPS).filter(isHandStep)

/** Hand steps of one part of the day, in their order. */
export const handStepsOf = (when: HandStep['when']): readonly HandStepName[] =>
  NAMES.filter((name) => HAND_STEPS[name].when === when)

/** Hand steps that come before the dips and that no order of work knows of. */
export const UNPLANNED: readonly HandStepName[] = NAMES.filter((name) => {
  const row: HandStep = HAND_STEPS[name]
  return row.when === 'before-dips' && !row.planned
})
