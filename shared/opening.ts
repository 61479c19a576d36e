/** Nouns of opened kilns that are stored in the journal. Lengths mm, along the outside wall from where the glaze ended. */

/**
 * How far the melt came down: not past the foot line nor to the eye (`none`, as GOOD says it), mean front and longest drip,
 * all of it onto the shelf, or seen and not measured. A front of 0 without a drip was measured: it did not move at all. A
 * drip reaches the shelf where most of the melt does not.
 */
export type RunFacts =
  | { readonly is: 'none' }
  | { readonly is: 'measured'; readonly mm: number; readonly longestMm?: number | 'shelf' }
  | { readonly is: 'shelf' }
  | { readonly is: 'some' }

/** It stuck to its shelf: came off with a tap, had to be ground off, or is lost. */
export type Stuck = 'tapped' | 'ground' | 'lost'
export const STUCK: readonly Stuck[] = ['tapped', 'ground', 'lost']

export type Fault =
  | 'crawled'
  | 'pinholed'
  | 'crazed'
  | 'blistered'
  | 'shivered'
  | 'dunted'
  | 'kissed'
  | 'dry'
  | 'bare'
  | 'bloated'
  | 'warped'
  | 'colour'
/** The two that have a key of their own first. */
export const FAULTS: readonly Fault[] = [
  'crawled',
  'pinholed',
  'crazed',
  'blistered',
  'shivered',
  'dunted',
  'kissed',
  'dry',
  'bare',
  'bloated',
  'warped',
  'colour',
]

/** What the app would have guessed, fixed with the person's guess: the 10th, 50th and 90th percentile. */
export interface AppGuess {
  readonly lowMm: number
  readonly likelyMm: number
  readonly highMm: number
  /** Bare wall down to the shelf: a guess of so much means on the shelf. */
  readonly roomMm: number
}

/** Whom a result teaches: a glaze by itself, or where it lies on another. */
export interface SubjectFacts {
  readonly bucketId: string
  readonly underId?: string
}

/** Which way a pot stood before the camera. */
export type PhotoSide = 'front' | 'back' | 'inside' | 'foot'
export const PHOTO_SIDES: readonly PhotoSide[] = ['front', 'back', 'inside', 'foot']
