import type { Column, ConeStand, KilnFacts, LoadedKind } from './load.ts'
import type { FiringFacts } from './nouns.ts'

/** It was so many minutes before it was said. */
interface Late {
  readonly agoMin?: number
}
interface OfLoad {
  readonly loadId: string
}
/** A level: `storey` counts from 1, from below, in its own column. */
interface OnLevel extends OfLoad {
  readonly column: Column
  readonly storey: number
}
/** A pot by its id; of the others there is one a load. */
interface Named extends OfLoad {
  readonly what: LoadedKind
  readonly potId?: string
}

/** What can have happened at the kiln. */
export type LoadHappening =
  | { readonly kind: 'kiln-set'; readonly kiln: KilnFacts }
  /** Several loads may be of one board. `candle` is missing in records of before loads had their own. */
  | ({
      readonly kind: 'load-begun'
      readonly kilnId: string
      readonly firing: FiringFacts
      readonly candle?: boolean
    } & OfLoad)
  /**
   * It goes into this kiln, or is fired so, after all. `anew`: its shelves are of another kind, and nothing has a place on
   * them. A kiln that is on stays what it is.
   */
  | ({
      readonly kind: 'load-changed'
      readonly kiln?: KilnFacts
      readonly anew?: true
      readonly firing?: FiringFacts
    } & OfLoad)
  /** Whether this load is candled first. */
  | ({ readonly kind: 'candling-set'; readonly candle: boolean } & OfLoad)
  /**
   * A level as it is to be built. `number` is the first figure of its places; `postMm` are the lengths of one of the posts
   * on it, which carry the next.
   */
  | ({
      readonly kind: 'shelf-set'
      readonly number: number
      readonly shelfId: string
      readonly postMm: readonly number[]
      readonly posts: readonly { readonly xMm: number; readonly yMm: number }[]
    } & OnLevel)
  /** `pinned`: put there by hand. `settled`: the answer where two phones had it in two places. */
  | ({
      readonly kind: 'placed'
      readonly xMm: number
      readonly yMm: number
      readonly slab: boolean
      readonly pinned?: true
      readonly settled?: true
    } & OnLevel &
      Named)
  /** It stands as drawn: `order` names what has a place, by its second figure from 1. */
  | ({
      readonly kind: 'shelf-loaded'
      readonly order: readonly string[]
    } & OnLevel)
  | ({ readonly kind: 'lifted-out' } & Named)
  | ({ readonly kind: 'lid-shut' } & OfLoad)
  | ({ readonly kind: 'kiln-lit' } & OfLoad & Late)
  /** Candling: a cold glass at the spy hole fogged, or no more. */
  | ({ readonly kind: 'glass-held'; readonly fogged: boolean } & OfLoad & Late)
  | ({ readonly kind: 'heat-read'; readonly tempC: number } & OfLoad & Late)
  /** `storey` of the cone set; left out, that of the spy hole. */
  | ({
      readonly kind: 'cone-seen'
      readonly cone: string
      readonly is: ConeStand
      readonly storey?: number
    } & OfLoad &
      Late)
  | ({ readonly kind: 'bung-pulled' } & OfLoad & Late)
  | ({ readonly kind: 'kiln-off' } & OfLoad & Late)
  | ({ readonly kind: 'lid-opened'; readonly tempC?: number } & OfLoad & Late)
  /** After the fire: this is that pot, as a person says. `sureness` as it was told, 0 to 1; sizes as measured then, mm. */
  | ({
      readonly kind: 'matched'
      readonly potId: string
      readonly sureness: number
      readonly heightMm?: number
      readonly widthMm?: number
    } & OfLoad)
  /** A reading was no reading: typed wrong, or of another kiln. `readId` is the record's own. */
  | ({ readonly kind: 'reading-dropped'; readonly readId: string } & OfLoad)
  /** This kiln is so much hotter than its thermometer shows, as `of` cones taught; the person took it. */
  | { readonly kind: 'offset-taken'; readonly kilnId: string; readonly offsetC: number; readonly of: number }

/** Kinds of {@link LoadHappening}. */
export const LOAD_KINDS = [
  'kiln-set',
  'load-begun',
  'load-changed',
  'candling-set',
  'shelf-set',
  'placed',
  'shelf-loaded',
  'lifted-out',
  'lid-shut',
  'kiln-lit',
  'glass-held',
  'heat-read',
  'cone-seen',
  'bung-pulled',
  'kiln-off',
  'lid-opened',
  'matched',
  'reading-dropped',
  'offset-taken',
] as const satisfies readonly LoadHappening['kind'][]
