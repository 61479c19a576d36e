import { LOAD_KINDS, type LoadHappening } from './load-events.ts'
import type {
  AirFacts,
  BoardFacts,
  BucketFacts,
  CoatFacts,
  CoverFacts,
  FiringFacts,
  KilnReading,
  PairFacts,
  PotFacts,
  Settings,
  StackFacts,
  TileFacts,
} from './nouns.ts'
import { OPENING_KINDS, type OpeningHappening } from './opening-events.ts'

/**
 * Everything that can have happened at a table. Past tense, one noun each; the fold of these is the state.
 * Adding a kind is fine; changing the meaning of one needs a new journal version.
 */
export type TableEvent = TableHappening & {
  /** Which pair of hands at this phone it was; the first where nothing is said. */
  readonly hands?: 0 | 1
  /** Taken as another phone handed it on: no word of this phone's own on it. */
  readonly handed?: true
  /** The same, of a thing that stood here otherwise: this phone goes by it, others where nobody's own word stands. */
  readonly anew?: true
}

type TableHappening =
  | LoadHappening
  | OpeningHappening
  // Setting up
  | { readonly kind: 'settings-set'; readonly settings: Partial<Settings> }
  | { readonly kind: 'board-set'; readonly board: BoardFacts }
  | { readonly kind: 'air-set'; readonly air: AirFacts }
  | { readonly kind: 'bucket-set'; readonly bucket: BucketFacts }
  | { readonly kind: 'bucket-gone'; readonly bucketId: string }
  | { readonly kind: 'density-read'; readonly bucketId: string; readonly gramsPerMl: number }
  /** A new mix in the bucket: what was read of the one before is no longer of this one. */
  | { readonly kind: 'filled'; readonly bucketId: string; readonly fillId: string; readonly litres: number }
  | { readonly kind: 'level-read'; readonly bucketId: string; readonly litres: number }
  | { readonly kind: 'sieved'; readonly bucketId: string }
  | { readonly kind: 'pair-set'; readonly pair: PairFacts }
  | { readonly kind: 'stack-set'; readonly stack: StackFacts }
  | { readonly kind: 'stack-gone'; readonly stackId: string }
  | { readonly kind: 'pot-set'; readonly pot: PotFacts }
  | { readonly kind: 'pot-gone'; readonly potId: string }
  /** A fired flow tile was measured. */
  | { readonly kind: 'tile-read'; readonly tile: TileFacts }
  | { readonly kind: 'tile-gone'; readonly tileId: string }
  | { readonly kind: 'firing-planned'; readonly firing: FiringFacts }
  | { readonly kind: 'firing-logged'; readonly log: readonly KilnReading[] }
  /** The pot is to stand on a catch slab in the kiln, or no more. */
  | { readonly kind: 'slab-set'; readonly potId: string; readonly slab: boolean }
  | { readonly kind: 'demo-laid' }
  /** `read`: of what other phones wrote no more than was read by then, as `met` tells; left out, all that lies before. */
  | { readonly kind: 'table-cleared'; readonly read?: true }
  // At the bench
  | { readonly kind: 'waxed'; readonly potId: string; readonly implied: boolean }
  | { readonly kind: 'wiped'; readonly potId: string; readonly implied: boolean }
  | { readonly kind: 'stirred'; readonly bucketId: string }
  | { readonly kind: 'decanted'; readonly bucketId: string; readonly litres: number }
  | { readonly kind: 'returned'; readonly bucketId: string }
  | {
      readonly kind: 'dipped'
      readonly dipId: string
      readonly potId: string
      /** Index in the pot's plan. */
      readonly coat: number
      readonly bucketId: string
      readonly cover: CoverFacts
      readonly gramsPerMl: number
      readonly leadS: number
      readonly lowerS: number
      /** Planned seconds fully under. */
      readonly holdS: number
      /** OUT as planned, epoch ms. */
      readonly outAt: number
      readonly unstirred: boolean
      /** Entered afterwards, not counted. */
      readonly told: boolean
    }
  | { readonly kind: 'count-cancelled'; readonly dipId: string }
  | { readonly kind: 'count-stopped'; readonly dipId: string; readonly holdS: number; readonly outAt: number }
  /** The phone slept in the count: the dose is asked once. */
  | { readonly kind: 'dose-unsure'; readonly dipId: string }
  | { readonly kind: 'dose-settled'; readonly dipId: string }
  | {
      readonly kind: 'dip-corrected'
      readonly dipId: string
      readonly holdS?: number
      readonly outAt?: number
      readonly potId?: string
      /** With `potId`: START on that pot would have said that its coat was dry. */
      readonly dry?: true
      readonly bucketId?: string
      /** Whose dip it was, where it was not the hands' that hit. */
      readonly by?: 0 | 1
    }
  /** `dipId`: the dip whose foot it was; left out, the pot's latest. */
  | { readonly kind: 'sponged'; readonly potId: string; readonly implied: boolean; readonly dipId?: string }
  | { readonly kind: 'set-down'; readonly potId: string; readonly implied: boolean; readonly dipId?: string }
  /** `dipIds`: the dips whose coats were touched, pot by pot; left out, each pot's latest. */
  | {
      readonly kind: 'touched'
      readonly potIds: readonly string[]
      readonly dipIds?: readonly string[]
      readonly dry: boolean
    }
  /** On the scale: as bisque before its first coat, or as it is now, grams. */
  | {
      readonly kind: 'weighed'
      readonly potId: string
      readonly grams: number
      readonly as: 'bisque' | 'now'
    }
  /**
   * A touch, a weighing or a judgement no longer teaches, or does again; `lessonId` is the dip's, of a weighing, or the
   * record of the judgement.
   */
  | {
      readonly kind: 'lesson-dropped'
      readonly potId: string
      readonly lessonId: string
      readonly dropped: boolean
    }
  | { readonly kind: 'foot-signed'; readonly potId: string }
  /** Dropped or chipped glaze was dabbed, dried and smoothed: kept for judging. */
  | { readonly kind: 'touched-up'; readonly potId: string }
  /** The pan of hot wax: on, somebody is beside it, off. */
  | { readonly kind: 'wax-pan'; readonly is: 'on' | 'watched' | 'off' }
  /** The work ends: lid on the bucket, tools in the settling bucket, floor mopped wet. `left`: it was left out. */
  | { readonly kind: 'lid-on'; readonly bucketId: string; readonly left?: true }
  | { readonly kind: 'tools-washed'; readonly left?: true }
  | { readonly kind: 'floor-mopped'; readonly left?: true }
  | { readonly kind: 'washed-off'; readonly potId: string }
  /** Coats can't be told any more (false), or were counted by eye or scratch (true). */
  | { readonly kind: 'coats-counted'; readonly potId: string; readonly coats: number | null }
  | { readonly kind: 'plan-changed'; readonly potId: string; readonly coats: readonly CoatFacts[] }
  /** The hands took this pot, perhaps to another bucket than planned: the card follows. `touch`: to touch it only. */
  | { readonly kind: 'picked'; readonly potId: string; readonly bucketId?: string; readonly touch?: true }
  /** These pots go into a later firing, or come back to this one. */
  | { readonly kind: 'put-off'; readonly potIds: readonly string[]; readonly later: boolean }
  | { readonly kind: 'held' }
  | { readonly kind: 'resumed' }
  /** As an answer: `wentOn`, that dip of the coat went on and this one never did; `there`, that pot never left the table. */
  | { readonly kind: 'taken-back'; readonly hit: string; readonly wentOn?: string; readonly there?: string }
  | { readonly kind: 'put-back'; readonly hit: string }
  /** The phone's clock was set: later stamps are off by this much. */
  | { readonly kind: 'clock-moved'; readonly byMs: number }
  // Between phones
  /**
   * What another phone wrote, up to this order, was taken in. Where its clock was there to be compared, it is so far ahead
   * of this one's, both as they went before they were set, ms.
   */
  | { readonly kind: 'met'; readonly phone: string; readonly upTo: number; readonly aheadMs?: number }
  /** Earlier records of this name are this phone's own: its name was lost, or they came back in its backup. */
  | { readonly kind: 'was-named'; readonly phone: string }
  /** Two dips of one coat, counted on two phones: both went on. */
  | { readonly kind: 'both-dipped'; readonly dipIds: readonly string[] }

