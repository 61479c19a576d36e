import type { Column, ConeStand, KilnFacts, LoadedKind } from '../../../shared/load.ts'
import type { BoardFacts, BucketFacts, FiringFacts } from '../../../shared/nouns.ts'

/** A place in a kiln: mm from the chamber's middle, x to the right, y to the front. */
export interface InKiln {
  readonly column: Column
  readonly storey: number
  readonly xMm: number
  readonly yMm: number
}

/** A pot, a tile on its dish or the cone set, where it stands or is to stand. */
export interface Standing extends InKiln {
  readonly what: LoadedKind
  readonly potId?: string
  readonly slab: boolean
  /** Put there by hand. */
  readonly pinned?: true
  /** Its shelf place, as 2.4: since its shelf was loaded. */
  readonly place?: string
  /** The phone that put it there, where that has a name. */
  readonly from?: string
  /** Another phone has it here instead, and nobody said which it is. */
  readonly orHere?: InKiln
}

export interface LevelState {
  readonly column: Column
  readonly storey: number
  /** The first figure of its places. */
  readonly number: number
  readonly shelfId: string
  /** Lengths of one of the posts on it, from below. */
  readonly postMm: readonly number[]
  readonly posts: readonly { readonly xMm: number; readonly yMm: number }[]
  readonly loadedAt?: number
}

/** A reading of the kiln's thermometer, degC. `id` is the record's. */
export interface HeatReading {
  readonly id: string
  readonly at: number
  readonly tempC: number
}

/** `hit` is that by which it was said. */
export interface ConeSeen {
  readonly at: number
  readonly hit: string
  readonly cone: string
  readonly is: ConeStand
  readonly storey?: number
}

/** A cold glass held to the spy hole. `hit` is that by which it was said. */
export interface GlassSeen {
  readonly at: number
  readonly hit: string
  readonly fogged: boolean
}

/** Something done to a load that can turn out not to be so: the hit that said it. */
export interface Deed {
  readonly kind: 'shelf-loaded' | 'lid-shut' | 'kiln-lit' | 'bung-pulled' | 'kiln-off' | 'lid-opened'
  readonly hit: string
}

/** A pot that was told from others after the fire. */
export interface MatchedPot {
  readonly at: number
  /** As it was told, 0 to 1. */
  readonly sureness: number
  /** Pots of its load that were judged by their places before: this was none of them. */
  readonly after?: readonly string[]
  /** Measured after the fire, mm. */
  readonly heightMm?: number
  readonly widthMm?: number
}

/** What a bucket is known by, and what its earlier fills were when the next went in, at `until`, table time, ms; earliest first. */
export interface Fill {
  readonly facts: BucketFacts
  readonly past?: readonly { readonly until: number; readonly facts: BucketFacts }[]
}

/** The pots of one firing with their places, and what was seen of the fire. Times are table time, ms. */
export interface LoadState {
  readonly loadId: string
  /** As it was when the load was begun: furniture bought since changes nothing of it. */
  readonly kiln: KilnFacts
  readonly firing: FiringFacts
  readonly begunAt: number
  /** Whether it is candled first; of older records the table's setting says it. */
  readonly candle?: boolean
  /** By `levelKey`. */
  readonly levels: Readonly<Record<string, LevelState>>
  /** By `thingKey`. */
  readonly things: Readonly<Record<string, Standing>>
  readonly shutAt?: number
  readonly litAt?: number
  /** Since its lid was shut: the clay of its pots, whatever the board is set to for new ones. */
  readonly board?: BoardFacts
  /** The same of its glazes: each bucket as it was, by its id, whatever is scratched and weighed of later fills. */
  readonly fills?: Readonly<Record<string, Fill>>
  readonly bungAt?: number
  readonly offAt?: number
  readonly openedAt?: number
  /** A cold glass at the spy hole, oldest first. */
  readonly glass: readonly GlassSeen[]
  /** In the order of their own times, whenever they were said. */
  readonly readings: readonly HeatReading[]
  readonly cones: readonly ConeSeen[]
  /** In the order in which they were said. */
  readonly deeds?: readonly Deed[]
  /** By pot. */
  readonly matched?: Readonly<Record<string, MatchedPot>>
}

/** What a kiln was taken to differ from its thermometer by, degC, as so many cones taught. */
export interface OffsetTaken {
  readonly offsetC: number
  readonly of: number
  readonly at: number
  /** By which it was taken. */
  readonly hit: string
}

/** A level within its load. */
export const levelKey = ({ column, storey }: { readonly column: Column; readonly storey: number }): string =>
  `${column} ${storey}`

/** Pots by their id; of the others there is one. */
export const thingKey = ({
  what,
  potId,
}: {
  readonly what: LoadedKind
  readonly potId?: string | undefined
}): string => (what === 'pot' && potId !== undefined ? potId : `~${what}`)
