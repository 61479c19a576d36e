import type { EventKind, Stamped } from '../../../shared/events.ts'
import type { KilnFacts } from '../../../shared/load.ts'
import type {
  AirFacts,
  BisqueWater,
  BoardFacts,
  CoatFacts,
  CoverFacts,
  FiringFacts,
  KilnReading,
  PairFacts,
  PotFacts,
  Settings,
  StackFacts,
  TileFacts,
} from '../../../shared/nouns.ts'
import type { OpeningHappening } from '../../../shared/opening-events.ts'
import type { Fill, LoadState, OffsetTaken } from './load-state.ts'

/** One dip as it stands now, corrections applied. Times are table time: epoch ms less the clock's own jumps. */
export interface DipState {
  readonly dipId: string
  readonly hit: string
  readonly coat: number
  readonly bucketId: string
  /** The bucket that was planned for this coat when it went on. */
  readonly plannedBucketId: string
  readonly cover: CoverFacts
  readonly gramsPerMl: number
  readonly tappedAt: number
  /** Fully under from here. */
  readonly underAt: number
  readonly outAt: number
  readonly holdS: number
  readonly lowerS: number
  readonly plannedHoldS: number
  readonly how: 'planned' | 'measured' | 'logged' | 'corrected'
  readonly unstirred: boolean
  /** How long before START its bucket had been stirred, where it went in unstirred; omitted, it never was. */
  readonly stirredAgoMs?: number
  readonly unsure: boolean
  /** The second pair of hands did it, or those at another phone. */
  readonly hands?: 1 | 2
  readonly spongedAt?: number
  readonly setDownAt?: number
}

export interface Touch {
  readonly at: number
  readonly dry: boolean
  /** The dip whose coat was touched. */
  readonly dipId: string
  /** The hit that said so: the answer of a hand, or START of the next coat. */
  readonly hit: string
}

export interface PotState {
  readonly facts: PotFacts
  /** The phone that put it on the table, where that is another one: whoever puts it right later has it no more than before. */
  readonly from?: string
  /** Its own coats where it left its stack. */
  readonly ownPlan?: readonly CoatFacts[]
  /** Its plan when its stack was changed after its first coat. */
  readonly begunPlan?: readonly CoatFacts[]
  /** Came wet: how, and said when. */
  readonly damp?: { readonly at: number; readonly water: Exclude<BisqueWater, 'dry'> }
  readonly waxedAt?: number
  readonly wipedAt?: number
  readonly dips: readonly DipState[]
  readonly touches: readonly Touch[]
  /** Weight as bisque, grams. */
  readonly bisqueG?: number
  readonly weighings: readonly { readonly at: number; readonly grams: number }[]
  /** Touches and weighings that the person took out of what teaches the room. */
  readonly dropped?: readonly string[]
  /** What the person took in: a fired pot teaches by it, though it be unsure which pot it was. */
  readonly takenIn?: readonly string[]
  readonly washedAt?: number
  readonly footSignedAt?: number
  readonly touchedUpAt?: number
  /** Coats can't be told: blocks the next dip until counted. */
  readonly uncounted: boolean
  /** Coats told by eye where the journal can't know. */
  readonly coatsCounted?: number
  /** It will stand on a catch slab in the kiln. */
  readonly slab?: boolean
  readonly gone: boolean
  /** It came of a plan that was handed on, and stands so, was set or changed by this phone itself, or is somebody else's by now. */
  readonly planned?: 'so' | 'changed' | 'away'
  /** The board's clay when it came out of the kiln: its own where it was in no load here. */
  readonly board?: BoardFacts
  /** The same of its glazes, by bucket. */
  readonly fills?: Readonly<Record<string, Fill>>
  /** It waits for a later firing: out of this sitting's order of work. */
  readonly later?: boolean
  /** What was seen of it once it was fired, as it was said, oldest first: `firedOf` reads it. */
  readonly fired?: readonly Seen<OfPot>[]
}

/** What happened once a kiln was open, with its record and its moment. */
export interface Seen<Event extends OpeningHappening = OpeningHappening> {
  readonly id: string
  readonly at: number
  readonly event: Event
}
/** What is said of one pot, and of what many pots or the room taught. */
type OfPot = Extract<OpeningHappening, { potId: string }>
type OfGlaze = Exclude<OpeningHappening, { potId: string }>

/** A step of the end of a sitting: when it was done, or left out. */
export interface Ended {
  readonly at: number
  readonly left?: true
}

