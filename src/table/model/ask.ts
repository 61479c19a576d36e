import type { KilnFacts } from '../../../shared/load.ts'
import type {
  BoardFacts,
  BucketFacts,
  ClassPlan,
  FiringFacts,
  PairFacts,
  PotFacts,
  Settings,
  StackFacts,
} from '../../../shared/nouns.ts'

/** Who said or did something, and when, table time, ms. */
export interface Said {
  /** The other phone; left out, this one. */
  readonly from?: string
  readonly at: number
}

/** A thing as one phone has it. */
export type ThingFacts =
  | { readonly is: 'pot'; readonly facts: PotFacts }
  | { readonly is: 'stack'; readonly facts: StackFacts }
  | { readonly is: 'bucket'; readonly facts: BucketFacts }
  /** A pot's own coats. */
  | { readonly is: 'plan'; readonly facts: ClassPlan['plans'][number] }
  /** The stack that it got in place of its coats. */
  | { readonly is: 'restacked'; readonly facts: Pick<PotFacts, 'potId' | 'stackId'> }
  /** One thing of a dip as it was put right. */
  | {
      readonly is: 'dip'
      readonly facts: {
        readonly dipId: string
        readonly potId?: string
        readonly dry?: true
        readonly bucketId?: string
        readonly holdS?: number
        /** Table time, ms. */
        readonly outAt?: number
      }
    }
  /** The clay of all pots. */
  | { readonly is: 'board'; readonly facts: BoardFacts }
  /** Settings of the table, each by itself where two phones have it otherwise. */
  | { readonly is: 'settings'; readonly facts: Partial<Settings> }
  /** The glaze firing to come, a kiln with its furniture, how often a glaze over another came out well. */
  | { readonly is: 'firing'; readonly facts: FiringFacts }
  | { readonly is: 'kiln'; readonly facts: KilnFacts }
  | { readonly is: 'pair'; readonly facts: PairFacts }

/** What another phone alone changed of all that is the table's, and how this phone had it, if it had. */
export interface Heard extends Said {
  readonly thing: ThingFacts
  readonly before?: ThingFacts
  /** Under which it is kept that it was read: what it is of, what this phone said of it last, and what it is now. */
  readonly key: string
}

/** One dip of a coat that was counted on more than one phone. */
export interface TwiceDipped extends Said {
  readonly dipId: string
  readonly hit: string
}

/** What phones that met have in two ways, and somebody has to say: both stand until then. */
export type Ask =
  /** One coat of a pot was dipped on two phones. */
  | {
      readonly is: 'coat'
      readonly potId: string
      readonly bucketId: string
      readonly dips: readonly [TwiceDipped, TwiceDipped]
    }
  /** Two or more changed it, none knowing of another. */
  | { readonly is: 'changed'; readonly ways: readonly (ThingFacts & Said)[] }
  /** One took it off the table, by those hits, and another did something to it. */
  | {
      readonly is: 'gone'
      readonly potId: string
      readonly hits: readonly string[]
      readonly gone: Said
      readonly used: Said
    }
  /** The same of a bucket or a stack. `neededBy`: the stack or the pot that cannot be without it. */
  | {
      readonly is: 'removed'
      readonly thing: Extract<ThingFacts, { is: 'bucket' | 'stack' }>
      readonly gone: Said
      readonly used: Said
      readonly neededBy?: string | number
    }
  /** Changed by other phones alone, and not read here yet. */
  | { readonly is: 'heard'; readonly all: readonly Heard[] }
  /** Two pots with one number, on one place, or two buckets with one letter: the one that was here first is first. */
  | { readonly is: 'number' | 'place'; readonly potIds: readonly [string, string] }
  | { readonly is: 'letter'; readonly bucketIds: readonly [string, string] }

/** What was answered. */
export type Answer =
  /** Both dips went on, or the one of this id never did, but `wentOn`. */
  | { readonly is: 'both'; readonly dipIds: readonly [string, string] }
  | { readonly is: 'never'; readonly dipId: string; readonly wentOn: string }
  | { readonly is: 'so'; readonly thing: ThingFacts }
  /** It is off the table, or never was taken off. */
  | { readonly is: 'off'; readonly potId: string }
  | { readonly is: 'there'; readonly potId: string; readonly hits: readonly string[] }
  | { readonly is: 'away'; readonly thing: 'bucket' | 'stack'; readonly id: string }
  /** This one gets another: the next number, the next free place or letter. */
  | { readonly is: 'number' | 'place'; readonly potId: string }
  | { readonly is: 'letter'; readonly bucketId: string }

export type MeetingAction =
  /** What a phone wrote up to this order was taken in; `aheadMs`: so far its clock is ahead of this one's, ms, where it was compared. */
  | { readonly do: 'meet'; readonly phone: string; readonly upTo: number; readonly aheadMs?: number }
  | { readonly do: 'settle'; readonly answer: Answer }
