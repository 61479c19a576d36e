import type {
  AirFacts,
  BoardFacts,
  BucketFacts,
  CoatFacts,
  FiringFacts,
  Handout,
  KilnReading,
  PairFacts,
  Place,
  PotFacts,
  Settings,
  StackFacts,
  TileFacts,
} from '../../../shared/nouns.ts'
import type { MeetingAction } from './ask.ts'
import type { LoadAction } from './load-action.ts'
import type { OpeningAction } from './opening-action.ts'

/** What a person can mean by a hit. Screens send these; `decide` answers with events or a refusal. */
export type Action =
  | LoadAction
  | OpeningAction
  | MeetingAction
  // The big bar and its second answer
  | { readonly do: 'waxed'; readonly potId: string }
  | { readonly do: 'wiped'; readonly potId: string }
  | { readonly do: 'stirred'; readonly bucketId: string; readonly decantLitres?: number }
  | { readonly do: 'start'; readonly potId: string; readonly again: boolean; readonly unstirred: boolean }
  | { readonly do: 'cancel-count'; readonly dipId: string }
  | { readonly do: 'stop'; readonly dipId: string }
  | { readonly do: 'sponged'; readonly potId: string }
  | { readonly do: 'touched'; readonly potIds: readonly string[]; readonly dry: boolean }
  | { readonly do: 'foot-signed'; readonly potId: string }
  | { readonly do: 'returned'; readonly bucketId: string }
  | { readonly do: 'settle-dose'; readonly dipId: string }
  | { readonly do: 'hold' }
  | { readonly do: 'resume' }
  // Other and put right
  | { readonly do: 'take-back' }
  | { readonly do: 'put-back' }
  | { readonly do: 'pick'; readonly potId: string; readonly bucketId?: string; readonly touch?: true }
  | { readonly do: 'put-off'; readonly potIds: readonly string[]; readonly later: boolean }
  /** These coats are left out, each on its pot: index in the pot's plan. */
  | {
      readonly do: 'leave-out'
      readonly coats: readonly { readonly potId: string; readonly coat: number }[]
    }
  /** `by`: whose dip it was; left out, of the hands that say so. */
  | { readonly do: 'logged'; readonly potId: string; readonly agoMin: number; readonly by?: 0 | 1 }
  | { readonly do: 'was-other-hands'; readonly dipId: string }
  | { readonly do: 'held-longer'; readonly dipId: string; readonly byS: number }
  | { readonly do: 'held-exactly'; readonly dipId: string; readonly holdS: number }
  | { readonly do: 'was-earlier'; readonly dipId: string; readonly byMin: number }
  | { readonly do: 'was-other-pot'; readonly dipId: string; readonly potId: string }
  | { readonly do: 'was-other-bucket'; readonly dipId: string; readonly bucketId: string }
  | { readonly do: 'wash-off'; readonly potId: string }
  | { readonly do: 'keep-going'; readonly potId: string }
  /** What is on stays; what is to come follows another stack. */
  | { readonly do: 'restack'; readonly potId: string; readonly stackId: string }
  | { readonly do: 'pour-inside'; readonly potId: string }
  | { readonly do: 'touched-up'; readonly potId: string }
  | { readonly do: 'wax-pan'; readonly is: 'on' | 'watched' | 'off' }
  /** `litres`: how much is in it by then. `left`: this step of the end is left out. */
  | { readonly do: 'lid-on'; readonly bucketId: string; readonly litres?: number; readonly left?: true }
  | { readonly do: 'tools-washed'; readonly left?: true }
  | { readonly do: 'floor-mopped'; readonly left?: true }
  | { readonly do: 'count-coats'; readonly potId: string; readonly coats: number | null }
  /** `sure`: though its coats hardly weigh so. */
  | {
      readonly do: 'weigh'
      readonly potId: string
      readonly grams: number
      readonly as: 'bisque' | 'now'
      readonly sure?: boolean
    }
  | { readonly do: 'gone'; readonly potId: string }
  | { readonly do: 'dose-unsure'; readonly dipId: string }
  | { readonly do: 'clock-moved'; readonly byMs: number }
  // Clean hands
  | { readonly do: 'set-settings'; readonly settings: Partial<Settings> }
  | { readonly do: 'set-board'; readonly board: BoardFacts }
  | { readonly do: 'set-air'; readonly air: AirFacts }
  | {
      readonly do: 'drop-lesson'
      readonly potId: string
      readonly lessonId: string
      readonly dropped: boolean
    }
  /** Which board dries faster is learned anew from now on; not `changed`: the last change was none. */
  | { readonly do: 'change-room'; readonly changed: boolean }
  | {
      readonly do: 'set-bucket'
      readonly bucket: Omit<BucketFacts, 'bucketId'> & { readonly bucketId?: string }
    }
  | { readonly do: 'remove-bucket'; readonly bucketId: string }
  | {
      readonly do: 'refill'
      readonly bucketId: string
      readonly litres: number
    }
  | { readonly do: 'read-level'; readonly bucketId: string; readonly litres: number }
  | { readonly do: 'sieved'; readonly bucketId: string }
  | { readonly do: 'set-pair'; readonly pair: PairFacts }
  /** The pot goes to this place; a pot that stands there changes places with it. */
  | { readonly do: 'move'; readonly potId: string; readonly place: Place }
  | { readonly do: 'read-density'; readonly bucketId: string; readonly gramsPerMl: number }
  | { readonly do: 'set-stack'; readonly stack: Omit<StackFacts, 'stackId'> & { readonly stackId?: string } }
  | { readonly do: 'remove-stack'; readonly stackId: string }
  /** Of a class, the pots of one person or all of them. */
  | { readonly do: 'take-handout'; readonly handout: Handout; readonly name?: string }
  | {
      readonly do: 'set-pot'
      /** Without a number or a place the next free one is taken. */
      readonly pot: Omit<PotFacts, 'potId' | 'number' | 'place'> &
        Partial<Pick<PotFacts, 'potId' | 'number' | 'place'>>
      readonly copies?: number
      /** With a lid of its own: on the next place, with these coats. */
      readonly lid?: { readonly stackId: string }
      /** The pot that it is to be like: coats of its own and a catch slab go with it, to lids as well. */
      readonly likePotId?: string
    }
  | { readonly do: 'set-plan'; readonly potId: string; readonly coats: readonly CoatFacts[] }
  | { readonly do: 'read-tile'; readonly tile: Omit<TileFacts, 'tileId'> }
  | { readonly do: 'remove-tile'; readonly tileId: string }
  | { readonly do: 'plan-firing'; readonly firing: FiringFacts }
  | { readonly do: 'log-firing'; readonly log: readonly KilnReading[] }
  | { readonly do: 'set-slab'; readonly potId: string; readonly slab: boolean }
  | { readonly do: 'lay-demo' }
  | { readonly do: 'clear-table' }

/** Why a hit changed nothing, and what would be accepted. `code` picks the words, `facts` fill them. */
export interface Refusal {
  readonly code: RefusalCode
  readonly field?: string
  readonly facts?: Readonly<Record<string, string | number>>
}

export type RefusalCode =
  | 'nothing-to-do'
  | 'unknown-pot'
  | 'unknown-bucket'
  | 'unknown-stack'
  | 'unknown-dip'
  | 'counting'
  | 'not-counting'
  | 'held'
  | 'other-hands'
  | 'bucket-busy'
  | 'stir-first'
  | 'has-it-already'
  | 'other-bucket'
  | 'not-its-step'
  | 'number-taken'
  | 'place-taken'
  | 'letter-taken'
  | 'in-use'
  | 'out-of-range'
  /** Far from what was told: asked about. */
  | 'odd-weight'
  | 'too-long'
  | 'hidden-letters'
  | 'missing'
  | 'no-such-pot'
  | 'not-a-cone'
  | 'unknown-tile'
  | 'nothing-to-take-back'
  | 'nothing-to-put-back'
  | 'read-only'
  | 'unread'
  /** Not so at the kiln: `field` says why, in the words of its own screen. */
  | 'at-kiln'