export type EventKind = TableEvent['kind']

/** An event with its identity and its moment, as the table folds it. `hit` is shared by what one hit caused. */
export interface Stamped {
  readonly id: string
  readonly hit: string
  /** Happened at, epoch ms of the phone that wrote it. */
  readonly at: number
  /** Whose record it is: the phone's name, a dot, and that of one opening. Left out, this phone's. */
  readonly writer?: string
  /** The other phone whose it is, as `table/fold/seen.ts` tells: then its moments are table time. */
  readonly from?: string
  /** What stays of others as a table is cleared, as `table/fold/clears.ts` tells: by its id, and what was of the whole table. */
  readonly left?: { readonly things: ReadonlySet<string>; readonly before: readonly Stamped[] }
  readonly event: TableEvent
}

const LISTED = [
  ...LOAD_KINDS,
  ...OPENING_KINDS,
  'settings-set',
  'board-set',
  'air-set',
  'bucket-set',
  'bucket-gone',
  'density-read',
  'filled',
  'level-read',
  'sieved',
  'pair-set',
  'stack-set',
  'stack-gone',
  'pot-set',
  'pot-gone',
  'tile-read',
  'tile-gone',
  'firing-planned',
  'firing-logged',
  'slab-set',
  'demo-laid',
  'table-cleared',
  'waxed',
  'wiped',
  'stirred',
  'decanted',
  'returned',
  'dipped',
  'count-cancelled',
  'count-stopped',
  'dose-unsure',
  'dose-settled',
  'dip-corrected',
  'sponged',
  'set-down',
  'touched',
  'weighed',
  'lesson-dropped',
  'foot-signed',
  'touched-up',
  'wax-pan',
  'lid-on',
  'tools-washed',
  'floor-mopped',
  'washed-off',
  'coats-counted',
  'plan-changed',
  'picked',
  'put-off',
  'held',
  'resumed',
  'taken-back',
  'put-back',
  'clock-moved',
  'met',
  'was-named',
  'both-dipped',
] as const satisfies readonly EventKind[]

/** All kinds: one that the list lacks is an error of its type. */
const KINDS: ReadonlySet<Exclude<EventKind, (typeof LISTED)[number]> extends never ? string : never> =
  new Set(LISTED)

/** Whether this program folds events of such a kind. */
export const isKnownKind = (kind: string): kind is EventKind => KINDS.has(kind)
