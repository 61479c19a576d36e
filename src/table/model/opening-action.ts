import type { AppGuess, Fault, PhotoSide, RunFacts, Stuck, SubjectFacts } from '../../../shared/opening.ts'

interface OfPot {
  readonly potId: string
}

/** What a person can mean by a hit where fired pots are opened. The load of a pot is the latest it stands in. */
export type OpeningAction =
  | ({ readonly do: 'guess'; readonly mm: number | 'shelf'; readonly app?: AppGuess } & OfPot)
  /** Out of the kiln, to be judged later. */
  | { readonly do: 'take-out'; readonly potIds: readonly string[] }
  | ({
      readonly do: 'judge'
      readonly run: RunFacts
      readonly stuck?: Stuck
      readonly faults: readonly Fault[]
    } & OfPot)
  | ({ readonly do: 'look-again'; readonly faults: readonly Fault[] } & OfPot)
  | ({
      readonly do: 'keep-photo'
      readonly photoId: string
      readonly side: PhotoSide
      readonly bytes: number
    } & OfPot)
  /** `of` 0: as told again. */
  | ({
      readonly do: 'take-lesson'
      readonly factor: number
      readonly low: number
      readonly high: number
      readonly of: number
      readonly drip?: number
      readonly results?: readonly string[]
    } & SubjectFacts)
  /** `of` 0: the limit that the bucket was given. */
  | ({
      readonly do: 'take-limit'
      readonly limitMm: number
      readonly of: number
      readonly results?: readonly string[]
    } & SubjectFacts)
