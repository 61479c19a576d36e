import type { AppGuess, Fault, PhotoSide, RunFacts, Stuck, SubjectFacts } from './opening.ts'

interface OfPot {
  readonly potId: string
  /** Left out of a pot that was in no load here. */
  readonly loadId?: string
}

/**
 * What can have happened once pots are fired, and what was said of all that was taught. A judgement is named by its record, and left out of what teaches, or taken in
 * again, by `lesson-dropped` with that name.
 */
export type OpeningHappening =
  /** Before the lid: where a person thinks that the melt ends, and what the app thought then. Without `mm`: the app alone. */
  | ({ readonly kind: 'guessed'; readonly mm?: number | 'shelf'; readonly app?: AppGuess } & OfPot)
  /** Out of the kiln; `place` is where it stood, as 2.4, where that is known. It leaves the board for good. */
  | ({ readonly kind: 'taken-out'; readonly place?: string } & OfPot)
  /** `second`: a later look at a pot that was judged, which says nothing of the run. A later first look stands. */
  | ({
      readonly kind: 'judged'
      readonly run?: RunFacts
      readonly stuck?: Stuck
      readonly faults: readonly Fault[]
      readonly second?: true
    } & OfPot)
  /** The picture itself is in a store of its own. `bytes` is its size. */
  | ({
      readonly kind: 'photo-kept'
      readonly photoId: string
      readonly side: PhotoSide
      readonly bytes: number
    } & OfPot)
  /**
   * The person took what `of` results say: so many times as told, 10th and 90th percentile, the longest drip so many times
   * as far as the front. Of 0: as told again. `results` are the judgements that it was taken from, or that were refused.
   */
  | ({
      readonly kind: 'lesson-taken'
      readonly factor: number
      readonly low: number
      readonly high: number
      readonly of: number
      readonly drip?: number
      readonly results?: readonly string[]
    } & SubjectFacts)
  /** The same of the dry coat from which a glaze crawls; of one over another, of both together. */
  | ({
      readonly kind: 'limit-taken'
      readonly limitMm: number
      readonly of: number
      readonly results?: readonly string[]
    } & SubjectFacts)
  /** A heater, a fan: which board dries faster is learned anew from here on. Not `changed`: the last change was none. */
  | { readonly kind: 'room-changed'; readonly changed: boolean }

/** Kinds of {@link OpeningHappening}. */
export const OPENING_KINDS = [
  'guessed',
  'taken-out',
  'judged',
  'photo-kept',
  'lesson-taken',
  'limit-taken',
  'room-changed',
] as const satisfies readonly OpeningHappening['kind'][]
const KINDS: readonly string[] = OPENING_KINDS

/** Whether it happened once pots were fired. */
export const isOfOpening = (event: { readonly kind: string }): event is OpeningHappening =>
  KINDS.includes(event.kind)