export interface BucketState extends Fill {
  readonly gramsPerMl: number
  readonly densityAt?: number
  readonly stirredAt?: number
  readonly sievedAt?: number
  /** Litres when the level was read last; the dips since took theirs out. */
  readonly level?: { readonly at: number; readonly litres: number }
  /** Its lid went on. */
  readonly lid?: Ended
  /** What was read and done since the fill, oldest first. */
  readonly log: readonly FillLine[]
}

export interface FillLine {
  readonly at: number
  readonly what: 'filled' | 'density' | 'level' | 'sieved' | 'stirred'
  /** g/mL, litres, or how many times in a row. */
  readonly value?: number
}

export interface AirSpell {
  readonly at: number
  readonly air: AirFacts
}

export interface HitLine {
  readonly hit: string
  readonly at: number
  /** The event that names the hit. */
  readonly kind: EventKind
  readonly potId?: string
  /** Where it was of more than one. */
  readonly potIds?: readonly string[]
  readonly bucketId?: string
  /** The second pair of hands did it. */
  readonly hands?: 1
  /** A dip logged afterwards, perhaps of other hands than those that logged it: either may take it back. */
  readonly logged?: true
  /** A result was taken in, not left out. */
  readonly takenIn?: true
}

/** What belongs to one pair of hands. */
export interface Hands {
  readonly openBucket?: string
  /** When this visit of the open bucket began: its first stir. */
  readonly openedAt?: number
  /** When it was stirred or dipped into last. */
  readonly usedAt?: number
  readonly collar?: { readonly bucketId: string; readonly litres: number; readonly at: number }
  /** The pot the hands chose themselves; `touch`: to touch it only. */
  readonly picked?: {
    readonly potId: string
    readonly bucketId?: string
    readonly touch?: true
    /** Table time, ms. */
    readonly at: number
  }
}

/** The whole table: a fold of the journal. */
export interface Table extends Hands {
  readonly settings: Settings
  readonly board: BoardFacts
  readonly air: readonly AirSpell[]
  readonly buckets: Readonly<Record<string, BucketState>>
  /** Buckets that were taken off the table; one that is named after all comes back as it was. */
  readonly removed?: Readonly<Record<string, BucketState>>
  /** Records that name what is not known yet, by what they wait for. */
  readonly waiting?: Readonly<Record<string, readonly Stamped[]>>
  readonly stacks: Readonly<Record<string, StackFacts>>
  /** Ids of those of which this phone said itself how they are. */
  readonly ownStacks?: ReadonlySet<string>
  readonly pots: Readonly<Record<string, PotState>>
  readonly tiles: Readonly<Record<string, TileFacts>>
  /** The glaze firing to come, where it was said. */
  readonly firing?: FiringFacts
  /** What the kiln's thermometer said in the last firing that was written down. */
  readonly log?: readonly KilnReading[]
  readonly kilns?: Readonly<Record<string, KilnFacts>>
  /** By their id, oldest first. */
  readonly loads?: Readonly<Record<string, LoadState>>
  /** By kiln: the last one taken. */
  readonly offsets?: Readonly<Record<string, OffsetTaken>>
  /** What the person took of what fired pots taught, and said of the room, oldest first: the last of a kind stands. */
  readonly taken?: readonly Seen<OfGlaze>[]
  /** By `pairKey`. */
  readonly pairs: Readonly<Record<string, PairFacts>>
  /** The pan of hot wax of this phone's hands: on since, and when somebody last said that they are beside it; `stays`: after the last wax. */
  readonly pan?: { readonly onAt: number; readonly watchedAt: number; readonly stays?: true }
  /** The tools were washed, the floor was mopped. */
  readonly tools?: Ended
  readonly floor?: Ended
  /** Whose hands the table is seen by, see `potters`. */
  readonly potter?: 1
  /** The same fields of the other pair of hands. */
  readonly others?: Hands
  readonly heldSince?: number
  /** Sum of the jumps of this phone's clock, ms. */
  readonly skewMs: number
  /** The latest hits, newest last, at most a few dozen: what take back undoes, and names. */
  readonly hits: readonly HitLine[]
  /** The hit taken back last and not put back since, while nothing else was hit. */
  readonly takenBack?: Pick<HitLine, 'hit' | 'at'> &
    Partial<HitLine> & {
      /** All that went with it, itself first. */
      readonly all: readonly string[]
    }
}
